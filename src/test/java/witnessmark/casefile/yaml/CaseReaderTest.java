package witnessmark.casefile.yaml;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.EarlierSample;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Vehicle;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.yaml.Fault;
import witnessmark.yaml.FaultyInput;

class CaseReaderTest {
    private static final String WHOLE =
            """
            case: grinds-into-low
            title: Grinds into low range
            complaint: Grinds and hangs when shifting down into low range
            vehicle: { unit: "Tractor 14", odometer-km: 410000, km-since-repair: 12000, duty: "regional, hilly" }
            gearbox: { forward-ratios: 13, range: air, splitter: high-only, countershafts: twin, linkage: direct, \
            oil-pump: fitted, oil-cooler: none, pto: none }
            driver-account: |
              Hangs, then bangs home.
              Worse in the cold.
            findings:
              range-cone-low-burned: present
              regulator-outlet-low: { state: absent, note: "4.1 bar at rest" }
              range-yoke-worn: yes
              interlock-plunger-worn: no
              splitter-dogs-rounded: not-looked-at
            measurements:
              range-regulator-pressure: { value: 3.1, unit: bar, low: 56.5, high: 62, limit-unit: psi, \
            limit-from: "service manual of this unit" }
              oil-temperature: { value: 180, unit: °F }
              oil-iron: { value: 180, unit: mg/kg, earlier: [{ value: 60, day: 2026-03-14, odometer-km: 812000 }, \
            { value: 55, day: 2025-09-02 }] }
            notes:
              - Air dryer changed last winter.
            expected:
              verdict: driver-habit
              first: [range-move-in-neutral]
              within-three: [low-range-at-speed]
            """;

    private static CaseDocument read(String text) {
        return new CaseReader().read("grinds.yaml", text.getBytes(UTF_8));
    }

    private static List<String> faultsOf(String text) {
        return faultsOf(text.getBytes(UTF_8));
    }

    private static List<String> faultsOf(byte[] bytes) {
        FaultyInput faults = catchThrowableOfType(FaultyInput.class, () -> new CaseReader().read("grinds.yaml", bytes));
        return faults.faults().stream().map(Fault::sentence).toList();
    }

    @Test
    void a_case_written_by_hand_is_read_whole() {
        CaseDocument document = read(WHOLE);

        CaseFile now = document.present();
        assertThat(now.id()).hasToString("grinds-into-low");
        assertThat(now.title()).isEqualTo("Grinds into low range");
        assertThat(now.complaint()).isEqualTo("Grinds and hangs when shifting down into low range");
        assertThat(now.driverAccount()).isEqualTo("Hangs, then bangs home.\nWorse in the cold.\n");
        assertThat(now.vehicle())
                .isEqualTo(new Vehicle(
                        "Tractor 14",
                        "",
                        "regional, hilly",
                        OptionalDouble.of(410_000),
                        OptionalDouble.empty(),
                        OptionalDouble.of(12_000),
                        ""));
        assertThat(now.gearbox())
                .isEqualTo(new Layout(
                        OptionalInt.of(13),
                        Optional.of(Layout.RangeShift.AIR),
                        Optional.of(Layout.Splitter.HIGH_ONLY),
                        Optional.of(Layout.Countershafts.TWIN),
                        Optional.of(Layout.Linkage.DIRECT),
                        Optional.of(Layout.Fitted.FITTED),
                        Optional.of(Layout.Fitted.NONE),
                        Optional.of(Layout.Fitted.NONE)));
        assertThat(now.findings().values())
                .containsExactly(
                        new FindingEntry("range-cone-low-burned", FindingState.PRESENT),
                        new FindingEntry("regulator-outlet-low", FindingState.ABSENT, "4.1 bar at rest"),
                        new FindingEntry("range-yoke-worn", FindingState.PRESENT),
                        new FindingEntry("interlock-plunger-worn", FindingState.ABSENT),
                        new FindingEntry("splitter-dogs-rounded", FindingState.NOT_LOOKED_AT));
        assertThat(now.measurements().values())
                .containsExactly(
                        new Measurement(
                                "range-regulator-pressure",
                                3.1,
                                Unit.BAR,
                                Optional.of(new Limits(
                                        OptionalDouble.of(56.5),
                                        OptionalDouble.of(62),
                                        Unit.PSI,
                                        "service manual of this unit")),
                                ""),
                        new Measurement("oil-temperature", 180, Unit.FAHRENHEIT),
                        new Measurement(
                                "oil-iron",
                                180,
                                Unit.MILLIGRAM_PER_KILOGRAM,
                                Optional.empty(),
                                List.of(
                                        new EarlierSample(55, LocalDate.of(2025, 9, 2), OptionalDouble.empty()),
                                        new EarlierSample(60, LocalDate.of(2026, 3, 14), OptionalDouble.of(812_000))),
                                ""));
        assertThat(now.notes()).containsExactly("Air dryer changed last winter.");
        assertThat(document.expected())
                .contains(new ExpectedOutcome(
                        "driver-habit", List.of("range-move-in-neutral"), List.of("low-range-at-speed"), false));
        assertThat(document.history()).isEmpty();
    }

