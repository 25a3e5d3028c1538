package witnessmark.shell.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.IntStream;
import java.util.zip.GZIPOutputStream;
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
import witnessmark.triplog.event.EventKind;

class LogCommandsTest {
    private static final String LOGS = "sample-cases/logs/";
    private static final String STARTS = LOGS + "unit-31_high-range-starts.csv";
    private static final String COACHED = LOGS + "unit-31_after-coaching.csv";
    private static final String COAST = LOGS + "unit-32_coast-and-tow.candump";
    private static final String TOO_FAST = LOGS + "unit-33_low-range-too-fast.csv";
    private static final String SLOW = LOGS + "unit-34_slow-logger.csv";

    @TempDir
    static Path folder;

    private static CommandLine shell;

    @BeforeAll
    static void open() {
        shell = new CommandLine(folder.resolve("store"));
    }

    @AfterAll
    static void close() {
        shell.close();
    }

    private static Run run(String line) {
        return shell.run(SplitLine.of(line).toArray(String[]::new));
    }

    private static JsonNode json(String line) {
        Run run = run(line + " --format json");
        assertThat(run.messages()).isEmpty();
        assertThat(run.exitCode()).isZero();
        return new ObjectMapper().readTree(run.out());
    }

    private static String text(String line) {
        Run run = run(line);
        assertThat(run.messages()).isEmpty();
        assertThat(run.exitCode()).isZero();
        assertThat(run.out().lines()).allMatch(l -> l.length() <= 80, "fits 80 columns");
        return run.out().replaceAll("\\s+", " ");
    }

    private static void refused(String line, int exitCode, String... messages) {
        Run run = run(line);
        assertThat(run.messages().lines()).containsExactly(messages);
        assertThat(run.exitCode()).isEqualTo(exitCode);
    }

    private static JsonNode kind(JsonNode summary, EventKind kind) {
        for (JsonNode one : summary.get("kinds")) {
            if (one.get("kind").asString().equals(kind.id())) {
                return one;
            }
        }
        throw new AssertionError(kind + " is not among the kinds");
    }

    private static Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Nested
    class Look {
        @Test
        void the_guessed_columns_are_shown_with_their_units_and_first_rows() {
            assertThat(text("log look " + STARTS))
                    .contains("CSV, columns parted by commas, decimal point, 1 header line")
                    .contains("guessed from the header: please confirm")
                    .contains("time time_s seconds 0.02 0.12 0.22")
                    .contains("engine speed engine_rpm rpm 596.1 610.5 602.1")
                    .contains("gearbox oil gearbox_oil_temp_c degC 82.0 82.0 82.0")
                    .contains("First row as it is read engine speed 596.1 rpm; road speed 0 km/h;");
        }

        @Test
        void units_of_another_country_are_shown_as_they_are_read() throws IOException {
            Path log = file("miles.csv", "time_s,engine_rpm,speed_mph,wipers\n0,1400,62,1\n1,1400,62,1\n");

            assertThat(text("log look " + log))
                    .contains("road speed speed_mph mph 62 62")
                    .contains("road speed 99.78 km/h")
                    .contains("Columns not used wipers");
        }

        @Test
        void a_saved_mapping_reads_the_log_as_the_guess_did_and_can_be_put_right() throws IOException {
            Path mapping = folder.resolve("own.yaml");
            text("log look " + STARTS + " --save-mapping " + mapping);

            JsonNode guessed =
                    json("log read thirteen-ratio " + STARTS).get("trucks").get(0);
            JsonNode mapped = json("log read thirteen-ratio " + STARTS + " --mapping " + mapping)
                    .get("trucks")
                    .get(0);
            assertThat(mapped.get("kinds")).isEqualTo(guessed.get("kinds"));

            Files.writeString(mapping, Files.readString(mapping).replace("unit: km/h", "unit: mph"));
            JsonNode miles = json("log read thirteen-ratio " + STARTS + " --mapping " + mapping)
                    .get("trucks")
                    .get(0);
            assertThat(miles.get("highestKmh").asDouble())
                    .isCloseTo(1.609344 * guessed.get("highestKmh").asDouble(), within(0.01));
        }

        @Test
        void a_bus_log_shows_the_signals_it_carries() {
            assertThat(text("log look " + COAST))
                    .contains("candump text, SAE J1939 frames; it needs no mapping")
                    .contains("gearbox oil 1285 degC 82 82 82");
        }

