package witnessmark.shell.log;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import witnessmark.shell.CommandLine;
import witnessmark.shell.CommandLine.Run;
import witnessmark.shell.run.SplitLine;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.truck.ReadyTrucks;

class FleetCommandsTest {
    private static final Path SAMPLES = Path.of("sample-cases/logs");

    @TempDir
    static Path folder;

    private static CommandLine shell;
    private static Path out;

    /** The sample logs as a fleet, with files that are no logs. */
    @BeforeAll
    static void read_the_fleet() throws IOException {
        shell = new CommandLine(folder.resolve("store"));
        Path fleet = Files.createDirectories(folder.resolve("fleet"));
        try (Stream<Path> logs = Files.list(SAMPLES)) {
            for (Path log : logs.toList()) {
                Files.copy(log, fleet.resolve(log.getFileName()));
            }
        }
        Files.writeString(fleet.resolve("unit-9_letter.txt"), "Dear all,\nthis is no log.\n");
        Files.createDirectories(fleet.resolve("unit-31"));
        Files.copy(
                SAMPLES.resolve("unit-31_high-range-starts.csv"),
                fleet.resolve("unit-31").resolve("twice.csv"));
        out = folder.resolve("tables");
        Run run = run("log fleet " + fleet + " --truck thirteen-ratio --out " + out);
        assertThat(run.messages()).isEmpty();
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains("4 trucks, 5 logs counted, 2 not")
                .contains("unit-31_high-range-starts.csv: the same log as unit-31/twice.csv; it would count twice")
                .contains("A log names a truck, not who drove it");
        assertThat(run.out().lines()).allMatch(l -> l.length() <= 80 || l.contains(folder.toString()));
    }

    @AfterAll
    static void close() {
        shell.close();
    }

    private static Run run(String line) {
        return shell.run(SplitLine.of(line).toArray(String[]::new));
    }

    private static void done(String line) {
        Run run = run(line);
        assertThat(run.messages()).as(line).isEmpty();
        assertThat(run.exitCode()).isZero();
    }

    private static void refused(String line, int exitCode, String... messages) {
        Run run = run(line);
        assertThat(run.messages().lines()).containsExactly(messages);
        assertThat(run.exitCode()).isEqualTo(exitCode);
    }

    private static List<NamedCsvRecord> rows(Path table) throws IOException {
        try (CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(table)) {
            return rows.stream().toList();
        }
    }

    private static JsonNode json(String line) {
        return new ObjectMapper().readTree(run(line + " --format json").out());
    }

    private static JsonNode records(String line) {
        return json(line).get("records");
    }

    /** What a case keeps of logs, without the names that were chosen for it. */
    private static String kept(String id) {
        String yaml = run("case export " + id).out();
        return yaml.substring(yaml.indexOf("record:")).replaceFirst("(?s)\n {0,4}\\S.*", "");
    }

    @Test
    void the_acts_are_the_events_that_log_read_tells_without_what_follows_from_them() throws IOException {
        Run read = run("log read thirteen-ratio " + SAMPLES + " --events --format csv");
        Path events = Files.writeString(folder.resolve("events.csv"), read.out());
        Set<List<String>> told = rows(events).stream()
                .map(r -> List.of(
                        r.getField("truck"),
                        r.getField("kind"),
                        r.getField("start"),
                        r.getField("first_line"),
                        r.getField("severity"),
                        r.getField("sentence")))
                .collect(Collectors.toSet());

        List<NamedCsvRecord> acts = rows(out.resolve("acts.csv"));

        assertThat(acts).hasSizeGreaterThan(8).allSatisfy(r -> assertThat(told)
                .contains(List.of(
                        r.getField("truck"),
                        r.getField("kind"),
                        r.getField("start"),
                        r.getField("first_line"),
                        r.getField("severity"),
                        r.getField("sentence"))));
        long followers = acts.stream()
                .mapToLong(r -> Stream.of(r.getField("followed_by").split(" "))
                        .filter(k -> !k.isEmpty())
                        .count())
                .sum();
        assertThat(acts.size() + followers).isEqualTo(told.size());
    }