    @Test
    void a_case_of_nothing_but_its_name_is_a_case() {
        CaseFile now = read("case: a\nfindings:\nnotes:\n").present();

        assertThat(now.findings()).isEmpty();
        assertThat(now.gearbox()).isEqualTo(Layout.unknown());
        assertThat(now.vehicle()).isEqualTo(Vehicle.unknown());
    }

    @Test
    void the_form_of_a_written_case_stays_as_it_is() {
        String written = new CaseWriter().write(read(WHOLE));

        assertThat(written)
                .isEqualTo(
                        """
                case: grinds-into-low
                title: "Grinds into low range"
                complaint: "Grinds and hangs when shifting down into low range"
                vehicle: { unit: "Tractor 14", duty: "regional, hilly", odometer-km: 410000, km-since-repair: 12000 }
                gearbox: { forward-ratios: 13, range: air, splitter: high-only, countershafts: twin, linkage: direct, \
                oil-pump: fitted, oil-cooler: none, pto: none }
                driver-account: "Hangs, then bangs home.\\nWorse in the cold.\\n"
                findings:
                  range-cone-low-burned: present
                  regulator-outlet-low: { state: absent, note: "4.1 bar at rest" }
                  range-yoke-worn: present
                  interlock-plunger-worn: absent
                  splitter-dogs-rounded: not-looked-at
                measurements:
                  range-regulator-pressure: { value: 3.1, unit: bar, low: 56.5, high: 62, limit-unit: psi, \
                limit-from: "service manual of this unit" }
                  oil-temperature: { value: 180, unit: degF }
                  oil-iron: { value: 180, unit: "mg/kg", earlier: [{ value: 55, day: "2025-09-02" }, { value: 60, day: "2026-03-14", odometer-km: 812000 }] }
                notes:
                  - "Air dryer changed last winter."
                expected:
                  verdict: driver-habit
                  first: [range-move-in-neutral]
                  within-three: [low-range-at-speed]
                  contradiction: false
                """);
    }

    @Nested
    class Refusals {
        @Test
        void present_and_absent_at_once_names_both_lines() {
            assertThat(faultsOf("case: a\nfindings:\n  x: present\n  y: absent\n  x: { state: absent }\n"))
                    .containsExactly(
                            "grinds.yaml:5:3 finding 'x' stands twice (line 3: present, here: absent); keep one");
        }

