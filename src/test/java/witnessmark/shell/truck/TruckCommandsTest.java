package witnessmark.shell.truck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import witnessmark.shell.CommandLine;
import witnessmark.shell.CommandLine.Run;
import witnessmark.shell.run.SplitLine;

class TruckCommandsTest {

    /** Three main gears twice over, underdrive on both ranges: a layout that no example has. */
    private static final String ODD_TRUCK =
            """
            truck: odd-twelve
            title: Odd twelve
            gearbox:
              main-ratios: [2.50, 1.60, 1.00]
              range-ratio: 4.00
              splitter: { ratio: 1.25, splits: both }
              reverse-ratio: 2.40
            axle-ratio: 4.20
            tyre: { revs-per-km: 300 }
            engine: { idle-rpm: 600, governed-rpm: 2000, peak-torque-nm: 1800 }
            """;

    @TempDir
    static Path folder;

    private static CommandLine shell;

    @BeforeAll
    static void open() throws IOException {
        shell = new CommandLine(folder.resolve("store"));
        Files.writeString(folder.resolve("odd.yaml"), ODD_TRUCK);
        assertThat(shell.run("truck", "import", folder.resolve("odd.yaml").toString())
                        .exitCode())
                .isZero();
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
        return new ObjectMapper().readTree(run.out());
    }

    /**
     * Worked by hand for a shift from 4d (front 2.5, high) to 3d (front 1.0, low) at 50 km/h:
     * output 50/60 x 300 x 4.2 = 1050 rpm; input after 1050 x 4.0 x 1.0 = 4200 rpm, 2.1 times 2000;
     * ceiling 60 x 2000 / (4.0 x 4.2 x 300) = 23.81 km/h; mainshaft change 1050 x 3 = 3150 rpm;
     * energy over the proper one (50 / 23.81)^2 = 4.41; 1/2 x 0.12 x (3150 pi/30)^2 = 6529 J.
     */
    @Test
    void a_range_shift_agrees_with_a_sheet_worked_by_hand() {
        JsonNode answer = json("truck shift odd-twelve --from 4d --to 3d --speed 50");

        JsonNode figures = answer.get("figures");
        assertThat(value(figures, "output shaft speed")).isCloseTo(1050, within(1e-6));
        assertThat(value(figures, "input speed after the shift")).isCloseTo(4200, within(1e-6));
        assertThat(value(figures, "input speed over governed")).isCloseTo(2.1, within(1e-9));
        assertThat(value(figures, "highest proper road speed")).isCloseTo(23.8095, within(1e-4));
        assertThat(value(figures, "mainshaft speed change")).isCloseTo(3150, within(1e-6));
        assertThat(value(figures, "times the hardest proper shift")).isCloseTo(4.41, within(1e-6));
        assertThat(value(figures, "slip energy")).isCloseTo(6.5289, within(1e-3));
        assertThat(answer.get("verdict").asString()).isEqualTo("destructive");
    }

    private static double value(JsonNode figures, String name) {
        return figures.get(name).get("value").asDouble();
    }

    /** 37 mph is 37 x 1.609344 = 59.545728 km/h: international mile, exact. */
    @Test
    void a_speed_may_be_given_in_miles_either_way() {
        String shift = "truck shift odd-twelve --from 4d --to 3d ";

        assertThat(json(shift + "--speed 37mph").get("speed").get("value").asDouble())
                .isCloseTo(59.545728, within(1e-9));
        assertThat(json(shift + "--speed 37 --unit mph")
                        .get("speed")
                        .get("value")
                        .asDouble())
                .isCloseTo(59.545728, within(1e-9));
    }

    /** Whole ratios of the odd box by hand: 2.5 x 4 x 1.25 = 12.5 down to 1.0; top 2000 x 60 / (4.2 x 300) = 95.24. */
    @Test
    void the_speed_table_shows_both_units_marks_the_ceilings_and_fits_the_page() {
        Run run = run("truck speeds odd-twelve");

        assertThat(run.out()).contains("1u    12.500").contains("95.2 (59.2)");
        // 23.8 km/h and 14.8 mph, rounded down: a ceiling is not rounded up.
        assertThat(run.out()).contains(">> 3d   never above 23 km/h (14 mph)");
        assertThat(run.out()).contains("3d to 4u    1.280        438  21.9 %   lever, range and splitter");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    }

