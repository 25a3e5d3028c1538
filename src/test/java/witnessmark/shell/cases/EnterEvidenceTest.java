package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.store.CaseChangedMeanwhile;
import witnessmark.shell.CommandLine;
import witnessmark.shell.cases.EnterEvidence.Entered;
import witnessmark.shell.print.Refused;

class EnterEvidenceTest {
    @TempDir
    Path store;

    private static Evidence of(String summary, String finding) {
        return new Evidence(
                "a-result",
                Evidence.Kind.COMPUTED,
                summary,
                "",
                Map.of(),
                Optional.empty(),
                Map.of(finding, FindingState.PRESENT));
    }

    @Test
    void what_was_made_of_a_case_that_changed_meanwhile_is_made_anew_and_not_for_ever() {
        try (CommandLine shop = new CommandLine(store)) {
            shop.type("case new c --complaint Slips");
            CaseHistory seen = shop.bean(Cases.class).history("c");
            shop.type("case note c another shell was here");
            List<Integer> looks = new ArrayList<>();

            Entered entered = shop.bean(EnterEvidence.class)
                    .enter(
                            seen,
                            before -> {
                                looks.add(before.entries().size());
                                return of("made of " + before.entries().size(), "computed-cone-energy-high");
                            },
                            "");

            assertThat(looks).containsExactly(1, 2);
            assertThat(entered.history().entries()).hasSize(3);
            assertThat(entered.history().present().evidence().get("a-result").summary())
                    .isEqualTo("made of 2");
            assertThatThrownBy(() -> shop.bean(EnterEvidence.class)
                            .enter(
                                    seen,
                                    before -> {
                                        shop.type("case note c and here again");
                                        return of("never", "computed-cone-energy-high");
                                    },
                                    ""))
                    .isInstanceOf(CaseChangedMeanwhile.class);
            assertThat(shop.bean(Cases.class).history("c").entries()).hasSize(8);
        }
    }

    @Test
    void a_finding_that_nobody_knows_enters_no_case() {
        try (CommandLine shop = new CommandLine(store)) {
            shop.type("case new c --complaint Slips");

            assertThatThrownBy(() -> shop.bean(EnterEvidence.class)
                            .enter(shop.bean(Cases.class).history("c"), before -> of("", "computed-nonsense"), ""))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("no finding 'computed-nonsense' is known");
        }
    }
}
