package witnessmark.inference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SharedUseTest {
    @Test
    void many_threads_may_ask_one_inference_different_questions() {
        var network = ReferenceNetworks.networks().get("C");
        var alone = IntStream.range(0, 400)
                .mapToObj(i -> answer(new ExactInference(network), i))
                .toList();
        var shared = new ExactInference(network);

        var together = IntStream.range(0, 400)
                .parallel()
                .mapToObj(i -> answer(shared, i))
                .toList();

        assertThat(together).isEqualTo(alone);
    }

    @Test
    void an_answer_does_not_depend_on_what_was_asked_before() {
        var network = ReferenceNetworks.networks().get("B");
        var inference = new ExactInference(network);
        var fresh = answer(new ExactInference(network), 7);

        answer(inference, 1);
        answer(inference, 7);
        answer(inference, 2);

        assertThat(answer(inference, 7)).isEqualTo(fresh);
    }

    /** All answers on evidence drawn by number, as text. */
    private static String answer(ExactInference inference, int number) {
        var random = new Random(number);
        var evidence = GivenEvidence.none();
        for (int f = 1; f < 5; f++) {
            evidence = random.nextBoolean()
                    ? evidence.with(f, random.nextBoolean() ? Report.ABSENT : new Report(0.7, 0.2))
                    : evidence;
        }
        var posterior = inference.posterior(evidence);
        var gain = inference.gains(evidence, new int[] {0}).get(0);
        var weights = inference.weights(evidence, new int[] {0, 1, 2, 3});
        return Arrays.toString(posterior.causes())
                + posterior.logEvidence()
                + gain.bits()
                + Arrays.deepToString(weights.decibans());
    }
}
