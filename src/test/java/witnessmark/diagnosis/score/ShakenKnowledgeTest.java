package witnessmark.diagnosis.score;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/** The numbers of the knowledge are judgement: moved by a word or a factor of three they seldom move the answer. */
@Tag("long")
class ShakenKnowledgeTest {
    @Test
    void moved_numbers_seldom_move_the_answer() {
        assertThat(new ShakeKnowledge(RuleBase.shipped(), ShippedKnowledge.load())
                        .shake(ShippedKnowledge.samples(), (made, all) -> {}))
                .hasSize(4)
                .allSatisfy(s -> {
                    assertThat(s.trials()).isGreaterThan(100);
                    assertThat(s.firstChanged() / (double) s.trials())
                            .as(s.what())
                            .isLessThan(0.05);
                    assertThat(s.verdictChanged() / (double) s.trials())
                            .as(s.what())
                            .isLessThan(0.10);
                });
    }
}
