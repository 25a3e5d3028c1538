package witnessmark.shell.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.shell.CommandLine;

/** Where it cannot be told, causes are named and what would decide; nobody is given a chance or a class. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class UndecidedTest {
    /** A chance written out; of the coverage it is said too, and left out here. */
    private static final String PER_CENT = "\\d+ %";

    private CommandLine shop;

    /** Both cones burned and nothing else known: a habit is likely, and cannot be told. */
    @BeforeAll
    void keep_a_case_that_cannot_be_told(@TempDir Path folder) {
        shop = new CommandLine(folder.resolve("store"));
        done("case new cones --complaint Grinds");
        done("case set cones range-cone-low-burned=present range-cone-high-burned=present");
        assertThat(done("diagnose cones --format json")).contains("\"standing\":\"undetermined\"");
    }

    @AfterAll
    void close() {
        shop.close();
    }

    private String done(String line) {
        CommandLine.Run run = shop.type(line);
        assertThat(run.exitCode()).as(line + ": " + run.messages()).isZero();
        return run.out();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "es"})
    void where_it_stands_names_causes_and_what_to_look_at(String language) {
        String all = done("status cones --language " + language);
        String causes = all.substring(
                all.indexOf(language.equals("en") ? "Possible causes" : "Causas posibles"),
                all.indexOf(language.equals("en") ? "Look at next" : "Revisar ahora"));

        assertThat(causes).contains("(range-move-in-neutral)");
        assertThat(all.lines().filter(l -> l.matches(".*" + PER_CENT + ".*")))
                .hasSize(1)
                .allMatch(l -> l.startsWith("Looked at:") || l.startsWith("Revisado:"));
        assertThat(all).doesNotContain("driver habit", "hábito del conductor", "[#");
        assertThat(all.substring(all.indexOf(causes) + causes.length())).contains("- ");
    }

    /** Whether a caution follows what to look at or none does. */
    @ParameterizedTest
    @ValueSource(strings = {"diagnose cones", "diagnose cones --full", "diagnose quiet", "diagnose quiet --full"})
    void no_two_lines_in_a_row_are_blank(String line) {
        done("case new quiet-" + line.hashCode() + " --complaint Grinds");
        String id = "quiet-" + line.hashCode();
        done("case set " + id + " range-grinds-into-low=present");

        assertThat(done(line.replace("quiet", id))).contains("Look at next").doesNotContain("\n\n\n");
    }

    @Test
    void the_ranking_names_habits_without_class_or_chance() {
        List<String> habits = done("diagnose cones --full")
                .lines()
                .filter(l -> l.contains("range-move-in-neutral"))
                .toList();

        assertThat(habits).isNotEmpty().noneMatch(l -> l.matches(".*" + PER_CENT + ".*"));
        assertThat(done("diagnose cones --full")).doesNotContain("- driver habit (");
    }

    /** For a program that reads the answer too, nobody's class has a share while it cannot be told whose it is. */
    @Test
    void the_machine_form_has_no_share_of_any_class() {
        assertThat(done("diagnose cones --format json"))
                .contains("\"standing\":\"undetermined\"", "\"attribution\":[]", "\"id\":\"range-move-in-neutral\"");
        assertThat(done("status cones --format json")).contains("\"attribution\":[]");
    }

    @Test
    void where_it_can_be_told_every_share_is_carried_by_a_cause_of_its_class() {
        done("case new clogged --complaint Slow");
        done("case set clogged air-filter-clogged=present range-slow-into-low=present");
        String json = done("diagnose clogged --format json");

        assertThat(json).contains("\"standing\":\"concluded\"");
        String causes = json.substring(json.indexOf("\"causes\":"), json.indexOf("\"attribution\":"));
        String shares = json.substring(json.indexOf("\"attribution\":"), json.indexOf("\"contradictions\":"));
        Matcher share = Pattern.compile("\"class\":\"([a-z-]+)\"").matcher(shares);
        assertThat(share.find()).isTrue();
        do {
            assertThat(causes)
                    .containsPattern("\"class\":\"" + share.group(1) + "\"[^{}]*?\"probability\":(0\\.[1-9]|1\\.0)");
        } while (share.find());
    }
}