        @Test
        void what_cannot_be_looked_at_is_refused() throws IOException {
            refused("log look", 2, "name the log: log look FILE");
            refused("log look nowhere.csv", 1, "nowhere.csv: no such file, or not a plain file; check the name");
            refused(
                    "log look " + COAST + " --save-mapping " + folder.resolve("none.yaml"),
                    1,
                    "'" + COAST + "' is a candump log; it needs no mapping, leave --save-mapping out");
            Path there = file("there.yaml", "");
            Run run = run("log look " + STARTS + " --save-mapping " + there);
            assertThat(run.exitCode()).isEqualTo(1);
            assertThat(run.messages()).contains("is there already");
        }
    }

    @Nested
    class Read {
        /** Exact limits for 3 events by R, poisson.test(3)$conf.int: 0.6186721 and 8.7672731. */
        @Test
        void events_come_with_their_rows_and_exact_intervals() {
            JsonNode truck = json("log read thirteen-ratio " + STARTS + " --events")
                    .get("trucks")
                    .get(0);

            JsonNode starts = kind(truck, EventKind.START_IN_HIGH_RANGE);
            double hundreds = truck.get("km").asDouble() / 100;
            assertThat(starts.get("state").asString()).isEqualTo("seen");
            assertThat(starts.get("count").asInt()).isEqualTo(3);
            assertThat(starts.get("chances").asDouble()).isEqualTo(6);
            assertThat(starts.get("lower95").asDouble() * hundreds).isCloseTo(0.6186721, within(1e-6));
            assertThat(starts.get("upper95").asDouble() * hundreds).isCloseTo(8.7672731, within(1e-6));
            assertThat(truck.get("events")).hasSize(3);
            assertThat(truck.get("worst").get(0).get("firstLine").asInt()).isEqualTo(64);
        }

        @Test
        void the_text_says_what_was_seen_what_was_not_and_what_cannot_be() {
            assertThat(text("log read thirteen-ratio " + STARTS))
                    .contains(">> 3 events in 2.4 km; 8 of 23 kinds cannot be seen here")
                    .contains("3 x start from rest in high range, 3 of 6 starts from rest (95 %: 12 to 88 in 100)")
                    .contains(LogText.NAMES_A_TRUCK)
                    .contains("in 21 lever shifts on the move: lever shift with a single press of the clutch;")
                    .contains("the log has no power take-off: power take-off engaged at road speed")
                    .contains("lines 64 to 184, 95 % sure");
        }

        @Test
        void a_slow_log_says_that_it_cannot_show_the_starts_and_warns_of_no_driver() {
            assertThat(text("log read thirteen-ratio " + SLOW))
                    .contains(
                            "engine speed comes once every 5 s; two a second are needed without a clutch signal: start from rest")
                    .contains(", one every 5 s")
                    .containsPattern("shifts +cannot be counted at this rate")
                    .doesNotContain(LogText.NAMES_A_TRUCK);
        }

        @Test
        void shifts_that_may_hide_between_two_rows_are_not_counted_as_all() throws IOException {
            String fast = text("log read thirteen-ratio " + STARTS);
            List<String> rows = Files.readAllLines(Path.of(STARTS));
            Path thinned = Files.write(
                    folder.resolve("thinned.csv"),
                    IntStream.range(0, rows.size())
                            .filter(i -> i % 10 == 0)
                            .mapToObj(rows::get)
                            .toList());

            assertThat(fast).containsPattern("shifts +\\d+, of them");
            assertThat(text("log read thirteen-ratio " + thinned)).containsPattern("shifts +at least \\d+, of them");
        }

        @Test
        void a_log_of_one_row_is_told_as_such() throws IOException {
            Path one = file("one.csv", "time_s,engine_rpm,speed_kmh\n1,600,0\n");

            assertThat(text("log read thirteen-ratio " + one))
                    .contains("one.csv: CSV, 1 row over 0:00:00")
                    .contains("the log's rows cover no time: low range");
        }

