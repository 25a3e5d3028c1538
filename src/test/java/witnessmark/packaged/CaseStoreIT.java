package witnessmark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cases kept by the packaged program: the life of a case, two shells at once, and a kill in mid-stream. */
class CaseStoreIT {
    @TempDir
    Path folder;

    private Program program() {
        return Program.unpacked(folder.resolve("store"));
    }

    private Program.Run script(String... lines) throws IOException {
        Path script = folder.resolve("script.txt");
        Files.write(script, List.of(lines));
        return program().run("@" + script);
    }

    @Test
    void a_case_lives_from_opening_to_sign_off_and_moves_to_another_store() throws IOException {
        Program.Run life = script(
                "case new t1 --title 'Hubs \"scored\"' --unit 'Tractor 1' --ratios 13 --range air",
                "case set t1 hubs-scored-several-gears=present oil-level-low=absent",
                "case measure t1 range-regulator-pressure 4.1 bar --low 3.9 --high 4.3 --limit-from 'service manual'",
                "case note t1 'Driver says -> towed'",
                "case sign-off t1");
        assertThat(life.err()).isEmpty();
        assertThat(life.code()).isZero();

        Program.Run late = program().run("case", "set", "t1", "washers-cracked=present");
        assertThat(late.code()).isEqualTo(1);
        assertThat(late.err()).contains("signed off");
        Program.Run corrected =
                program().run("case", "set", "t1", "washers-cracked=present", "--reason", "found at cleaning");
        assertThat(corrected.code()).isZero();

        Path exported = folder.resolve("t1.yaml");
        assertThat(program()
                        .run("case", "export", "t1", "--out", exported.toString())
                        .code())
                .isZero();
        Program other = Program.unpacked(folder.resolve("other"));
        assertThat(other.run("case", "import", exported.toString()).code()).isZero();
        assertThat(other.run("case", "verify", "t1").out()).contains("is whole");
        assertThat(other.run("case", "history", "t1").out().replaceAll("\\s+", " "))
                .contains("because found at cleaning")
                .contains("tester");
        assertThat(other.run("case", "import", exported.toString()).code()).isEqualTo(1);

        String broken = Files.readString(exported).replaceFirst("Tractor 1", "Tractor 2");
        Files.writeString(exported, broken);
        Program.Run tampered = Program.unpacked(folder.resolve("third")).run("case", "import", exported.toString());
        assertThat(tampered.code()).isEqualTo(1);
    }

    @Test
    void a_tow_set_and_withdrawn_lowers_coasting_and_raises_it_again() throws IOException {
        script(
                "case new tow --ratios 13",
                "case set tow hubs-scored-several-gears=present washers-cracked=present oil-level-low=absent");
        double before = coasting();
        script("case set tow tow-record-wheels-down=present");
        double with = coasting();
        script("case clear tow tow-record-wheels-down");
        double after = coasting();
        assertThat(with).isLessThan(before / 2);
        assertThat(after).isEqualTo(before);
    }

    private double coasting() {
        String json = program().run("diagnose", "tow", "--format", "json").out();
        for (var cause :
                new tools.jackson.databind.ObjectMapper().readTree(json).get("causes")) {
            if (cause.get("id").asString().equals("neutral-coast")) {
                return cause.get("probability").asDouble();
            }
        }
        throw new AssertionError("neutral-coast is not ranked");
    }

    @Test
    void two_shells_at_once_lose_nothing_of_each_other() throws Exception {
        script("case new both");
        Process first = appending("both", "a", 25).start();
        Process second = appending("both", "b", 25).start();
        assertThat(first.waitFor()).isZero();
        assertThat(second.waitFor()).isZero();
        String history = program().run("case", "history", "both").out();
        assertThat(history.lines().filter(l -> l.contains("note: note ")).count())
                .isEqualTo(50);
        assertThat(program().run("case", "verify", "both").code()).isZero();
    }

    @RepeatedTest(3)
    void a_kill_in_mid_stream_loses_nothing_acknowledged() throws Exception {
        script("case new killed");
        Process process =
                appending("killed", "n", 2000).redirectErrorStream(true).start();
        int acknowledged = 0;
        try (BufferedReader lines = process.inputReader()) {
            String line = lines.readLine();
            while (line != null) {
                if (line.startsWith("Stored as entry")) {
                    acknowledged = Integer.parseInt(line.split(" ")[3]);
                }
                if (acknowledged > 60) {
                    process.destroyForcibly().waitFor();
                    break;
                }
                line = lines.readLine();
            }
        }
        Program.Run verify = program().run("case", "verify", "killed");
        assertThat(verify.code()).isZero();
        Matcher entries = Pattern.compile("(\\d+) entries").matcher(verify.out());
        assertThat(entries.find()).isTrue();
        int kept = Integer.parseInt(entries.group(1));
        assertThat(kept).isGreaterThanOrEqualTo(acknowledged);
        assertThat(acknowledged).isGreaterThan(60);
    }

    private ProcessBuilder appending(String id, String name, int count) throws IOException {
        Path script = folder.resolve(name + ".txt");
        Files.writeString(
                script,
                IntStream.range(0, count)
                        .mapToObj(i -> "case note " + id + " 'note " + name + i + "'")
                        .collect(Collectors.joining("\n")));
        return program().start("@" + script);
    }

    @Test
    void a_store_that_cannot_be_used_is_told_in_one_line() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "no folder");
        Program.Run run = Program.unpacked(file).run("case", "list");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains(file.toString()).hasLineCount(1);

        Path store = Files.createDirectories(folder.resolve("damaged"));
        Files.writeString(store.resolve("cases.mv.db"), "this is no database");
        Program.Run damaged = Program.unpacked(store).run("case", "list");
        assertThat(damaged.code()).isEqualTo(1);
        assertThat(damaged.err()).hasLineCount(1);
    }

    @Test
    void settings_in_the_current_folder_are_not_obeyed() throws Exception {
        Path here = Files.createDirectories(folder.resolve("here"));
        Files.writeString(here.resolve("application.properties"), "witnessmark.who=forged\nwitnessmark.store=forged\n");
        Files.createDirectories(here.resolve("config"));
        Files.copy(here.resolve("application.properties"), here.resolve("config/application.properties"));

        int code = program()
                .start("case", "new", "mine")
                .directory(here.toFile())
                .start()
                .waitFor();

        assertThat(code).isZero();
        assertThat(program().run("case", "history", "mine").out())
                .contains("tester")
                .doesNotContain("forged");
        assertThat(here.resolve("forged")).doesNotExist();
    }

    @Test
    void letters_beyond_ascii_are_kept_under_a_locale_that_does_not_know_them() throws Exception {
        ProcessBuilder plain = program().start("case", "new", "letters", "--title", "José");
        plain.environment().put("LC_ALL", "C");

        assertThat(plain.start().waitFor()).isZero();
        assertThat(program().run("case", "show", "letters").out()).contains("José");
    }

    @Test
    void a_script_stops_at_the_first_line_that_fails_and_names_it() throws IOException {
        Program.Run run = script("case new s1", "case set s1 no-such-finding=present", "case new s2");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains("stopped at line 2");
        assertThat(program().run("case", "list").out()).contains("s1").doesNotContain("s2");
    }
}