        @Test
        void all_faults_are_told_at_once_in_the_order_of_the_file() {
            assertThat(
                            faultsOf(
                                    """
                                    case: Grinds Into Low
                                    titel: x
                                    gearbox: { range: steam, forward-ratios: 40 }
                                    findings:
                                      range-cone-low-burned: maybe
                                      Range_Cone: present
                                      lever-hops:
                                    measurements:
                                      pressure: { value: 3.1 bar, unit: barr }
                                      pressure: { value: 3 }
                                    """))
                    .containsExactly(
                            "grinds.yaml:1:7 case: 'Grinds Into Low' is not a case id; use lower-case letters, digits and"
                                    + " hyphens, 1 to 40, beginning with a letter or digit",
                            "grinds.yaml:2:1 'titel' is not a key of a case; did you mean 'title'?",
                            "grinds.yaml:3:19 range: 'steam' is not known; use one of none, air, mechanical",
                            "grinds.yaml:3:42 forward-ratios: 40 is not a number from 1 to 32; correct it",
                            "grinds.yaml:5:26 finding 'range-cone-low-burned': 'maybe' is not a state; use one of"
                                    + " present, absent, unsure, not-looked-at",
                            "grinds.yaml:6:3 finding: 'Range_Cone' is not an id; use lower-case words joined by hyphens,"
                                    + " at most 60 characters",
                            "grinds.yaml:7:14 finding 'lever-hops' has no value; write one after it, or take the key out",
                            "grinds.yaml:9:22 value: '3.1 bar' is not a number; write digits with a point, such as 3.9,"
                                    + " without unit or separators",
                            "grinds.yaml:9:37 unit: 'barr' is not a known unit; use one of " + Unit.SYMBOLS,
                            "grinds.yaml:10:3 measurement 'pressure' stands twice (line 9 and here); keep one");
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                textBlock =
                        """
            value: .nan, unit: bar               | 3:15 | value: '.nan' is not a number; write digits with a point, such as 3.9, without unit or separators
            value: .inf, unit: bar               | 3:15 | value: '.inf' is not a number; write digits with a point, such as 3.9, without unit or separators
            value: 1e999, unit: bar              | 3:15 | value: '1e999' is not a number; write digits with a point, such as 3.9, without unit or separators
            value: "4,1", unit: bar              | 3:15 | value: '4,1' is not a number; write digits with a point, such as 3.9, without unit or separators
            value: 4                             | 3:6  | measurement 'p' has no 'unit'; add unit: bar
            unit: bar                            | 3:6  | measurement 'p' has no 'value'; add value: 3.9
            value: 4, unit: bar, low: -1, limit-from: book | 3:34 | low: a limit of -1 bar is below zero; give a limit of zero or more
            value: 4, unit: bar, low: 5, high: 4, limit-from: book | 3:34 | limit: low 5 is above high 4; exchange or correct them
            value: 4, unit: bar, low: 3          | 3:34 | limit: it is not said whose limit it is; add limit-from, such as limit-from: "service manual of this unit"
            value: 4, unit: bar, limit-from: book | 3:41 | limit: neither low nor high is given; give at least one of them
            value: 4, unit: bar, low: 3, limit-unit: mm, limit-from: book | 3:49 | limit-unit: mm does not convert to bar; use one of Pa, kPa, MPa, bar, psi
            value: 4, unit: bar, earlier: 3      | 3:38 | earlier is not a list; write each part on its own line after '- '
            value: 4, unit: bar, earlier: [{ value: 3 }] | 3:39 | an earlier sample has no 'day'; add day: 2026-03-14
            value: 4, unit: bar, earlier: [{ day: 2026-03-14 }] | 3:39 | an earlier sample has no 'value'; add value: 60
            value: 4, unit: bar, earlier: [{ value: 3, day: March }] | 3:56 | earlier sample: 'March' is no day; write the day it was taken as year-month-day, such as 2026-03-14
            value: 4, unit: bar, earlier: [{ value: 3, day: 2026-02-30 }] | 3:56 | earlier sample: '2026-02-30' is no day; write the day it was taken as year-month-day, such as 2026-03-14
            value: 4, unit: bar, earlier: [{ value: 3, day: 2026-03-14, odometer-km: -1 }] | 3:56 | odometer-km: -1 is below zero; give what the odometer showed when the sample was taken
            value: 4, unit: bar, earlier: [{ value: 3, day: 2026-03-14 }, { value: 2, day: 2026-03-14 }] | 3:6 | earlier: two samples of 2026-03-14; keep one for each day
            value: -300, unit: degC              | 3:6  | value: -300 degC is below absolute zero; correct the value or its unit
            """)
        void a_measurement_that_cannot_be(String fields, String place, String message) {
            assertThat(faultsOf("case: a\nmeasurements:\n  p: { " + fields + " }\n"))
                    .containsExactly("grinds.yaml:" + place + " " + message);
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                textBlock =
                        """
            'case: a~title: !!java.net.URL x'    | 2:8 a type tag (!name) is not taken; write the plain value
            'case: a~title: !x y'                | 2:8 a type tag (!name) is not taken; write the plain value
            'case: a~notes: !!set {a, b}'        | 2:8 a type tag (!name) is not taken; write the plain value
            'case: a~title: &n x'                | 2:8 an anchor (&name) is not taken; put the text in quotes, or take the anchor out
            'case: a~title: *n'                  | 2:8 an alias (*name) is not taken; write the value out
            'case: a~title: x: y'                | 2:9 this is not YAML: mapping values are not allowed here; check quotes, colons and indentation
            'case: a~title: "x'                  | 3:1 this is not YAML: found unexpected end of stream; check quotes, colons and indentation
            'case: a~title: "a\\u0007b"'         | 2:8 title: character U+0007 at place 2 cannot be kept; remove it
            'case: a~title: "a\\x1b[31mb"'       | 2:8 title: character U+001B at place 2 cannot be kept; remove it
            'case: a~title: "a\\x9b31mb"'        | 2:8 title: character U+009B at place 2 cannot be kept; remove it
            'case: a~title: "a\\nb"'             | 2:8 title: the text has more than one line; write it on one line
            'case: a~title: [x]'                 | 2:8 title is not a single value; write one text or number after it
            'case: a~notes: x'                   | 2:8 notes is not a list; write each part on its own line after '- '
            'case: a~findings: [x]'              | 2:11 findings are not a map of names and values; write each as name: value
            'case: a~case: b'                    | 2:1 key 'case' of a case stands twice (line 1 and here); keep one
            'title: a'                           | 1:1 a case has no 'case'; add case: grinds-into-low
            '- a'                                | 1:1 a case is not a map of keys and values; write it as key: value
            'case: a~---~case: b'                | 2:1 a second document begins here; keep one document in a file
            'case: a~vehicle: { odometer-km: -5 }' | 2:10 odometer-km: -5 is not a distance a truck has run; give km from 0 to 100000000
            'case: a~signed-off: { who: x, time: "2026-03-02T08:15:00Z" }' | 2:13 signed-off: a case without its history cannot be signed off; take the line out and sign off after the import
            """)
        void a_file_that_cannot_be(String lines, String message) {
            assertThat(faultsOf(lines.replace('~', '\n') + "\n")).containsExactly("grinds.yaml:" + message);
        }