        @Test
        void a_folder_is_one_job_with_a_summary_for_each_truck() {
            JsonNode trucks = json("log read thirteen-ratio " + LOGS).get("trucks");

            assertThat(trucks.valueStream().map(t -> t.get("truck").asString()))
                    .containsExactly("unit-31", "unit-32", "unit-33", "unit-34");
            assertThat(trucks.get(0).get("logs")).hasSize(2);
            assertThat(text("log read thirteen-ratio " + LOGS)).contains("4 trucks, 5 logs read");
        }

        @Test
        void a_truck_kept_under_the_name_of_its_logs_is_read_with_its_own_numbers() throws IOException {
            Path own = folder.resolve("unit-32.yaml");
            text("truck export thirteen-ratio --out " + own);
            Files.writeString(own, Files.readString(own).replace("truck: thirteen-ratio", "truck: unit-32"));
            text("truck import " + own);

            JsonNode trucks = json("log read thirteen-ratio " + LOGS).get("trucks");

            assertThat(trucks.valueStream().map(t -> t.get("profile").asString()))
                    .containsExactly("thirteen-ratio", "unit-32", "thirteen-ratio", "thirteen-ratio");
            text("truck remove unit-32");
        }

        @Test
        void a_spreadsheet_gets_a_row_for_each_kind_or_each_event() {
            Run kinds = run("log read thirteen-ratio " + STARTS + " --format csv");
            assertThat(kinds.out().lines())
                    .hasSize(1 + EventKind.values().length)
                    .contains("thirteen-ratio,no,start-in-high-range,seen,3,6,start,123.24,25.415,360.16,3 events");

            Run events = run("log read thirteen-ratio " + STARTS + " --format csv --events");
            assertThat(events.out().lines()).hasSize(4);
        }

        @Test
        void charts_are_written_as_files_and_not_over_one_another() throws IOException {
            Path chart = folder.resolve("map.svg");
            assertThat(text("log read thirteen-ratio " + TOO_FAST + " --chart map --out " + chart))
                    .contains("The chart is written to");
            assertThat(Files.readString(chart)).startsWith("<svg").contains("road speed (km/h)");

            Run again = run("log read thirteen-ratio " + TOO_FAST + " --chart timeline --out " + chart);
            assertThat(again.exitCode()).isEqualTo(1);
            refused(
                    "log read thirteen-ratio " + LOGS + " --chart map --out " + folder.resolve("all.svg"),
                    1,
                    "the logs are of 4 trucks; a chart shows one, name its logs");
        }

        @Test
        void a_road_speed_that_never_leaves_0_is_told() throws IOException {
            StringBuilder rows = new StringBuilder("time_s,engine_rpm,speed_kmh,clutch,accel_pct\n");
            for (int i = 0; i < 1200; i++) {
                rows.append(i / 10.0)
                        .append(',')
                        .append(650 + i)
                        .append(",0,")
                        .append(i / 100 % 2)
                        .append(",20\n");
            }
            Path log = Files.writeString(folder.resolve("no-speed.csv"), rows);

            assertThat(text("log read thirteen-ratio " + log))
                    .contains(
                            "road speed is 0 from beginning to end, the engine up to 1849 rpm: the truck stood all the"
                                    + " time, or that column tells nothing");
            assertThat(text("log read thirteen-ratio " + STARTS)).doesNotContain("from beginning to end");
        }

        @Test
        void one_bad_log_of_many_is_told_and_spoils_nothing_but_the_exit_code() throws IOException {
            Path many = Files.createDirectories(folder.resolve("many"));
            Files.copy(Path.of(STARTS), many.resolve("unit-1_a.csv"));
            Files.write(many.resolve("unit-1_b.csv"), new byte[3000]);

            Run run = run("log read thirteen-ratio " + many);

            assertThat(run.out()).contains("3 events");
            assertThat(run.messages().lines())
                    .containsExactly(many.resolve("unit-1_b.csv")
                            + ": not a text file; a CSV or candump text log is expected, plain or gzip (binary logs"
                            + " must be exported as text first)");
            assertThat(run.exitCode()).isEqualTo(1);
        }
    }