    @Test
    void a_record_taken_in_is_what_log_add_keeps_of_the_same_log() {
        done("case new by-log --unit \"Unit 32\"");
        done("log add by-log thirteen-ratio " + SAMPLES.resolve("unit-32_coast-and-tow.candump"));
        done("case new by-table --unit \"another name\"");
        done("log import-results " + out.resolve("days.csv")
                + " --case by-table --truck unit-32 --nevertheless renamed");

        // The table has no room for the marks of rows.
        assertThat(kept("by-table").replaceFirst("(?s)\n *doubts:.*", ""))
                .isEqualTo(kept("by-log").replaceFirst("(?s)\n *doubts:.*", "").replaceFirst(", rows: \\[[^\\]]*]", ""))
                .contains("log-rolling-at-idle", "2023-11-14T22:13:20.023Z");
    }

    @Test
    void logs_of_a_truck_weigh_in_its_case_as_if_they_were_added_one_by_one() {
        done("case new one-by-one");
        done("log add one-by-one thirteen-ratio " + SAMPLES.resolve("unit-31_high-range-starts.csv"));
        done("log add one-by-one thirteen-ratio " + SAMPLES.resolve("unit-31_after-coaching.csv"));
        done("case new at-once");
        done("log import-results " + out.resolve("days.csv") + " --case at-once --truck unit-31");

        JsonNode causes = json("diagnose one-by-one").get("causes");
        assertThat(causes).isNotEmpty();
        assertThat(json("diagnose at-once").get("causes")).isEqualTo(causes);
    }

    /** In the second log each shift from overdrive to low range follows from a graver act and is open; in the first not. */
    @Test
    void one_command_or_several_in_either_order_or_the_fleets_table_come_to_the_same_judgement() throws IOException {
        Path fleet = Files.createDirectories(folder.resolve("open-acts"));
        Path shown = fleet.resolve("unit-33_habits.csv");
        DriveScripts.habits(InventedTrucks.thirteen(), 31).writeCsv(shown, Recording.usual(10), 3);
        Path open = Files.copy(SAMPLES.resolve("unit-33_low-range-too-fast.csv"), fleet.resolve("unit-33_b.csv"));
        done("case new a-then-b");
        done("log add a-then-b thirteen-ratio " + shown);
        done("log add a-then-b thirteen-ratio " + open);
        done("case new b-then-a");
        done("log add b-then-a thirteen-ratio " + open);
        done("log add b-then-a thirteen-ratio " + shown);
        done("case new both");
        done("log add both thirteen-ratio " + open + " " + shown);
        done("case new from-table");
        Path tables = folder.resolve("open-acts-tables");
        done("log fleet " + fleet + " --truck thirteen-ratio --out " + tables);
        done("log import-results " + tables.resolve("days.csv") + " --case from-table --truck unit-33");

        assertThat(kept("both")).containsPattern("log-overdrive-to-low-pair: \\{ count: [1-9][^}]*open: 3");
        JsonNode causes = json("diagnose both").get("causes");
        assertThat(causes).isNotEmpty();
        for (String id : List.of("a-then-b", "b-then-a", "from-table")) {
            assertThat(json("diagnose " + id).get("causes")).as(id).isEqualTo(causes);
        }
    }

    /** Together the logs fit in more than 80 % of the driving. */
    @Test
    void a_log_that_does_not_fit_is_in_doubt_among_fitting_ones_as_it_is_alone() throws IOException {
        Path fleet = Files.createDirectories(folder.resolve("one-misfit"));
        Path fits = fleet.resolve("unit-36_fits.csv");
        DriveScripts.proper(InventedTrucks.thirteen(), 5, 60).writeCsv(fits, Recording.usual(5), 1);
        Path misfit = fleet.resolve("unit-36_misfit.csv");
        DriveScripts.proper(InventedTrucks.ten(), 4, 5).writeCsv(misfit, Recording.usual(5), 1);
        Path tables = folder.resolve("one-misfit-tables");
        done("log fleet " + fleet + " --truck thirteen-ratio --out " + tables);
        NamedCsvRecord day = rows(tables.resolve("days.csv")).get(0);
        assertThat(Double.parseDouble(day.getField("fitting_hours"))
                        / Double.parseDouble(day.getField("telling_hours")))
                .isBetween(0.8, 0.99);
        done("case new misfit --ratios 13");

        for (String line : List.of(
                "log add misfit thirteen-ratio " + misfit,
                "log add misfit thirteen-ratio " + fits + " " + misfit,
                "log import-results " + tables.resolve("days.csv") + " --case misfit --truck unit-36")) {
            assertThat(run(line).messages())
                    .as(line)
                    .contains("of the driving time of 'unit-36_misfit.csv': another truck, axle or tyre")
                    .doesNotContain("of the driving time:");
        }
        done("log add misfit thirteen-ratio " + fits);
    }

