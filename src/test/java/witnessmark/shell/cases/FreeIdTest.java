package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.CaseId;
import witnessmark.shell.CommandLine;

/** A new case without a name gets the day and a number. */
class FreeIdTest {
    @TempDir
    Path store;

    @Test
    void cases_of_a_day_are_counted_from_one() {
        try (CommandLine program = new CommandLine(store)) {
            Cases cases = program.bean(Cases.class);
            for (int number = 1; number <= 18; number++) {
                CaseId id = cases.freeId();
                assertThat(id.text()).matches("\\d{4}-\\d{2}-\\d{2}-" + number);
                program.run("case", "new", id.text());
            }
        }
    }

    @Test
    void what_is_taken_out_of_turn_is_not_given_again() {
        try (CommandLine program = new CommandLine(store)) {
            Cases cases = program.bean(Cases.class);
            String day = cases.freeId().text().replaceAll("-1$", "");
            for (int number : new int[] {1, 2, 4, 5, 8, 13, 16}) {
                program.run("case", "new", day + "-" + number);
            }
            Set<String> given = new HashSet<>();
            for (int n = 0; n < 12; n++) {
                CaseId id = cases.freeId();
                assertThat(program.run("case", "new", id.text()).exitCode())
                        .as(id.text())
                        .isZero();
                assertThat(given.add(id.text())).isTrue();
            }
        }
    }
}
