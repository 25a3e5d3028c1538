package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/** Each finding of the shipped knowledge alone in a case, in turn. Common practice, no source. */
class OneFindingAloneTest {
    private static final double BROKEN = 0.95;
    private static final double SOUND = 0.02;
    private static final double MOST_DECIBANS = 15.1;

    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final KnowledgeBase KNOWLEDGE = DIAGNOSIS.knowledge();

    private static CaseFile alone(String finding, FindingState state) {
        return new CaseSheet(new CaseId("alone"))
                .finding(new FindingEntry(finding, state))
                .toCaseFile();
    }

    private static Judgement judge(String finding, FindingState state) {
        try (OpenCase open = DIAGNOSIS.open(alone(finding, state))) {
            return open.judgement();
        }
    }

    private static List<Finding> findings(boolean looks) {
        return KNOWLEDGE.findings().values().stream()
                .filter(f -> (f.kind() == Finding.Kind.LOOK) == looks)
                .toList();
    }

    @Test
    void a_part_seen_broken_is_broken() {
        List<String> failing = new ArrayList<>();
        for (Finding look : findings(true)) {
            Set<String> causes =
                    KNOWLEDGE.causesOf(look.id()).stream().map(Cause::id).collect(Collectors.toSet());
            try (OpenCase open = DIAGNOSIS.open(alone(look.id(), FindingState.PRESENT))) {
                double broken = causes.isEmpty() ? 1 : open.probabilityOfAny(causes);
                if (broken < BROKEN) {
                    failing.add(look.id() + " " + broken);
                }
            }
        }
        assertThat(failing).isEmpty();
    }

    @Test
    void a_part_seen_sound_is_ruled_out() {
        List<String> failing = new ArrayList<>();
        for (Cause cause : KNOWLEDGE.causes().values()) {
            for (String look : cause.looks()) {
                try (OpenCase open = DIAGNOSIS.open(alone(look, FindingState.ABSENT))) {
                    double probability = open.probability(cause.id());
                    if (probability > SOUND) {
                        failing.add(cause.id() + " " + look + " " + probability);
                    }
                }
            }
        }
        assertThat(failing).isEmpty();
    }

    @Test
    void a_symptom_log_paper_or_tale_alone_concludes_nothing() {
        List<String> failing = new ArrayList<>();
        for (Finding finding : findings(false)) {
            if (finding.kind().isPhysical()) {
                continue;
            }
            Verdict verdict = judge(finding.id(), FindingState.PRESENT).verdict();
            if (verdict.isDetermined()) {
                failing.add(finding.id() + " " + verdict.classId());
            }
        }
        assertThat(failing).isEmpty();
    }

    @Test
    void nothing_but_a_look_or_a_conclusive_mark_moves_the_odds_by_more_than_fifteen_decibans() {
        List<String> failing = new ArrayList<>();
        for (Finding finding : findings(false)) {
            if (!finding.conclusive().isEmpty()) {
                continue;
            }
            for (FindingState state : List.of(FindingState.PRESENT, FindingState.ABSENT)) {
                try (OpenCase open = DIAGNOSIS.open(alone(finding.id(), state))) {
                    for (Cause cause : KNOWLEDGE.causes().values()) {
                        double now = Thresholds.odds(open.probability(cause.id()));
                        double before = Thresholds.odds(cause.prior());
                        double decibans = 10 * Math.log10(now / before);
                        if (Math.abs(decibans) > MOST_DECIBANS) {
                            failing.add(finding.id() + " " + state + " " + cause.id() + " " + decibans);
                        }
                    }
                }
            }
        }
        assertThat(failing).isEmpty();
    }
}
