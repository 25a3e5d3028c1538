package witnessmark.shell.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.springframework.shell.core.command.CommandRegistry;
import witnessmark.gearbox.Units;
import witnessmark.shell.print.Screen;

class RunCommandTest {
    private static final CommandRegistry NONE = new CommandRegistry(Set.of());
    private static final String SAID = "no command 'open every drawer in the whole shop'; see: help";

    @Test
    void a_refusal_at_a_terminal_is_wrapped_at_words_to_its_width() {
        String said = refused(true);

        assertThat(said.lines()).allMatch(line -> line.length() <= 50).hasSize(2);
        assertThat(String.join(" ", said.lines().toList())).isEqualTo(SAID);
    }

    @Test
    void elsewhere_it_stays_one_line() {
        assertThat(refused(false).lines()).containsExactly(SAID);
    }

    private static String refused(boolean shown) {
        RunCommand command = new RunCommand(
                new LineParser(NONE, c -> 0),
                NONE,
                new Refusals(),
                out -> new Screen(out, () -> 50, () -> Units.BOTH),
                () -> shown);
        StringWriter messages = new StringWriter();
        command.run(
                "open every drawer in the whole shop", new PrintWriter(new StringWriter()), new PrintWriter(messages));
        return messages.toString();
    }
}