    @Nested
    class BadLogs {
        @Test
        void what_is_no_log_is_refused_in_one_line() throws IOException {
            Path empty = file("empty.csv", "");
            Path fake = Files.write(
                    folder.resolve("fake.csv.gz"), new byte[] {0x1F, (byte) 0x8B, 'x', 'y', 'z', 0, 0, 0, 0, 0});
            Path prose = file("prose.txt", "a,b,c\n1,2,3\n4,5,6\n");
            Path unmarked =
                    Files.write(folder.resolve("wide.csv"), "time,rpm\n1,2\n".getBytes(StandardCharsets.UTF_16LE));
            Path binary = Files.write(folder.resolve("binary.csv"), new byte[4000]);
            String read = "log read thirteen-ratio ";

            refused(read + "nowhere.csv", 1, "nowhere.csv: no such file, or not a plain file; check the name");
            refused(read + empty, 1, empty + ": the file is empty; give a log with rows");
            refused(
                    read + fake,
                    1,
                    fake + ": begins like a gzip file but is damaged (Unsupported compression method);"
                            + " copy it anew from where it was written");
            refused(
                    read + prose,
                    1,
                    "prose.txt: no column looks like a time; write a mapping file. The header has a, b, c");
            refused(
                    read + unmarked,
                    1,
                    unmarked
                            + ": UTF-16 text without the mark that begins it; save it as UTF-8 or plain text and read it"
                            + " again");
            refused(
                    read + binary,
                    1,
                    binary + ": not a text file; a CSV or candump text log is expected, plain or gzip (binary logs must"
                            + " be exported as text first)");
            Path bare = Files.createDirectories(folder.resolve("bare"));
            refused(
                    read + bare,
                    1,
                    bare + ": no log files in this folder; looked for were .csv .log .txt .candump .asc, also .gz");
        }

        @Test
        void a_cut_off_compressed_log_is_read_as_far_as_it_goes_and_says_so() throws IOException {
            ByteArrayOutputStream packed = new ByteArrayOutputStream();
            try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
                gzip.write(Files.readAllBytes(Path.of(STARTS)));
            }
            Path cut =
                    Files.write(folder.resolve("cut.csv.gz"), Arrays.copyOf(packed.toByteArray(), packed.size() / 2));

            assertThat(text("log read thirteen-ratio " + cut))
                    .contains("1 x file ends in the middle of a line or of the compressed data (line ");
        }

