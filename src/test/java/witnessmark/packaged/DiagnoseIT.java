package witnessmark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The main job through the packaged program: a case file in, ranked causes out. */
class DiagnoseIT {
    @TempDir
    Path folder;

    private Program program() {
        return Program.unpacked(folder.resolve("store"));
    }

    private Program.Run diagnose(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.yaml"), text);
        return program().run("diagnose", file.toString());
    }

    @Test
    void the_jar_prints_the_machine_form_and_nothing_else_on_stdout() {
        Program.Run run =
                Program.jar().run("diagnose", "sample-cases/scored-hubs-after-a-tow.yaml", "--format", "json");

        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertThat(json.propertyNames())
                .contains(
                        "case",
                        "verdict",
                        "causes",
                        "attribution",
                        "contradictions",
                        "nextChecks",
                        "advice",
                        "coverage");
        assertThat(json.get("case").asString()).isEqualTo("scored-hubs-after-a-tow");
        assertThat(json.get("verdict").asString()).isEqualTo("towing-transport");
        JsonNode first = json.get("causes").get(0);
        assertThat(first.get("id").asString()).isEqualTo("tow-wheels-down");
        assertThat(first.get("class").asString()).isEqualTo("towing-transport");
        assertThat(first.get("probability").asDouble()).isBetween(0.9, 1.0);
        assertThat(first.get("for").get(0).get("finding").asString()).isEqualTo("tow-record-wheels-down");
        assertThat(first.get("for").get(0).get("decibans").asDouble()).isPositive();
        assertThat(first.get("against").isArray()).isTrue();
        assertThat(first.get("unchecked").isArray()).isTrue();
        assertThat(first.get("lookAlikes").isArray()).isTrue();
        JsonNode check = json.get("nextChecks").get(0);
        assertThat(check.propertyNames()).contains("finding", "gainBits", "minutes", "why");
        assertThat(json.get("advice").propertyNames()).contains("repair", "coaching", "towing", "cautions");
    }

    @Test
    void the_text_form_is_plain_and_without_escape_codes_when_it_is_no_terminal() {
        Program.Run run = program().run("diagnose", "sample-cases/slow-into-low-low-air.yaml");
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("Verdict").contains("Decision support").doesNotContain("\u001b");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    }

    @Nested
    class Refusals {
        @Test
        void faults_of_a_file_are_told_all_at_once_with_their_places() throws IOException {
            Program.Run run = diagnose(
                    """
                    case: Bad Id
                    gearbox: { range: steam }
                    findings:
                      oil-level-low: maybe
                    measurements:
                      range-regulator-pressure: { value: .nan, unit: furlong, low: -1, limit-from: manual }
                    """);
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.out()).isEmpty();
            assertThat(run.err())
                    .contains("bad.yaml:1:")
                    .contains("bad.yaml:2:")
                    .contains("bad.yaml:4:")
                    .contains("bad.yaml:6:")
                    .doesNotContain("Exception");
        }