    @Test
    void records_go_into_the_open_cases_of_their_trucks_once() {
        done("case new found --unit UNIT_33");
        done("case new closed --unit unit-33");
        done("case sign-off closed");
        String line = "log import-results " + out.resolve("days.csv") + " --truck unit-33";

        JsonNode first = records(line);
        assertThat(first).hasSize(1);
        assertThat(first.get(0).get("case").asString()).isEqualTo("found");
        assertThat(first.get(0).get("state").asString()).isEqualTo("stored");
        assertThat(run("case show found").out()).contains("log-unit-33-undated");
        assertThat(records(line).get(0).get("state").asString()).isEqualTo("held-already");
    }

    @Test
    void a_day_that_grew_takes_the_place_of_what_was_taken_before_and_one_that_shrank_does_not() throws IOException {
        Path fleet = Files.createDirectories(folder.resolve("growing"));
        Files.copy(SAMPLES.resolve("unit-31_after-coaching.csv"), fleet.resolve("unit-31_after-coaching.csv"));
        Path less = folder.resolve("less");
        done("log fleet " + fleet + " --truck thirteen-ratio --out " + less);
        done("case new growing");
        String into = " --case growing --truck unit-31";
        done("log import-results " + less.resolve("days.csv") + into);

        assertThat(records("log import-results " + out.resolve("days.csv") + into)
                        .get(0)
                        .get("state")
                        .asString())
                .isEqualTo("stored");
        assertThat(records("log import-results " + less.resolve("days.csv") + into)
                        .get(0)
                        .get("state")
                        .asString())
                .isEqualTo("held-already");
        assertThat(kept("growing")).contains("count: 3");
    }

