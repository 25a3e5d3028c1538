package witnessmark.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every known fault at every option and every argument of every command of the registry: it is done or refused, in a
 * line of bounded length, and never a fault inside the program.
 */
@Timeout(value = 30, unit = TimeUnit.MINUTES)
class FaultyValuesTest {
    private static final Path LINES = Path.of("src/test/resources/witnessmark/shell/every-command.txt");
    private static final int LONGEST_MESSAGE = 4_000;

    @TempDir
    Path folder;

    private CommandLine commands;
    private Set<Path> before;

    @BeforeEach
    void begin() throws Exception {
        before = here();
        commands = new CommandLine(folder.resolve("store"));
        commands.run("case", "new", "one", "--ratios", "13");
        commands.run("case", "new", "two");
        commands.run("case", "import", "sample-cases/slow-into-low-low-air.yaml", "--as", "three");
    }

    @AfterEach
    void end() throws Exception {
        commands.close();
        for (Path left : here()) {
            if (!before.contains(left)) {
                Files.delete(left);
            }
        }
    }

    /** The plain files of the current folder: a faulty name is a good name for a file, and some commands write one. */
    private static Set<Path> here() throws Exception {
        try (Stream<Path> list = Files.list(Path.of(""))) {
            return list.filter(Files::isRegularFile).collect(Collectors.toSet());
        }
    }

    private Map<String, String> faults() throws Exception {
        Map<String, String> faults = new LinkedHashMap<>();
        faults.put("a word", "abc");
        faults.put("a huge number", "99999999999999999999");
        faults.put("a folder", folder.toString());
        faults.put(
                "no UTF-8",
                Files.write(folder.resolve("latin.yaml"), new byte[] {'a', ':', ' ', (byte) 0xE9, '\n'})
                        .toString());
        faults.put("nothing", "");
        faults.put("a blank", " ");
        faults.put("nought", "0");
        faults.put("below nought", "-1");
        faults.put("ninety-nine", "99");
        faults.put("no number", "NaN");
        faults.put("past all numbers", "1e400");
        faults.put("a control character", "a\u0007b");
        faults.put("a nul", "a\0b");
        faults.put("a path up", "../../../etc/passwd");
        faults.put("a special file", "/dev/null/x.yaml");
        faults.put("signs", "%s {0} ' \" \\ ; -- <b> =");
        faults.put("letters of all kinds", "Ünïcode 漢字 \u202E 😀");
        faults.put("much", "x".repeat(30_000));
        faults.put(
                "brackets",
                Files.writeString(folder.resolve("deep.yaml"), "truck: " + "[".repeat(100_000))
                        .toString());
        faults.put(
                "a document type",
                Files.writeString(
                                folder.resolve("type.html"),
                                "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]><x>&e;</x>")
                        .toString());
        return faults;
    }

    @Test
    void some_faults_at_every_value_of_every_command() throws Exception {
        List<String> some = List.of("a word", "a folder", "no UTF-8", "a nul");
        Map<String, String> faults = faults();
        faults.keySet().retainAll(some);
        assertThat(tried(faults)).isEmpty();
    }

    @Test
    @Tag("long")
    void all_faults_at_every_value_of_every_command() throws Exception {
        assertThat(tried(faults())).isEmpty();
    }

    @Test
    void answers_piped_in_that_are_no_utf_8_are_refused_and_not_replaced() {
        InputStream before = System.in;
        System.setIn(new ByteArrayInputStream("Tractor 7\nno s\u00e9\n".getBytes(StandardCharsets.ISO_8859_1)));
        try {
            CommandLine.Run run = commands.run("interview", "new");
            assertThat(run.exitCode()).as(run.messages()).isEqualTo(1);
            assertThat(run.messages()).contains("not UTF-8");
        } finally {
            System.setIn(before);
        }
    }

    @Test
    void a_line_whose_letters_were_lost_on_the_way_is_not_stored_without_them() {
        CommandLine.Run run = commands.type("case note one 's\uFFFD'");
        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.messages()).contains("letters lost");
        assertThat(commands.type("case show one").out()).doesNotContain("\uFFFD");
    }

    private List<String> tried(Map<String, String> faults) throws Exception {
        List<String> amiss = new ArrayList<>();
        for (String command : commands.registered()) {
            List<String> words = words(command);
            int name = command.split(" ").length;
            for (Map.Entry<String, String> fault : faults.entrySet()) {
                for (String option : commands.valuesOf(command)) {
                    List<String> line = without(option, words);
                    line.add("--" + option + "=" + fault.getValue());
                    check(command + " --" + option + ": " + fault.getKey(), line, amiss);
                }
                for (int i = name; i < words.size() && !words.get(i).startsWith("--"); i++) {
                    List<String> line = new ArrayList<>(words);
                    line.set(i, fault.getValue());
                    check(command + ", argument " + (i - name + 1) + ": " + fault.getKey(), line, amiss);
                }
            }
        }
        return amiss;
    }

    /** The line without a good value of the option: a second one would be refused before it is looked at. */
    private static List<String> without(String option, List<String> words) {
        List<String> line = new ArrayList<>(words);
        line.removeIf(word -> word.startsWith("--" + option + "="));
        int at = line.indexOf("--" + option);
        if (at >= 0) {
            line.remove(at);
            if (at < line.size() && !line.get(at).startsWith("--")) {
                line.remove(at);
            }
        }
        return line;
    }

    /** The first line for the command that does not write over what others need. */
    private List<String> words(String command) throws Exception {
        return Files.readAllLines(LINES).stream()
                .filter(l -> l.equals(command) || l.startsWith(command + " "))
                .findFirst()
                .map(l -> l.replace("{dir}", folder.toString()))
                .map(l -> List.of(l.replaceAll("\"([^\"]*)\"", "x").split(" ")))
                .orElse(List.of(command.split(" ")));
    }

    private void check(String what, List<String> line, List<String> amiss) {
        CommandLine.Run run = commands.run(line.toArray(String[]::new));
        boolean told = run.exitCode() == 0 || !run.messages().isBlank();
        if (run.exitCode() > 2
                || !told
                || run.messages().length() > LONGEST_MESSAGE
                || run.messages().contains("(null)")) {
            String message = run.messages().replace('\n', ' ');
            amiss.add(what + " -> " + run.exitCode() + " " + message.substring(0, Math.min(200, message.length())));
        }
    }
}
