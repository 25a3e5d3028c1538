package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.completion.CompletionContext;
import org.springframework.shell.core.command.completion.CompletionProposal;
import witnessmark.shell.CommandLine;

/** TAB offers what fits at its place, asked of the program's own commands. */
class CompleteCaseTest {
    private static final String CASE = "cones-worn-even-old-age";

    @TempDir
    Path store;

    private List<String> offered(CommandLine program, String... words) {
        Command command = program.commands().stream()
                .filter(c -> c.getName().equals(words[0]))
                .findFirst()
                .orElseThrow();
        List<String> line = new ArrayList<>(List.of(words));
        int last = line.size() - 1;
        return command
                .getCompletionProvider()
                .apply(new CompletionContext(line, last, line.get(last).length(), command, null))
                .stream()
                .map(CompletionProposal::value)
                .toList();
    }

    @Test
    void after_a_case_the_causes_in_question_there_are_offered_and_every_other_by_its_letters() {
        try (CommandLine program = new CommandLine(store)) {
            program.run("case", "import", "sample-cases/" + CASE + ".yaml");

            assertThat(offered(program, "explain", "")).contains(CASE).doesNotContain("synchro-wear");
            assertThat(offered(program, "explain", CASE, ""))
                    .contains("synchro-wear")
                    .doesNotContain("input-nut-loose", "pto-fit")
                    .hasSizeLessThan(40);
            assertThat(offered(program, "accounts", CASE, "synchro-wear", "")).contains("synchro-wear");
            assertThat(offered(program, "explain", CASE, "input-n")).containsExactly("input-nut-loose");
            assertThat(offered(program, "explain", "sample-cases/" + CASE + ".yaml", ""))
                    .contains("synchro-wear")
                    .doesNotContain("pto-fit");
        }
    }

    @Test
    void a_case_that_is_not_there_hides_no_cause() {
        try (CommandLine program = new CommandLine(store)) {
            assertThat(offered(program, "explain", "nobody", "")).contains("pto-fit", "input-nut-loose");
        }
    }

    @Test
    void a_voided_case_is_offered_no_more() {
        try (CommandLine program = new CommandLine(store)) {
            program.run("case", "new", "meant");
            program.run("case", "new", "mistyped");
            program.run("case", "void", "mistyped");

            assertThat(offered(program, "interview", "")).contains("meant").doesNotContain("mistyped");
        }
    }
}