    /** 40 t on 5 % by hand: atan 0.05, m g (sin + 0.008 cos) r, r = 1000/(2 pi 300) = 0.5305 m: 12059 Nm. */
    @Test
    void a_start_agrees_with_a_sheet_worked_by_hand() {
        JsonNode figures = json("truck start odd-twelve --gear 1u --mass 40000kg --grade 5%")
                .get("figures");

        assertThat(value(figures, "wheel torque needed")).isCloseTo(12_059, within(2.0));
        // Over gear 12.5 and axle 4.2.
        assertThat(value(figures, "torque needed at the clutch")).isCloseTo(229.7, within(0.1));
    }

    /** Tow of 100 km at 60 km/h, high range: 1260 rpm for 100 min, bore 70 mm: pi x 0.07 x 126000 = 27.71 km. */
    @Test
    void a_tow_agrees_with_a_sheet_worked_by_hand() {
        JsonNode gears = json("truck tow odd-twelve --speed 60 --distance 100").get("gears");

        assertThat(gears)
                .allSatisfy(gear ->
                        assertThat(gear.get("distance").get("value").asDouble()).isCloseTo(27.709, within(1e-3)));
    }

    @Test
    void formulas_come_with_what_their_letters_stand_for() {
        Run run = run("truck shift odd-twelve --from 4d --to 3d --speed 50 --formulas");

        assertThat(run.out())
                .contains("n_in = n_out i_main after")
                .contains("i_axle: turns of the driveline to one turn of the wheels, 4.2, given")
                .contains("mu: friction of the range cone in oil, 0.1, assumed");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "truck list",
                "truck show odd-twelve",
                "truck speeds eighteen-ratio --rpm 700,900,1100,1300,1500,1700,1900",
                "truck shift odd-twelve --from 4d --to 4u --speed 20",
                "truck shift odd-twelve --from 4d --to 3d --speed 20 --lever home --rolling-back",
                "truck start odd-twelve",
                "truck start ten-ratio --gear 6 --mass 80000lb --formulas",
                "truck coast odd-twelve --speed 55mph --minutes 12 --range low",
                "truck tow odd-twelve --speed 50mph --distance 120mi",
                "truck angles --angle 4,3 --phase 90 --rpm 1500",
                "truck angles --angle 6",
                "truck plan odd-twelve --mass empty --careful --formulas",
                "truck card odd-twelve",
                "truck card eighteen-ratio --language es",
                "truck chart odd-twelve plan",
                "truck chart odd-twelve slip --gear 3u"
            })
    void every_answer_keeps_to_eighty_columns(String line) {
        Run run = run(line);

        assertThat(run.exitCode()).isZero();
        assertThat(run.messages()).isEmpty();
        assertThat(run.out().lines()).isNotEmpty().allMatch(text -> text.length() <= 80, "at most 80 columns");
    }

    /** 45 degrees each way leave nothing at the axle and shake the shaft between with 34,500 rad/s2 at 2000 rpm. */
    @Test
    void equal_angles_however_large_are_not_within_guidance() {
        assertThat(run("truck angles --angle 45,45 --rpm 2000").out())
                .contains(">> Beyond the usual guidance")
                .contains("34500 rad/s2")
                .doesNotContain("Within the usual guidance");
        assertThat(run("truck angles --angle 12,12 --rpm 2000").out()).contains("Beyond the usual guidance");
        assertThat(run("truck angles --angle 2,2 --rpm 2000").out()).contains(">> Within the usual guidance");
        assertThat(run("truck angles --angle 0").out())
                .contains("A straight joint turns evenly")
                .contains("needles do not roll")
                .doesNotContain("never runs evenly");
    }

    @Test
    void a_shift_out_of_reverse_rolls_back_and_is_never_proper() {
        Run run = run("truck shift ten-ratio --from Rl --to 6 --speed 3");

        assertThat(run.out())
                .contains("rolling back")
                .contains("Verdict: hard on the gearbox")
                .contains("the input is turned backwards");
        assertThat(json("truck shift ten-ratio --from Rl --to 6 --speed 3")
                        .get("rollingBack")
                        .asBoolean())
                .isTrue();
    }

    @Test
    void a_shift_of_splitter_and_range_tells_both_orders() {
        String shift = "truck shift thirteen-ratio --from 5o --to 4 --speed 20";

        assertThat(run(shift).out().replaceAll("\\s+", " "))
                .contains("reckoned here with the splitter first, which costs the cone more: splitter first ")
                .contains("slip energy, range first");
        assertThat(json(shift + " --splitter last").get("order").asString()).isEqualTo("range-first");
    }

    @Test
    void a_plan_says_what_the_engine_does_not_pull() {
        Run run = run("truck plan odd-twelve --grade 12");

        assertThat(run.out().replaceAll("\\s+", " "))
                .containsPattern("On this grade gear \\S+ is the highest that the engine pulls")
                .contains("full torque is")
                .contains("out of gear the truck loses 4.49 km/h per s");
        assertThat(json("truck plan odd-twelve --grade 12")
                        .get("notPulled")
                        .get("gear")
                        .asString())
                .isNotEmpty();
    }

    @Test
    void a_tow_in_low_range_says_that_speed_alone_destroys() {
        assertThat(run("truck tow odd-twelve --speed 85 --minutes 1 --range low")
                        .out())
                .contains(">> Too fast by itself");
    }

    /** 23.8095 km/h is 14.79 mph: rounded down, the same on every page. */
    @Test
    void ceilings_are_the_same_line_on_every_page() {
        assertThat(run("truck speeds odd-twelve --units us").out()).contains("never above 23 km/h (14 mph)");
        assertThat(run("truck card odd-twelve").out()).contains("   3d: 23 km/h (14 mph)");
        assertThat(run("truck chart odd-twelve plan").out()).contains("3d: 23 km/h (14 mph)");
        assertThat(run("truck chart odd-twelve slip").out()).contains("3d: 23 km/h (14 mph)");
    }

    @Test
    void an_unusual_profile_is_asked_about_with_every_answer_and_still_reckoned_with() throws IOException {
        Path odd = folder.resolve("per-mile.yaml");
        Files.writeString(
                odd, ODD_TRUCK.replace("revs-per-km: 300", "revs-per-km: 483").replace("odd-twelve", "per-mile"));
        String name = "'" + odd + "'";

        for (String line : new String[] {
            "truck show " + name,
            "truck speeds " + name,
            "truck plan " + name,
            "truck card " + name,
            "truck chart " + name + " plan",
            "truck shift " + name + " --from 4d --to 3d --speed 20",
            "truck start " + name,
            "truck tow " + name + " --speed 60 --minutes 5",
            "truck import " + name
        }) {
            Run run = run(line);
            assertThat(run.exitCode()).as(line).isZero();
            assertThat(run.out().replaceAll("\\s+", " "))
                    .as(line)
                    .contains("Check the profile: tyre.revs-per-km: 483 turns in a kilometre are unusual")
                    .contains("is it per mile?");
        }
        assertThat(json("truck speeds " + name).get("questions")).hasSize(1);
    }

    /** Bounds of what is typed: judgement, common practice; what is outside is asked about and still answered. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    truck shift odd-twelve --from 4d --to 5d --speed 130|false
                    truck shift odd-twelve --from 4d --to 5d --speed 131|true
                    truck start odd-twelve --mass 150000kg|false
                    truck start odd-twelve --mass 151000kg|true
                    truck start odd-twelve --mass 3999kg|true
                    truck start odd-twelve --grade 20|false
                    truck start odd-twelve --grade 21|true
                    truck plan odd-twelve --grade -21|true
                    truck plan odd-twelve --grade 3|false
                    truck tow odd-twelve --speed 131 --minutes 1|true
                    truck angles --angle 15,15|false
                    truck angles --angle 4,3 --phase 90|false
                    truck angles --angle 15.1,15|true
                    truck angles --angle 3,3 --rpm 4001|true
                    """)
    void what_is_typed_out_of_the_ordinary_is_asked_about(String line, boolean asked) {
        Run run = run(line);

        assertThat(run.exitCode()).isZero();
        assertThat(run.out().contains(">> Check what was typed: ")).isEqualTo(asked);
        assertThat(json(line).has("unusual")).isEqualTo(asked);
    }

    /**
     * Words that only the screen has, on both sides of where they change. In gear L 40 t are let in gently with 60 kJ on
     * 25.309 %, the top gear holds them on 2.1646 %, and L holds 90 t on 27.360 %: recomputed outside
     * the program, step by step.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "truck angles --angle 0; truck angles --angle 0.01; A straight joint turns evenly",
                "truck angles --angle 0.01; truck angles --angle 0; One joint alone never runs evenly",
                "truck start thirteen-ratio --grade 25.30; truck start thirteen-ratio --grade 25.32; Start in L",
                "truck start thirteen-ratio --grade 25.32; truck start thirteen-ratio --grade 25.30; No gear starts this sensibly",
                "truck plan thirteen-ratio --grade 2.165; truck plan thirteen-ratio --grade 2.164; is the highest that the engine pulls",
                "truck plan thirteen-ratio --mass 90000 --grade 27.37; truck plan thirteen-ratio --mass 90000 --grade 27.35;"
                        + " no gear of this truck pulls the load"
            })
    void a_word_of_the_screen_is_said_on_its_side_alone(String saying, String silent, String word) {
        assertThat(run(saying).out().replaceAll("\\s+", " ")).contains(word);
        assertThat(run(silent).out().replaceAll("\\s+", " ")).doesNotContain(word);
    }

    @Test
    void a_chart_is_written_as_svg_and_not_over_another_file() {
        Path svg = folder.resolve("plan.svg");

        Run first = run("truck chart odd-twelve plan --out '" + svg + "'");
        Run second = run("truck chart odd-twelve plan --out '" + svg + "'");

        assertThat(first.exitCode()).isZero();
        assertThat(svg).content().startsWith("<svg");
        assertThat(second.exitCode()).isEqualTo(1);
        assertThat(second.messages()).contains("is there already");
    }

    @Test
    void what_is_exported_can_be_imported_again() {
        Path file = folder.resolve("pattern.yaml");
        run("truck export odd-twelve --out '" + file + "'");

        Run again = run("truck import '" + file + "'");
        Run replaced = run("truck import '" + file + "' --replace");

        assertThat(file).hasContent(ODD_TRUCK.strip());
        assertThat(again.messages()).contains("truck 'odd-twelve' is kept already; add --replace");
        assertThat(replaced.exitCode()).isZero();
    }

    @Nested
    class In_a_case {

        @Test
        void a_shift_becomes_evidence_and_weighs() {
            run("case new at-speed --ratios 12 --range air --splitter both");
            run("case set at-speed range-cone-low-burned=present");
            double before = probability("at-speed", "low-range-at-speed");

            Run stored = run("truck shift odd-twelve --from 4d --to 3d --speed 50 --case at-speed");

            assertThat(stored.out())
                    .contains("Stored in case at-speed")
                    .contains("present      computed-low-range-above-ceiling");
            assertThat(probability("at-speed", "low-range-at-speed")).isGreaterThan(before + 0.2);
            assertThat(run("case show at-speed").out())
                    .contains("shift-4d-to-3d-at-50-km-h (computed)")
                    .contains("in: road speed = 50 km/h (31.07 mph)")
                    .contains("in: governed speed = 2000 rpm")
                    .contains("how: computed-low-range-above-ceiling: v_most = 60 n_governed / (i_low");
            assertThat(run("case verify at-speed").out()).contains("is whole");
        }

        @Test
        void a_guess_is_entered_as_unsure_and_moves_little() {
            run("case new a-guess --ratios 12 --range air --splitter both");
            run("case set a-guess range-cone-low-burned=present");
            double before = probability("a-guess", "low-range-at-speed");

            Run stored = run("truck shift odd-twelve --from 4d --to 3d --speed 50 --case a-guess --guessed");

            assertThat(stored.out()).contains("unsure       computed-low-range-above-ceiling");
            assertThat(probability("a-guess", "low-range-at-speed")).isCloseTo(before, within(0.1));
        }

        @Test
        void evidence_can_be_taken_off_again() {
            run("case new taken-off --ratios 12 --range air --splitter both");
            double before = probability("taken-off", "tow-wheels-down");
            run("truck tow odd-twelve --speed 60 --distance 100 --case taken-off --as the-tow");
            double with = probability("taken-off", "tow-wheels-down");

            Run cleared = run("case clear taken-off the-tow");

            assertThat(cleared.exitCode()).isZero();
            assertThat(with).isGreaterThan(before);
            assertThat(probability("taken-off", "tow-wheels-down")).isEqualTo(before);
        }

        @Test
        void a_truck_with_another_gearbox_is_refused_and_nothing_is_stored() {
            run("case new other-box --ratios 13 --range air --splitter high-only");

            Run run = run("truck shift odd-twelve --from 4d --to 3d --speed 50 --case other-box");

            assertThat(run.exitCode()).isEqualTo(1);
            assertThat(run.messages()).contains("says that its gearbox has 13 forward ratios, splitter high-only");
            assertThat(run("case show other-box").out()).doesNotContain("computed");
        }

        @Test
        void a_signed_off_case_takes_evidence_only_with_a_reason() {
            run("case new closed --ratios 12");
            run("case sign-off closed");
            String tow = "truck tow odd-twelve --speed 60 --distance 100 --case closed";

            assertThat(run(tow).messages()).contains("enter a correction with its reason");
            assertThat(run(tow + " --reason 'the tow bill came in'").exitCode()).isZero();
        }

        private double probability(String caseId, String cause) {
            JsonNode causes = json("diagnose " + caseId).get("causes");
            for (JsonNode each : causes) {
                if (each.get("id").asString().equals(cause)) {
                    return each.get("probability").asDouble();
                }
            }
            throw new AssertionError("no cause " + cause);
        }
    }

    @Nested
    class Refuses {

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                textBlock =
                        """
                        truck show odd-twelf|no truck 'odd-twelf' is known; did you mean odd-twelve?
                        truck show ../store/trucks/odd-twelve|no truck file '../store/trucks/odd-twelve'
                        truck shift odd-twelve --from 9 --to 3d --speed 5|--from '9' is not a gear of this box
                        truck shift thirteen-ratio --from 8 --to 4 --speed 5|--from '8' is split in this box; give 8d (8 direct) or 8o (8 overdrive)
                        truck shift odd-twelve --from 4dd --to 3d --speed 5|did you mean 4d
                        truck shift odd-twelve --to 3d --speed 5|--from is missing
                        truck shift odd-twelve --from 4d --to 3d|--speed is missing
                        truck shift odd-twelve --from 4d --to 3d --speed fast|--speed 'fast' is not a number
                        truck shift odd-twelve --from 4d --to 3d --speed 1,000|is not a number
                        truck shift odd-twelve --from 4d --to 3d --speed 60kg|is in kg, which does not convert to km/h; give it in km/h, mph
                        truck shift odd-twelve --from 4d --to 3d --speed 60 --unit kg|--unit 'kg' is not a unit of speed; km/h or mph
                        truck shift odd-twelve --from 4d --to 3d --speed 600|road speed: 600.0 km/h cannot be; give 0 to 200
                        truck shift odd-twelve --from 4d --to 3d --speed -5|road speed: -5.0 km/h cannot be
                        truck shift odd-twelve --from 4d --to 4d --speed 5|give two forward gears
                        truck shift odd-twelve --from 4d --to 5d --speed 5 --lever home|are both in high range
                        truck shift odd-twelve --from 4d --to 3d --speed 5 --clutch half|--clutch 'half' is not known; engaged (pedal up) or down
                        truck shift odd-twelve --from 4d --to 3d --speed 5 --lever up|--lever 'up' is not known; preselected, neutral
                        truck shift odd-twelve --from 4d --to 3d --speed 5 --as x|name the case: --case CASE
                        truck shift odd-twelve slowly --from 4d --to 3d --speed 5|does not take the word 'slowly'; see: help truck shift
                        truck list odd-twelve|'truck list' does not take the word 'odd-twelve'; see: help truck list
                        truck shift odd-twelve --from 4d --to 3d --speed 5 --sped 5|has no option --sped; did you mean --speed?
                        truck start odd-twelve --mass 36|give kilograms, or pounds with lb behind, not tonnes
                        truck start odd-twelve --mass 36000km|does not convert to kg
                        truck start odd-twelve --mass 36000bananas|has a unit that is not known; give it in
                        truck start odd-twelve --grade 70|grade: 70.0 % cannot be; give -40 to 40
                        truck start odd-twelve --case c|--case needs --gear
                        truck tow odd-twelve --speed 60|give one of --distance (km, or with mi behind) and --minutes
                        truck tow odd-twelve --speed 60 --distance 5 --minutes 5|give one of --distance
                        truck tow odd-twelve --speed 60 --distance 5 --range middle|--range 'middle' is not known; high or low
                        truck coast odd-twelve --speed 0 --distance 5|road speed: 0.0 km/h cannot be
                        truck angles|--angle needs one joint angle, or two parted by a comma
                        truck angles --angle 4,80|joint angle: 80.0 deg cannot be; give 0 to 45
                        truck angles --angle 4 --phase 90|--phase is for two joints
                        truck angles --angle 4 --case c|case 'c' is not in the store
                        truck speeds odd-twelve --rpm 1000,|is not a number
                        truck card odd-twelve --language fr|--language 'fr' is not known; en or es
                        truck chart odd-twelve pie|chart 'pie' is not known; plan or slip
                        truck chart odd-twelve slip --gear 6d|give one that is
                        truck remove ten-ratio|it cannot be removed
                        truck import nowhere.yaml|no truck file 'nowhere.yaml'
                        truck list --format xml|--format 'xml' is not known; text or json
                        """)
        void and_says_the_mend(String line, String mend) {
            Run run = run(line);

            assertThat(run.exitCode()).isIn(1, 2);
            assertThat(run.out()).isEmpty();
            assertThat(run.messages()).contains(mend).doesNotContain("fault inside");
        }

        @Test
        void a_profile_of_nonsense_with_every_fault_at_its_place() throws IOException {
            Path bad = folder.resolve("bad.yaml");
            Files.writeString(
                    bad,
                    """
                    truck: bad-truck
                    gearbox:
                      main-ratios: [0, 1.60, 2.40, 1.00]
                      range-ratio: 4.00
                    axle-ratio: 0
                    engine: { governed-rpm: 2000 }
                    """);

            Run run = run("truck import '" + bad + "'");

            assertThat(run.exitCode()).isEqualTo(1);
            assertThat(run.messages())
                    .contains("bad.yaml:3:17 gearbox.main-ratios[1]: ratio 0 is not from 0.3 to 30")
                    .contains("bad.yaml:3:26 gearbox.main-ratios[3]: ratio 2.4 is not below the 1.6 before it")
                    .contains("tyre: no tyre is given; give revs-per-km, revs-per-mile, or size")
                    .contains("bad.yaml:5:13 axle-ratio: 0 is not from 1 to 20");
            assertThat(run("truck list").out()).doesNotContain("bad-truck");
        }

        @Test
        void the_name_of_a_ready_example() throws IOException {
            Path same = folder.resolve("same.yaml");
            Files.writeString(same, ODD_TRUCK.replace("odd-twelve", "ten-ratio"));

            assertThat(run("truck import '" + same + "'").messages())
                    .contains("'ten-ratio' is the name of a ready example");
        }
    }
}