        @Test
        void hostile_lines_are_counted_by_kind_and_nothing_of_them_reaches_the_terminal() throws IOException {
            List<String> good = Files.readAllLines(Path.of(STARTS));
            String bad = "garbage\n40.1,1e999,5,0,0,0,0,0,0\n40.2,=cmd|calc,5,0,0,0,0,0,0\nxx,600,5,0,0,0,0,0,0\n"
                    + "A".repeat(100_000) + "\n40.5,\u001b[31m600,5,0,0,0,0,0,0\n";
            Path log = file(
                    "hostile.csv",
                    String.join("\n", good.subList(0, 400)) + "\n" + bad
                            + String.join("\n", good.subList(400, good.size())) + "\n");

            Run run = run("log read thirteen-ratio " + log);

            assertThat(run.exitCode()).isZero();
            assertThat(run.out()).doesNotContain("\u001b").doesNotContain("cmd|calc");
            assertThat(run.out().replaceAll("\\s+", " "))
                    .contains("1 x line longer than 16,384 bytes, skipped (line 405)")
                    .contains("1 x line has too few columns, skipped (line 401)")
                    .contains("1 x time is not in the form of the mapping, line skipped (line 404)")
                    .contains("2 x value is not a number, that value left out (lines 403, 406)")
                    .contains("1 x value no vehicle can have, that value left out (line 402)")
                    .contains("3 x start from rest in high range")
                    .contains("1 x road speed jumps that no vehicle can make");
        }
    }

    @Nested
    class WrongWords {
        @Test
        void what_is_missing_or_misspelled_is_named() throws IOException {
            refused(
                    "log read thirteen-ratio",
                    2,
                    "name the truck and at least one log: log read TRUCK FILE|FOLDER ...");
            refused("log read thirteen " + STARTS, 1, "no truck 'thirteen' is known; did you mean thirteen-ratio?");
            refused(
                    "log read thirteen-ratio " + STARTS + " --load full",
                    2,
                    "--load 'full' is not known; empty or loaded");
            refused(
                    "log read thirteen-ratio " + STARTS + " --format xml",
                    2,
                    "--format 'xml' is not known; text, json or csv");
            refused(
                    "log read thirteen-ratio " + STARTS + " --chart map",
                    2,
                    "--chart and --out belong together: --chart timeline|map --out FILE.svg");
            refused(
                    "log read thirteen-ratio " + STARTS + " --mapping none.yaml",
                    1,
                    "none.yaml: no such mapping file; have one written with: log look LOG --save-mapping FILE.yaml");
            refused(
                    "log add hubs thirteen-ratio",
                    2,
                    "name the case, the truck and at least one log: log add CASE TRUCK FILE|FOLDER ...");
            refused(
                    "log compare thirteen-ratio --before " + STARTS,
                    2,
                    "give the logs of both periods: log compare TRUCK --before FILE ... --after FILE ...");
        }

        @Test
        void every_fault_of_a_mapping_file_is_told_at_once() throws IOException {
            Path mapping = file("faulty.yaml", "separator: x\ndecimal: '!'\ncolumns: { engine-sped: a }\n");

            Run run = run("log read thirteen-ratio " + STARTS + " --mapping " + mapping);

            assertThat(run.exitCode()).isEqualTo(1);
            assertThat(run.messages().lines())
                    .containsExactly(
                            mapping + ":1:1 a mapping file has no 'time'; add time: { column: NAME }",
                            mapping + ":1:12 separator: 'x' is no separator of columns; use one of , ; | : tab or ' '",
                            mapping + ":2:10 decimal: '!' is not a sign between whole and decimals; use one of '.' or"
                                    + " ','",
                            mapping + ":3:12 'engine-sped' is not a key of columns; did you mean 'engine-speed'?");
        }
    }

    @Nested
    class Add {
        @Test
        void a_log_becomes_evidence_with_its_hash_and_its_weights() throws Exception {
            text("case new added --ratios 13");
            assertThat(text("log add added thirteen-ratio " + COAST))
                    .contains("Stored in case added as evidence log-unit-32-coast-and-tow, entry 2.")
                    // By road speed alone a truck on a trailer looks the same.
                    .doesNotContain("log-rolling-engine-stopped")
                    .contains("Speaks for, too thin to rest a conclusion on - long roll at idle, no ratio fits"
                            + " (log-rolling-at-idle) 2 x long roll at idle, out of gear in 4.0 km;")
                    .contains("the logs cover 5 min; add logs of more trips")
                    .contains("Cannot be seen in this log; nothing follows from that")
                    .contains(LogText.NAMES_A_TRUCK);

            String hash = HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(Path.of(COAST))));
            String exported = run("case export added").out();
            assertThat(exported)
                    .contains(hash)
                    .contains("log-rolling-at-idle: unsure")
                    .contains("log-rolling-at-idle: unsure")
                    .contains("if-present");
            assertThat(text("case verify added")).contains("is whole");
        }

        @Test
        void only_what_could_have_been_seen_and_was_not_speaks_against() {
            text("case new against --ratios 13");
            JsonNode added = json("log add against thirteen-ratio " + COACHED + " --as coached");

            boolean absent = false;
            for (JsonNode finding : added.get("findings")) {
                String state = finding.get("state").asString();
                double factor = finding.get("ifPresent").asDouble()
                        / finding.get("ifAbsent").asDouble();
                assertThat(finding.get("stored").asBoolean()).isEqualTo(!state.equals("unsure"));
                if (state.equals("absent")) {
                    absent = true;
                    assertThat(factor).isLessThanOrEqualTo(1 / 3.0);
                    assertThat(finding.get("chances").asDouble()).isPositive();
                }
            }
            assertThat(absent).isTrue();
            List<String> blind = added.get("cannotBeSeen")
                    .valueStream()
                    .map(JsonNode::asString)
                    .toList();
            assertThat(blind).contains("low-range-above-ceiling");
            assertThat(run("case export against").out()).doesNotContain("log-range-low-above-ceiling");
        }

        @Test
        void logs_of_a_slow_logger_say_nothing_of_the_starts() {
            text("case new slow --ratios 13");
            text("log add slow thirteen-ratio " + SLOW);
            assertThat(run("case export slow").out()).doesNotContain("log-standing-start-high-range");
        }

        @Test
        void the_same_log_counts_once() {
            text("case new twice --ratios 13");
            text("log add twice thirteen-ratio " + STARTS);
            refused(
                    "log add twice thirteen-ratio " + STARTS + " --as again",
                    1,
                    "'unit-31_high-range-starts.csv' is the same log as evidence log-unit-31-high-range-starts of this"
                            + " case; it would count twice, leave it out (or take the evidence off first)");
            refused(
                    "log add twice thirteen-ratio " + COACHED + " " + COACHED,
                    1,
                    "sample-cases/logs/unit-31_after-coaching.csv: covers the same driving as unit-31_after-coaching.csv;"
                            + " it would count twice, leave it out",
                    "nothing was stored");
            assertThat(text("log add twice thirteen-ratio " + STARTS)).contains("entry 3");
        }

        private static JsonNode finding(JsonNode added, String id) {
            return added.get("findings")
                    .valueStream()
                    .filter(f -> f.get("finding").asString().equals(id))
                    .findFirst()
                    .orElseThrow();
        }

        @Test
        void logs_added_one_after_the_other_weigh_as_if_they_were_added_at_once() {
            text("case new pooled --ratios 13");
            text("case new together --ratios 13");

            text("log add pooled thirteen-ratio " + STARTS);
            JsonNode pooled = json("log add pooled thirteen-ratio " + COACHED);
            JsonNode together = json("log add together thirteen-ratio " + STARTS + " " + COACHED);

            assertThat(pooled.get("weighedWith").get(0).asString()).isEqualTo("log-unit-31-high-range-starts");
            JsonNode one = finding(pooled, "log-standing-start-high-range");
            JsonNode other = finding(together, "log-standing-start-high-range");
            assertThat(one.get("chances").asDouble()).isEqualTo(18);
            assertThat(one.get("count").asInt()).isEqualTo(3);
            assertThat(one.get("ifAbsent").asDouble())
                    .isCloseTo(other.get("ifAbsent").asDouble(), within(1e-5));
            JsonNode quiet = finding(pooled, "log-high-torque-low-rpm");
            assertThat(quiet.get("count").asInt()).isZero();
            assertThat(quiet.get("ifPresent").asDouble())
                    .isCloseTo(
                            finding(together, "log-high-torque-low-rpm")
                                    .get("ifPresent")
                                    .asDouble(),
                            within(1e-5));
        }

        @Test
        void what_was_pooled_is_read_again_from_an_exported_case() throws IOException {
            text("case new carried --ratios 13");
            text("log add carried thirteen-ratio " + STARTS);
            Path file = file("carried.yaml", run("case export carried").out());
            text("case new other --ratios 13");

            String exported = Files.readString(file);
            assertThat(exported).contains("record: { km: ").contains("tallies: { ");
            assertThat(run("diagnose " + file).exitCode()).isZero();
            Path broken = file("broken.yaml", exported.replaceAll("covered-hours: [0-9.]+", "covered-hours: -1"));
            assertThat(run("diagnose " + broken).messages()).contains("covered-hours: '-1' is below zero");
        }

        @Test
        void the_same_time_in_another_file_is_refused() throws IOException {
            text("case new overlap --ratios 13");
            text("log add overlap thirteen-ratio " + COAST);
            List<String> lines = Files.readAllLines(Path.of(COAST));
            Path part = file("part_of-it.candump", String.join("\n", lines.subList(0, 3000)) + "\n");

            refused(
                    "log add overlap thirteen-ratio " + part,
                    1,
                    "'part_of-it.candump' covers the same time as evidence log-unit-32-coast-and-tow of this case"
                            + " (2023-11-14T22:13:20Z to 2023-11-14T22:15:50Z); it would count twice, leave it out (or"
                            + " take the evidence off first)");
        }

        @Test
        void logs_without_dates_say_that_nobody_can_tell_whether_they_overlap() {
            text("case new undated --ratios 13");
            assertThat(text("log add undated thirteen-ratio " + STARTS)).doesNotContain("have no date");
            assertThat(text("log add undated thirteen-ratio " + COACHED))
                    .contains(
                            "its times have no date, so nobody can tell whether it covers the same time as another log")
                    .contains("Weighed as one record with the logs of log-unit-31-high-range-starts");
        }

        @Test
        void a_log_that_does_not_fit_the_truck_or_the_time_is_taken_only_in_so_many_words() throws IOException {
            text("case new doubt --ratios 13 --unit 'Unit 31'");
            Run named = run("log add doubt thirteen-ratio " + COAST);
            assertThat(named.exitCode()).isEqualTo(1);
            assertThat(named.messages())
                    .contains("its name says unit-32, the truck of the case is Unit 31")
                    .contains("--nevertheless 'why'");

            JsonNode added = json("log add doubt thirteen-ratio " + COAST
                    + " --nevertheless 'the file was saved under a wrong name'");
            assertThat(added.get("doubts").get(1).asString())
                    .isEqualTo("added nevertheless: the file was saved under a wrong name");
            JsonNode rolled = finding(added, "log-rolling-at-idle");
            assertThat(rolled.get("state").asString()).isEqualTo("unsure");
            assertThat(rolled.get("thin").asString()).isEqualTo("a log among them may be of another truck or time");
            assertThat(text("case show doubt")).contains("Added although it is in doubt: its name says unit-32");

            Path other = folder.resolve("fleet.csv");
            DriveScripts.proper(InventedTrucks.ten(), 4, 5).writeCsv(other, Recording.usual(5), 1);
            text("case new misfit --ratios 13");
            assertThat(run("log add misfit thirteen-ratio " + other).messages())
                    .contains("the ratios of this truck fit in only ");
            refused(
                    "log add misfit thirteen-ratio " + STARTS + " --nevertheless 'no reason'",
                    2,
                    "--nevertheless: nothing speaks against these logs; leave it out");
        }

        @Test
        void what_is_not_sure_enough_is_refused_and_nothing_is_stored() throws IOException {
            text("case new unsure --ratios 10");
            Run otherBox = run("log add unsure thirteen-ratio " + STARTS);
            assertThat(otherBox.exitCode()).isEqualTo(1);
            assertThat(otherBox.messages()).contains("10 forward ratios").contains("13");

            Path doubtful = file("doubt.csv", "time,rpm,speed\n0,600,0\n1,600,0\n2,600,0\n");
            Run guessed = run("log add unsure ten-ratio " + doubtful);
            assertThat(guessed.exitCode()).isEqualTo(1);
            assertThat(guessed.messages())
                    .contains("road-speed: column 'speed' gives no unit; km/h was taken")
                    .contains("--save-mapping")
                    .endsWith("nothing was stored\n");

            refused(
                    "log add unsure ten-ratio " + LOGS,
                    1,
                    "the logs are of 4 trucks (unit-31; unit-32; unit-33; unit-34); a case is of one, name its logs",
                    "nothing was stored");
            assertThat(run("log add nosuch ten-ratio " + STARTS).exitCode()).isEqualTo(1);
            assertThat(run("case history unsure").out()).doesNotContain("evidence");
        }
    }

    @Nested
    class Compare {
        /**
         * Given 3 events in all and 12 of 18 starts after, none after has the chance (1/3)^3; doubled 0.0741. The upper
         * limit of the share is 1 - 0.025^(1/3) = 0.70760, that of the ratio 0.70760 / 0.29240 x 6 / 12 = 1.2100.
         */
        @Test
        void two_periods_are_compared_as_worked_by_hand() {
            JsonNode starts = kind(
                    json("log compare thirteen-ratio --before " + STARTS + " --after " + COACHED),
                    EventKind.START_IN_HIGH_RANGE);

            assertThat(starts.get("countBefore").asInt()).isEqualTo(3);
            assertThat(starts.get("chancesBefore").asDouble()).isEqualTo(6);
            assertThat(starts.get("countAfter").asInt()).isZero();
            assertThat(starts.get("chancesAfter").asDouble()).isEqualTo(12);
            assertThat(starts.get("pTwoSided").asDouble()).isCloseTo(2.0 / 27, within(1e-9));
            assertThat(starts.get("upper95").asDouble()).isCloseTo(1.2100, within(1e-4));
            assertThat(starts.get("outcome").asString()).isEqualTo("no-change-shown");
        }

        @Test
        void the_text_warns_that_events_cluster_and_takes_many_files_for_each_period() {
            assertThat(text("log compare thirteen-ratio --before " + STARTS + " " + TOO_FAST + " --after " + COACHED
                            + " --load loaded"))
                    .contains("before: 2 logs")
                    .contains("after: 1 log")
                    .contains("start from rest in high range: no change that chance would not explain")
                    .contains("habit events come in clusters by trip, so p is smaller")
                    .contains("the period after cannot show it");
        }
    }
}