        @Test
        void an_empty_file() {
            assertThat(faultsOf("")).containsExactly("grinds.yaml is empty; write into it or give another file");
        }

        @Test
        void a_raw_control_character_is_named_with_its_place() {
            assertThat(faultsOf("case: a\ntitle: x\u001by\n"))
                    .containsExactly("grinds.yaml:2:9 character U+001B cannot be kept; remove it");
        }

        @Test
        void a_text_in_another_encoding() {
            assertThat(faultsOf("case: a\ntitle: caf\u00e9\n".getBytes(ISO_8859_1)))
                    .containsExactly("grinds.yaml:2:11 the text is not UTF-8; save the file as UTF-8");
        }

        @Test
        void a_text_too_long() {
            assertThat(faultsOf("case: a\ncomplaint: " + "x".repeat(20_001) + "\n"))
                    .containsExactly(
                            "grinds.yaml:2:12 complaint: the text has 20001 characters; keep it to 20000 at most");
        }

        @Test
        void too_many_findings() {
            StringBuilder text = new StringBuilder("case: a\nfindings:\n");
            for (int i = 0; i <= 5_000; i++) {
                text.append("  f").append(i).append(": present\n");
            }

            assertThat(faultsOf(text.toString()))
                    .containsExactly("grinds.yaml:3:3 5001 findings are given; keep it to 5000 at most");
        }

        @Test
        void a_file_of_ten_megabytes() {
            assertThat(faultsOf("x".repeat(10_000_000)))
                    .containsExactly("grinds.yaml has more than 2000000 bytes;"
                            + " take out what does not belong, such as photographs and logs");
        }

        @Test
        void aliases_that_would_grow_without_end() {
            StringBuilder bomb = new StringBuilder("case: a\nl0: &l0 [x, x]\n");
            for (int i = 1; i < 40; i++) {
                bomb.append("l%d: &l%d [*l%d, *l%d]\n".formatted(i, i, i - 1, i - 1));
            }

            assertThat(faultsOf(bomb.toString()))
                    .containsExactly("grinds.yaml:2:5 an anchor (&name) is not taken;"
                            + " put the text in quotes, or take the anchor out");
        }

        @Test
        void nesting_deeper_than_any_case() {
            assertThat(faultsOf("case: a\nnotes: " + "[".repeat(500_000)))
                    .containsExactly(
                            "grinds.yaml:2:19 more than 12 maps and lists inside each other; write it flatter");
        }

        @Test
        void a_fault_in_every_line_is_cut_short() {
            StringBuilder text = new StringBuilder("case: a\nfindings:\n");
            for (int i = 0; i < 5_000; i++) {
                text.append("  f").append(i).append(": maybe\n");
            }

            List<String> faults = faultsOf(text.toString());

            assertThat(faults).hasSize(101);
            assertThat(faults.get(100)).endsWith("more than 100 faults; mend these first");
        }

        @Test
        void a_history_touched_by_hand(@TempDir Path folder) throws Exception {
            String entry =
                    """
                    case: a
                    title: changed
                    history:
                      - entry: 1
                        time: "2026-03-02T08:15:00.000Z"
                        who: anna
                        change: {"kind":"opened","case":"a","title":"changed","complaint":"","vehicle":{},"gearbox":{}}
                        hash: "0000000000000000000000000000000000000000000000000000000000000000"
                    """;

            assertThat(faultsOf(entry))
                    .containsExactly("grinds.yaml:4:3 history: entry 1 is not as it was written;"
                            + " bring the file back as it was exported");
        }

        @Test
        void no_such_file(@TempDir Path folder) {
            Path missing = folder.resolve("none.yaml");

            FaultyInput faults = catchThrowableOfType(FaultyInput.class, () -> new CaseReader().read(missing));

            assertThat(faults).hasMessage(missing + " is not there; check the name");
        }

        @Test
        void a_folder_in_place_of_a_file(@TempDir Path folder) throws Exception {
            Files.writeString(folder.resolve("a.yaml"), "case: a\n");

            FaultyInput faults = catchThrowableOfType(FaultyInput.class, () -> new CaseReader().read(folder));

            assertThat(faults).hasMessage(folder + " is a folder; name one file in it");
            assertThat(new CaseReader().read(folder.resolve("a.yaml")).present().id())
                    .hasToString("a");
        }
    }
}
