package witnessmark.shell.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.springframework.shell.core.command.Command;
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

    @Test
    void a_first_word_of_several_commands_without_the_second_is_told_them_and_not_itself() {
        CommandRegistry logs = new CommandRegistry(Set.of(named("log add"), named("log look"), named("case list")));

        assertThat(refused(false, logs, "log /home/shop/trip.csv"))
                .startsWith("no command 'log /home/shop/trip.csv'; did you mean: log add, log look? See also: help");
        assertThat(refused(false, logs, "log lok trip.csv")).contains("did you mean: log look?");
    }

    private static Command named(String name) {
        return Command.builder().name(name).execute(context -> "");
    }

    private static String refused(boolean shown) {
        return refused(shown, NONE, "open every drawer in the whole shop");
    }

    private static String refused(boolean shown, CommandRegistry registry, String line) {
        RunCommand command = new RunCommand(
                new LineParser(registry, c -> 0),
                registry,
                new Refusals(),
                out -> new Screen(out, () -> 50, () -> Units.BOTH),
                () -> shown);
        StringWriter messages = new StringWriter();
        command.run(line, new PrintWriter(new StringWriter()), new PrintWriter(messages));
        return messages.toString();
    }
}