        @Test
        void a_finding_that_stands_twice_is_refused_with_both_places() throws IOException {
            Program.Run run = diagnose("case: twice\nfindings:\n  oil-level-low: present\n  oil-level-low: absent\n");
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err()).contains("oil-level-low").contains("twice").contains("line 3");
        }

        @Test
        void an_unknown_finding_gets_the_nearest_known_ones() throws IOException {
            Program.Run run = diagnose("case: near\nfindings:\n  oil-levl-low: present\n");
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err())
                    .contains("oil-levl-low")
                    .contains("did you mean")
                    .contains("oil-level-low");
        }

        @Test
        void a_huge_file_is_refused_unread() throws IOException {
            Program.Run run = diagnose("case: huge\nnotes:\n  - " + "x".repeat(3_000_000) + "\n");
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err().lines()).hasSize(1);
        }

        @Test
        void a_type_tag_and_an_alias_bomb_are_refused() throws IOException {
            assertThat(diagnose("case: !!javax.script.ScriptEngineManager [x]\n")
                            .code())
                    .isEqualTo(1);
            StringBuilder bomb = new StringBuilder("a0: &a0 [x,x,x,x,x,x,x,x,x,x]\n");
            for (int i = 1; i < 12; i++) {
                bomb.append("a%d: &a%d [%s]\n"
                        .formatted(i, i, String.join(",", java.util.Collections.nCopies(10, "*a" + (i - 1)))));
            }
            Program.Run run = diagnose(bomb.toString());
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err()).doesNotContain("OutOfMemory");
        }

        @Test
        void a_missing_file_an_unknown_command_and_an_unknown_option_say_the_mend() {
            Program.Run missing = program().run("diagnose", "nowhere/at-all.yaml");
            assertThat(missing.code()).isEqualTo(1);
            assertThat(missing.err()).contains("no case file").hasLineCount(1);

            Program.Run command = program().run("diagnos", "x.yaml");
            assertThat(command.code()).isEqualTo(2);
            assertThat(command.err()).contains("diagnose");

            Program.Run option = program().run("diagnose", "x.yaml", "--formt", "json");
            assertThat(option.code()).isEqualTo(2);
            assertThat(option.err()).contains("--format");

            Program.Run form = program().run("diagnose", "sample-cases/slow-into-low-low-air.yaml", "--format", "xml");
            assertThat(form.code()).isEqualTo(2);
            assertThat(form.err()).contains("text or json");
        }

        @Test
        void control_characters_of_a_case_never_reach_the_terminal() {
            Program.Run run = program().run("diagnose", "x\u001b[31m\u0007y");
            assertThat(run.out() + run.err()).doesNotContain("\u001b").doesNotContain("\u0007");
        }
    }

    @Nested
    class SiteKnowledge {
        @Test
        void a_folder_of_ones_own_is_checked_in_full_before_use() throws IOException {
            Path own = Files.createDirectories(folder.resolve("own/causes"));
            Files.writeString(
                    own.resolve("ours.yaml"),
                    """
                    system: range
                    causes:
                      - id: Our Cause
                        title: Ours
                        class: driver-habits
                        prior: often
                        mechanism: It happens.
                        links:
                          - { finding: oil-levl-low, strength: usualy }
                        repair: [Mend it.]
                        sources: [common-practice]
                    """);
            Program.Run run = program().run("--knowledge", own.getParent().toString(), "knowledge", "list", "pages");
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err().lines()).hasSize(5);
            assertThat(run.err())
                    .contains("causes/ours.yaml:3:")
                    .contains("did you mean 'driver-habit'?")
                    .contains("did you mean 'oil-level-low'?")
                    .contains("prior 'often'")
                    .contains("usualy");
        }

        @Test
        void a_sound_one_is_laid_on_top_of_the_shipped_one() throws IOException {
            Path own = Files.createDirectories(folder.resolve("own/causes"));
            Files.writeString(
                    own.resolve("ours.yaml"),
                    """
                    system: oil
                    causes:
                      - id: leaking-yard-tap
                        title: Oil topped up from the leaking yard tap
                        class: maintenance
                        prior: rare
                        mechanism: Rain got into the tank.
                        links:
                          - { finding: oil-water-proved, strength: usually }
                        repair: [Drain and flush.]
                        sources: [common-practice]
                    """);
            Program.Run run =
                    program().run("--knowledge", own.getParent().toString(), "knowledge", "show", "leaking-yard-tap");
            assertThat(run.code()).isZero();
            assertThat(run.out()).contains("Rain got into the tank.");
        }

        @Test
        void a_rule_file_in_it_is_refused() throws IOException {
            Path own = Files.createDirectories(folder.resolve("own"));
            Files.writeString(own.resolve("evil.drl"), "rule x when then System.exit(0); end");
            Program.Run run = program().run("--knowledge", own.toString(), "knowledge", "list", "pages");
            assertThat(run.code()).isEqualTo(1);
            assertThat(run.err()).contains("evil.drl").contains("rules are code");
        }
    }
}