    @Test
    void what_does_not_fit_is_refused_with_the_reason_and_stops_no_other() {
        done("case new ten --unit unit-34 --ratios 10");
        done("case new right --unit unit-34");
        String line = "log import-results " + out.resolve("days.csv") + " --truck unit-34";

        Run run = run(line);

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.messages())
                .contains("case ten, unit-34 undated: case 'ten' says that its gearbox has 10 forward");
        assertThat(run.out()).contains("case right, unit-34 undated: evidence log-unit-34-undated");
        done("case new other --unit \"Unit 99\"");
        assertThat(run("log import-results " + out.resolve("days.csv") + " --case other --truck unit-32")
                        .messages())
                .contains("its name says unit-32, the truck of the case is Unit 99")
                .contains("add them with --nevertheless 'why'");
    }

    @Test
    void a_truck_is_read_with_its_own_profile_and_one_without_any_is_told() throws IOException {
        Path fleet = Files.createDirectories(folder.resolve("profiled"));
        Files.copy(SAMPLES.resolve("unit-33_low-range-too-fast.csv"), fleet.resolve("unit-33_a.csv"));
        Files.copy(SAMPLES.resolve("unit-31_after-coaching.csv"), fleet.resolve("unit-31_a.csv"));
        Path profiles = Files.createDirectories(folder.resolve("profiles"));
        Files.writeString(
                profiles.resolve("unit-33.yaml"),
                ReadyTrucks.yaml("thirteen-ratio").replaceFirst("(?m)^truck: .*$", "truck: unit-33"));
        Path tables = folder.resolve("profiled-tables");

        done("log fleet " + fleet + " --profiles " + profiles + " --out " + tables);

        assertThat(rows(tables.resolve("days.csv")).get(0).getField("profile")).isEqualTo("unit-33");
        assertThat(rows(tables.resolve("not-counted.csv")).get(0).getField("reason"))
                .isEqualTo("no profile for this truck: keep one named 'unit-31' beside the others, or give one for all"
                        + " trucks");
    }

    @Test
    void a_link_to_a_log_that_is_gone_is_told_of() throws IOException {
        Path fleet = Files.createDirectories(folder.resolve("with-link"));
        Files.copy(SAMPLES.resolve("unit-31_after-coaching.csv"), fleet.resolve("unit-31_a.csv"));
        Files.createSymbolicLink(fleet.resolve("unit-31_gone.csv"), fleet.resolve("nowhere.csv"));
        Path tables = folder.resolve("with-link-tables");

        done("log fleet " + fleet + " --truck thirteen-ratio --out " + tables);

        NamedCsvRecord gone = rows(tables.resolve("not-counted.csv")).get(0);
        assertThat(gone.getField("file")).isEqualTo("unit-31_gone.csv");
        assertThat(gone.getField("reason")).startsWith("cannot be read (");
        assertThat(run("log read thirteen-ratio " + fleet).messages())
                .contains("unit-31_gone.csv: no such file, or not a plain file");
    }

    @Nested
    class Refusals {
        @Test
        void of_what_cannot_be_read_or_written() throws IOException {
            Path empty = Files.createDirectories(folder.resolve("empty"));
            refused("log fleet " + SAMPLES, 2, "name the logs and where the tables go: log fleet FOLDER --out FOLDER");
            refused(
                    "log fleet " + empty + " --out " + folder.resolve("none"),
                    1,
                    "'" + empty + "' holds no log files; looked for were .csv .log .txt .candump .asc, also .gz");
            refused(
                    "log fleet " + SAMPLES + " --truck thirteen-ratio --out " + out,
                    1,
                    "'" + out.resolve("acts.csv")
                            + "' is there already; give another folder after --out, or add --replace");
            refused(
                    "log fleet " + folder.resolve("nowhere") + " --out " + folder.resolve("none"),
                    1,
                    "'" + folder.resolve("nowhere") + "' is no folder; give that of the fleet's logs");
            refused(
                    "log fleet " + SAMPLES + " --profiles nowhere --out " + folder.resolve("none"),
                    1,
                    "--profiles 'nowhere' is no folder; give that of the trucks' profiles");
        }

        @Test
        void of_tables_among_the_logs_that_a_later_run_would_take_for_logs() throws IOException {
            Path linked = Files.createSymbolicLink(folder.resolve("linked-samples"), SAMPLES.toAbsolutePath());
            for (Path among : List.of(SAMPLES, SAMPLES.resolve("tables"), linked.resolve("tables/of/today"))) {
                refused(
                        "log fleet " + SAMPLES + " --truck thirteen-ratio --out " + among,
                        1,
                        "--out '" + among
                                + "' lies in the folder of the logs, where the tables would be taken for logs;"
                                + " give a folder outside of it");
            }
            assertThat(SAMPLES.resolve("tables")).doesNotExist();
        }

        @Test
        void of_a_table_that_is_none_or_is_damaged() throws IOException {
            Path acts = out.resolve("acts.csv");
            refused(
                    "log import-results " + acts,
                    1,
                    "'" + acts
                            + "' is no table of trucks and days; give days.csv as log fleet or the fleet's job writes"
                            + " it, with its first line");
            String days = Files.readString(out.resolve("days.csv"));
            Path damaged = Files.writeString(
                    folder.resolve("damaged.csv"), days.replaceFirst("(?m)^unit-32,[^,]*,", "unit-32,then,"));
            refused(
                    "log import-results " + damaged,
                    1,
                    damaged + ":3 column day: 'then' is no date as 2026-03-14, and not undated",
                    "nothing was stored; have the table written anew");
            Path cut = Files.writeString(folder.resolve("cut.csv"), days.substring(0, days.length() - 100));
            assertThat(run("log import-results " + cut).messages()).contains(cut + ":5 ", "nothing was stored");
            Path foreign = Files.writeString(
                    folder.resolve("foreign.csv"), days.replace("log-oil-temperature-high=", "log-of-nothing="));
            done("case new foreign --unit unit-34x");
            assertThat(run("log import-results " + foreign + " --case foreign --truck unit-34")
                            .messages())
                    .contains("no finding 'log-of-nothing' is known");
        }

        @Test
        void of_days_and_cases_that_make_no_sense() {
            String table = "log import-results " + out.resolve("days.csv");
            refused(table + " --case a", 2, "--case needs the truck whose records it takes: --truck NAME");
            refused(table + " --from yesterday", 2, "--from 'yesterday' is no date; write it as 2026-03-01");
            refused(
                    table + " --from 2026-03-02 --to 2026-03-01",
                    2,
                    "--from 2026-03-02 is after --to 2026-03-01; give the earlier day first");
            assertThat(run(table + " --truck unit-32 --from 2024-01-01").messages())
                    .contains("belongs to an open case: a case's unit must bear the truck's name");
        }
    }
}
