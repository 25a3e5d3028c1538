package witnessmark.shell.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandOption;
import witnessmark.shell.CommandLine;

/** A usage line names every option of its command and no other. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class UsageTest {
    private CommandLine line;
    private Collection<Command> commands;

    @BeforeAll
    void start(@TempDir Path folder) {
        line = new CommandLine(folder.resolve("store"));
        commands = line.commands();
    }

    @AfterAll
    void close() {
        line.close();
    }

    @Test
    void the_line_is_made_of_name_arguments_options_and_note() {
        assertThat(usage("case export")).isEqualTo("case export CASE [--out FILE]; without --out it is printed");
        assertThat(usage("diagnose"))
                .isEqualTo(
                        "diagnose CASE|FILE.yaml [--language en|es] [--format text|json] [--top N] [--full] [--figures]");
        assertThat(usage("knowledge check")).isEqualTo("knowledge check");
    }

    @Test
    void a_line_names_each_option_once_and_no_other() {
        for (Command command : commands) {
            List<String> options =
                    command.getOptions().stream().map(CommandOption::longName).toList();
            assertThat(options)
                    .as(command.getName())
                    .containsAll(Usage.of(command).written());
            String line = Usage.line(command).split("; ")[0];
            options.forEach(o -> assertThat(Pattern.compile("--" + o + "(?![a-z-])")
                            .matcher(line)
                            .results())
                    .as(command.getName() + " --" + o)
                    .hasSize(1));
        }
    }

    @Test
    void every_option_that_takes_text_has_a_word_for_it_and_every_word_an_option() {
        Set<String> used = new TreeSet<>();
        for (Command command : commands) {
            for (CommandOption option : command.getOptions()) {
                assertThat(Usage.value(option))
                        .as(command.getName() + " --" + option.longName())
                        .isNotNull();
                used.add(option.longName());
            }
        }
        assertThat(Usage.known()).isSubsetOf(used);
    }

    /** So that a name which means a case in one command and files in another is told apart in both. */
    @Test
    void the_word_for_a_value_is_what_the_option_speaks_of() {
        Map<String, Pattern> spokenOf = Map.of(
                "CASE", Pattern.compile("\\bcase\\b"),
                "FILE", Pattern.compile("\\bfile\\b|\\blog\\b"),
                "FOLDER", Pattern.compile("\\bfolder\\b"),
                "ID", Pattern.compile("\\bid\\b"),
                "FINDING", Pattern.compile("\\bfinding\\b"),
                "GEAR", Pattern.compile("\\bgear\\b"),
                "DAY", Pattern.compile("\\bday\\b"),
                "UNIT", Pattern.compile("\\bunit\\b"),
                "TRUCK", Pattern.compile("\\btrucks?\\b"));
        Set<String> held = new TreeSet<>();
        for (Command command : commands) {
            List<String> written = Usage.of(command).written();
            for (CommandOption option : command.getOptions()) {
                Pattern spoken = spokenOf.get(Usage.value(option));
                if (spoken != null && !written.contains(option.longName())) {
                    held.add(Usage.value(option));
                    assertThat(option.description())
                            .as(command.getName() + " --" + option.longName() + " " + Usage.value(option))
                            .containsPattern(spoken);
                }
            }
        }
        assertThat(held).isEqualTo(new TreeSet<>(spokenOf.keySet()));
        assertThat(usage("case list")).contains("[--after CASE]");
        assertThat(usage("log compare")).contains("--after FILE|FOLDER ...");
    }

    private String usage(String name) {
        return commands.stream()
                .filter(c -> c.getName().equals(name))
                .map(Usage::line)
                .findFirst()
                .orElseThrow();
    }
}
