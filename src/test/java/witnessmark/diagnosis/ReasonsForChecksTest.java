package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Why a check is worth making, as the bench sheet gives it. */
class ReasonsForChecksTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    private static List<String> reasons() {
        return ShippedKnowledge.samples().stream()
                .filter(d -> Stream.of("facing", "hubs", "clash", "jumps")
                        .anyMatch(d.present().id().text()::contains))
                .flatMap(d -> DIAGNOSIS.judge(d.present()).nextChecks().stream())
                .map(NextCheck::why)
                .toList();
    }

    @Test
    void a_check_made_for_a_conclusion_names_no_cause_that_it_hardly_moves() {
        assertThat(reasons())
                .anyMatch(why -> why.equals("sets a conclusion against what looks like it"))
                .anyMatch(why -> why.startsWith("sets a conclusion against what looks like it; moves"))
                .noneMatch(why -> why.contains("sets a conclusion") && why.contains("hardly moves"));
    }
}
