package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.casefile.yaml.CaseWriter;

/** Kept results weigh as findings: outright, or by how well they fit. */
class WeighedEvidenceTest {
    private static final Diagnosis DIAGNOSIS = SmallTrade.diagnosis();

    private static CaseFile withLog(Map<String, Likelihood> likelihoods) {
        Evidence log = new Evidence(
                "log-1",
                Evidence.Kind.LOGGED,
                "Range moved in neutral 3 times.",
                "",
                Map.of("distance", "412 km"),
                Optional.empty(),
                Map.of("log-shows-it", FindingState.PRESENT),
                likelihoods);
        return SmallTrade.sheet("cone-burned").evidence(log).toCaseFile();
    }

    private static double habit(CaseFile file) {
        return DIAGNOSIS.judge(file).causes().stream()
                .filter(c -> c.id().equals("habit"))
                .findFirst()
                .orElseThrow()
                .probability();
    }

    @Test
    void a_result_that_fits_a_little_better_moves_a_little() {
        double without = habit(SmallTrade.caseWith("cone-burned"));
        double little = habit(withLog(Map.of("log-shows-it", new Likelihood(0.6, 0.3))));
        double outright = habit(withLog(Map.of()));
        double nothing = habit(withLog(Map.of("log-shows-it", new Likelihood(0.4, 0.4))));

        assertThat(little).isGreaterThan(without).isLessThan(outright);
        assertThat(nothing).isCloseTo(without, org.assertj.core.data.Offset.offset(1e-12));
    }

    @Test
    void what_the_technician_says_of_the_same_finding_stands() {
        CaseFile said = new witnessmark.casefile.CaseSheet(withLog(Map.of("log-shows-it", new Likelihood(0.6, 0.3))))
                .finding(new FindingEntry("log-shows-it", FindingState.ABSENT))
                .toCaseFile();
        assertThat(habit(said)).isEqualTo(habit(SmallTrade.caseWith("cone-burned", "no log-shows-it")));
    }

    @Test
    void likelihoods_are_kept_in_the_written_form() {
        CaseFile file = withLog(Map.of("log-shows-it", new Likelihood(0.6, 0.3)));
        String text = new CaseWriter().write(CaseDocument.of(file));
        CaseDocument again =
                new CaseReader().read("again.yaml", text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        assertThat(again.present()).isEqualTo(file);
    }
}
