package witnessmark.diagnosis.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/**
 * Cases that were written before the program was run on them ({@code blind-cases}, {@code fresh-cases}, {@code
 * unseen-cases}, {@code later-cases}, {@code bench-cases}, {@code foreman-cases}, {@code claims-cases}, {@code
 * yard-cases}, {@code bay-cases}, {@code depot-cases}, {@code night-cases}, {@code harbour-cases}, {@code quarry-cases}, {@code ferry-cases}, {@code summit-cases}, {@code valley-cases}, {@code mill-cases}, {@code pier-cases}), and traps written afterwards ({@code trap-cases}). Outcomes: common practice, no source. Of {@code unseen-cases} and {@code later-cases} the three that could be named where nothing can be told are
 * one opinion, kept as it was.
 */
class BlindCasesTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final Map<String, Tally> TALLIES = new ConcurrentHashMap<>();

    private static Tally tally(String folder) {
        return TALLIES.computeIfAbsent(folder, name -> new ScoreCases(DIAGNOSIS)
                .score(ShippedKnowledge.cases(Path.of("src/test/resources/witnessmark", name))));
    }

    @ParameterizedTest
    @CsvSource({
        "blind-cases, 0.95",
        "fresh-cases, 0.95",
        "trap-cases, 0.95",
        "unseen-cases, 0.85",
        "later-cases, 0.9",
        "bench-cases, 0.95",
        "foreman-cases, 0.95",
        "claims-cases, 0.8",
        "yard-cases, 0.85",
        "bay-cases, 0.85",
        "depot-cases, 0.9",
        "night-cases, 0.9",
        "harbour-cases, 0.9",
        "quarry-cases, 0.9",
        "ferry-cases, 0.9",
        "summit-cases, 0.9",
        "valley-cases, 0.9",
        "mill-cases, 0.95",
        "pier-cases, 0.95"
    })
    void no_class_is_concluded_wrongly_and_few_are_withheld(String folder, double threeAtLeast) {
        Tally tally = tally(folder);
        int cases = tally.cases().size();
        assertThat(cases).isGreaterThanOrEqualTo(38);
        assertThat(tally.cases())
                .filteredOn(Scored::wrongBlame)
                .extracting(Scored::caseId)
                .isEmpty();
        assertThat(tally.withinThree()).isGreaterThanOrEqualTo(Math.round(threeAtLeast * cases));
        assertThat(tally.firstRight()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
        assertThat(tally.verdictRight()).isGreaterThanOrEqualTo(Math.round(0.95 * cases));
    }

    /**
     * What came of a set when it was judged for the first time, as bounds: how many were concluded rightly, how many with
     * those pointed to, and how many were pointed to at most where nothing can be told. Concluded where that was not
     * possible: one of the yard's, four of the bay's, two of them another opinion, three of the depot's, one of the harbour's, one of the ferry's, one of the summit's, which is another opinion; it must not be.
     */
    @ParameterizedTest
    @CsvSource({
        "later-cases, 18, 29, 3, 0",
        "yard-cases, 40, 44, 4, 0",
        "bay-cases, 37, 41, 7, 0",
        "depot-cases, 21, 24, 6, 1",
        "night-cases, 20, 24, 2, 1",
        "harbour-cases, 21, 24, 4, 1",
        "quarry-cases, 20, 24, 1, 0",
        "ferry-cases, 20, 24, 3, 0",
        "summit-cases, 21, 24, 3, 0",
        "valley-cases, 36, 40, 7, 1",
        "mill-cases, 46, 48, 1, 1",
        "pier-cases, 42, 45, 6, 0"
    })
    void a_set_comes_out_no_worse_than_when_first_judged(
            String folder, int right, int withPointed, int pointedWhereNone, int firstMissed) {
        Tally tally = tally(folder);
        Map<Scored.Answer, Long> answers = tally.answers();
        long concluded = answers.getOrDefault(Scored.Answer.RIGHT, 0L);
        assertThat(tally.wrongBlame()).isZero();
        assertThat(answers).doesNotContainKey(Scored.Answer.POINTED_WRONG);
        assertThat(concluded).isGreaterThanOrEqualTo(right);
        assertThat(concluded + answers.getOrDefault(Scored.Answer.POINTED_RIGHT, 0L))
                .isGreaterThanOrEqualTo(withPointed);
        assertThat(answers.getOrDefault(Scored.Answer.POINTED_WHERE_NONE, 0L)).isLessThanOrEqualTo(pointedWhereNone);
        assertThat(tally.firstRight()).isGreaterThanOrEqualTo(tally.cases().size() - firstMissed);
    }

    @ParameterizedTest
    @CsvSource({"later-cases", "bay-cases", "valley-cases", "mill-cases", "pier-cases"})
    void what_contradicts_itself_is_named_and_nothing_else(String folder) {
        Tally tally = tally(folder);
        assertThat(tally.cases())
                .filteredOn(scored -> !scored.contradictionRight())
                .extracting(Scored::caseId)
                .isEmpty();
    }
}
