package witnessmark.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.ObjectMapper;

/** Every command of the registry runs, in text and in JSON; one without a line in every-command.txt fails. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class EveryCommandTest {
    private static final Path LINES = Path.of("src/test/resources/witnessmark/shell/every-command.txt");
    /** What text meant for people never holds. */
    private static final Pattern LEAKED = Pattern.compile(
            "Optional[\\[.]|\\bnull\\b|\\b[A-Z]\\w+\\[\\w+=|@[0-9a-f]{6,}|\\{\\d\\}|\\bNaN\\b|Exception");

    private record Line(String text, String exitCodes, CommandLine.Run run) {
        boolean isRefused() {
            return !exitCodes.contains("0");
        }

        boolean endedAsItShould() {
            return exitCodes.contains(String.valueOf(run.exitCode()));
        }

        boolean isJson() {
            return text.contains("--format json") || (text.contains("--as json") && !text.contains("--out"));
        }

        boolean isOf(String command) {
            return text.equals(command) || text.startsWith(command + " ");
        }
    }

    private final List<Line> lines = new ArrayList<>();
    private CommandLine commands;

    @BeforeAll
    void run_all(@TempDir Path folder) throws IOException {
        commands = new CommandLine(folder.resolve("store"));
        for (String line : Files.readAllLines(LINES)) {
            if (!line.isBlank() && !line.startsWith("#")) {
                boolean coded = line.startsWith("=");
                String text = coded ? line.substring(line.indexOf(' ') + 1) : line;
                lines.add(new Line(
                        text, coded ? line.substring(1, line.indexOf(' ')) : "0", commands.type(filled(text, folder))));
            }
        }
    }

    @AfterAll
    void close() {
        commands.close();
    }

    private static String filled(String line, Path folder) throws IOException {
        String text = line.replace("{dir}", folder.toString());
        if (text.contains("{photo}")) {
            Path photo = folder.resolve("photo.png");
            ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "png", photo.toFile());
            text = text.replace("{photo}", photo.toString());
        }
        if (text.contains("/card.txt")) {
            Files.writeString(
                    folder.resolve("card.txt"), "Driver says grinds into low. Regulator 44 psi. Washed the mirrors.\n");
        }
        if (text.contains("{kept-truck}")) {
            Path truck = folder.resolve("unit-40.yaml");
            Files.writeString(
                    truck,
                    Files.readString(folder.resolve("truck.yaml")).replaceFirst("(?m)^truck: .*$", "truck: unit-40"));
            text = text.replace("{kept-truck}", truck.toString());
        }
        if (text.contains("{cases}")) {
            Path cases = Files.createDirectories(folder.resolve("cases"));
            Files.copy(
                    Path.of("sample-cases/slow-into-low-low-air.yaml"),
                    cases.resolve("one.yaml"),
                    java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            text = text.replace("{cases}", cases.toString());
        }
        if (text.contains("{answers}")) {
            Path answers = folder.resolve("answers.txt");
            Files.writeString(answers, "otherwise: stop\n");
            text = text.replace("{answers}", answers.toString());
        }
        return text;
    }

    @Test
    void every_line_ends_as_it_should() {
        assertThat(lines.stream()
                        .filter(line -> !line.endedAsItShould())
                        .map(line -> line.text() + ": " + line.run().messages()))
                .isEmpty();
    }

    @Test
    void every_command_has_a_line_in_text() {
        Set<String> without = commands.registered().stream()
                .filter(c -> lines.stream().noneMatch(l -> !l.isRefused() && !l.isJson() && l.isOf(c)))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(without).isEmpty();
    }

    @Test
    void every_command_that_has_a_machine_form_is_asked_for_it() {
        Set<String> without = commands.withOption("format").stream()
                .filter(c -> lines.stream().noneMatch(l -> l.isJson() && l.isOf(c)))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(without).isEmpty();
    }

    @Test
    void what_is_asked_for_as_json_is_json_alone() {
        ObjectMapper mapper = new ObjectMapper();
        assertThat(lines).filteredOn(Line::isJson).hasSizeGreaterThan(15).allSatisfy(line -> {
            assertThat(line.run().messages()).as(line.text()).isEmpty();
            assertThat(mapper.readTree(line.run().out()).isContainer())
                    .as(line.text())
                    .isTrue();
        });
    }

    /** What the foot of a page says; the settings of a shop are no answer made with the knowledge base. */
    @Test
    void an_answer_as_json_says_what_it_was_made_with() {
        ObjectMapper mapper = new ObjectMapper();
        assertThat(lines)
                .filteredOn(line ->
                        line.isJson() && !line.isRefused() && !line.text().startsWith("settings "))
                .hasSizeGreaterThan(15)
                .allSatisfy(line -> {
                    var made = mapper.readTree(line.run().out());
                    assertThat(made.path("program").asString()).as(line.text()).isNotBlank();
                    assertThat(made.path("knowledge").asString())
                            .as(line.text())
                            .hasSize(64);
                });
    }

    @Test
    void what_is_asked_for_as_text_says_something_and_shows_nothing_of_the_inside() {
        assertThat(lines).filteredOn(l -> !l.isJson()).allSatisfy(line -> {
            String said = line.run().out() + line.run().messages();
            assertThat(said).as(line.text()).isNotBlank();
            assertThat(LEAKED.matcher(said).results().map(m -> m.group()))
                    .as(line.text() + "\n" + said)
                    .isEmpty();
        });
    }

    @Test
    void a_refusal_is_said_in_one_line_on_the_side_of_messages() {
        assertThat(lines).filteredOn(Line::isRefused).hasSizeGreaterThan(4).allSatisfy(line -> {
            assertThat(line.run().out()).as(line.text()).isEmpty();
            assertThat(line.run().messages().lines()).as(line.text()).hasSize(1);
        });
    }
}
