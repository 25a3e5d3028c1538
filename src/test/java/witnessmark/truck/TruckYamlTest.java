package witnessmark.truck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckProfile;
import witnessmark.yaml.FaultyInput;

class TruckYamlTest {

    private static final String GOOD =
            """
            truck: my-truck
            title: My truck
            gearbox:
              main-ratios: [2.74, 1.96, 1.40, 1.00]
              range-ratio: 3.84
              splitter: { ratio: 0.85, splits: high-only }
            axle-ratio: 3.7
            tyre: { revs-per-mile: 502 }
            engine: { governed-rpm: 2000, torque-curve-lbft: { 1000: 1400, 1400: 1500, 2000: 1100 } }
            masses: { loaded-lb: 80000 }
            """;

    private static List<String> faults(String text) {
        FaultyInput refused = catchThrowableOfType(FaultyInput.class, () -> TruckYaml.read("t.yaml", text));
        return Arrays.asList(refused.getMessage().split("\n"));
    }

    @Test
    void metric_and_us_units_are_read() {
        TruckProfile truck = TruckYaml.read("t.yaml", GOOD);

        assertThat(truck.id()).isEqualTo("my-truck");
        assertThat(truck.mainRatios()).containsExactly(2.74, 1.96, 1.40, 1.00);
        assertThat(truck.value(Parameter.TYRE_REVS)).isCloseTo(311.9283385, within(1e-6));
        assertThat(truck.value(Parameter.MASS_LOADED)).isCloseTo(36_287.39, within(0.01));
        assertThat(truck.value(Parameter.PEAK_TORQUE)).isCloseTo(2033.73, within(0.01));
        assertThat(truck.gears().forward()).hasSize(12);
    }

    @ParameterizedTest
    @CsvSource({"nine-ratio, 9", "ten-ratio, 10", "thirteen-ratio, 13", "eighteen-ratio, 18"})
    void the_ready_trucks_have_their_ratios(String name, int ratios) {
        assertThat(ReadyTrucks.named(name).gears().forward()).hasSize(ratios);
        assertThat(ReadyTrucks.names()).contains(name);
    }

    /** Layout rule of the trade: range step about m^k, splitter step about the root of m. */
    @ParameterizedTest
    @ValueSource(strings = {"nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio"})
    void the_ready_trucks_are_laid_out_by_the_rule(String name) {
        TruckProfile truck = ReadyTrucks.named(name);
        int k = truck.mainRatios().size();
        double step = Math.pow(truck.mainRatios().get(0) / truck.mainRatios().get(k - 1), 1.0 / (k - 1));

        assertThat(truck.rangeRatio()).isCloseTo(Math.pow(step, k), within(0.03 * truck.rangeRatio()));
        truck.splitter().ifPresent(s -> assertThat(1 / s.ratio()).isCloseTo(Math.sqrt(step), within(0.03)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio"})
    void what_is_written_reads_back_the_same(String name) {
        TruckProfile truck = ReadyTrucks.named(name);

        assertThat(TruckYaml.read("again.yaml", TruckYaml.write(truck))).isEqualTo(truck);
    }

    @Test
    void a_title_may_be_given_in_spanish_too() {
        TruckProfile truck = TruckYaml.read("t.yaml", GOOD + "title-es: Camión de prueba\n");

        assertThat(truck.titleIn("es")).isEqualTo("Camión de prueba");
        assertThat(truck.titleIn("en")).isEqualTo(truck.title());
        assertThat(TruckYaml.write(truck)).contains("title-es: Camión de prueba");
        assertThat(TruckYaml.read("t.yaml", GOOD).titleIn("es")).isEqualTo(truck.title());
    }

    @Test
    void what_is_assumed_is_not_written() {
        assertThat(TruckYaml.write(SampleTrucks.splitHigh().build()))
                .contains("range-ratio: 3.4")
                .doesNotContain("inertia")
                .doesNotContain("idle");
        assertThat(TruckYaml.read("t.yaml", GOOD).figure(Parameter.IDLE_RPM).basis())
                .isEqualTo(Basis.ASSUMED);
    }

    @Nested
    class Refusals {

        @Test
        void every_fault_has_its_line_and_column() {
            String text =
                    """
                    truck: my-truck
                    gearbox:
                      main-ratios: [2.74, 0, 1.40, x]
                      range-ratio: 3.84
                      splitter: { ratio: 0.85, splits: some }
                    axle-ratio: 0
                    engine: { governed-rpm: "2,000", colour: { 1: red, 2: red } }
                    """;

            assertThat(faults(text))
                    .containsExactly(
                            "t.yaml:1:1 tyre: no tyre is given; give revs-per-km, revs-per-mile, or size as on the side"
                                    + " wall: 295/80R22.5",
                            "t.yaml:3:23 gearbox.main-ratios[2]: ratio 0 is not from 0.3 to 30; give input turns to one"
                                    + " mainshaft turn, from the tooth counts",
                            "t.yaml:3:26 gearbox.main-ratios[3]: ratio 1.4 is not below the 0 before it; give the ratios"
                                    + " highest number first, each once",
                            "t.yaml:3:32 gearbox.main-ratios[4]: 'x' is not a number; write digits with a point, such as"
                                    + " 3.9, without unit or separators",
                            "t.yaml:5:36 gearbox.splitter.splits: 'some' is not known; give high-only or both",
                            "t.yaml:6:13 axle-ratio: 0 is not from 1 to 20; give turns of the driveline to one turn"
                                    + " of the wheels, 1 to 20",
                            "t.yaml:7:25 engine.governed-rpm: '2,000' is not a number; write digits with a point, such"
                                    + " as 3.9, without unit or separators",
                            "t.yaml:7:34 engine.colour: not an entry of a truck profile; use one of"
                                    + " engine.governed-rpm, engine.idle-rpm, engine.inertia-kgm2,"
                                    + " engine.lowest-pulling-rpm, engine.peak-torque-lbft, engine.peak-torque-nm,"
                                    + " engine.start-rpm, engine.torque-curve, engine.torque-curve-lbft");
        }

        @Test
        void an_entry_given_twice() {
            assertThat(faults(GOOD + "axle-ratio: 3.9\n"))
                    .containsExactly(
                            "t.yaml:11:1 key 'axle-ratio' of a truck profile stands twice (line 7 and here); keep one");
            assertThat(faults(GOOD.replace("loaded-lb: 80000", "loaded-lb: 80000, loaded-kg: 36000")))
                    .containsExactly(
                            "t.yaml:10:22 masses.loaded-lb: given twice, also as masses.loaded-kg; keep one unit");
        }

        @Test
        void half_a_splitter() {
            assertThat(faults(GOOD.replace("ratio: 0.85, ", "")))
                    .containsExactly("t.yaml:6:3 gearbox.splitter: only half of it is given; write { ratio: 0.85,"
                            + " splits: high-only } or splits: both");
        }

        @Test
        void text_that_is_no_yaml_or_no_profile() {
            assertThat(faults("truck: [")).hasSize(1).first().asString().startsWith("t.yaml:1:9 this is not YAML: ");
            assertThat(faults("")).containsExactly("t.yaml is empty; write into it or give another file");
            assertThat(faults("- 1"))
                    .containsExactly(
                            "t.yaml:1:1 a truck profile is not a map of keys and values; write it as key: value");
            assertThat(faults("truck: a\ntyre: &a { size: x }\n"))
                    .containsExactly("t.yaml:2:7 an anchor (&name) is not taken; put the text in quotes, or take the"
                            + " anchor out");
            assertThat(faults("a: &a [*a]")).isNotEmpty();
            assertThat(faults("truck: " + "x".repeat(500_000))).hasSize(1);
        }

        @Test
        void a_ready_truck_that_is_not_there() {
            assertThatThrownBy(() -> ReadyTrucks.named("../x"))
                    .hasMessage(
                            "truck: '../x' is not a ready example; give one of nine-ratio, ten-ratio, thirteen-ratio,"
                                    + " eighteen-ratio");
        }

        @Property
        void any_text_is_read_or_refused_never_broken(@ForAll String text) {
            FaultyInput refused = catchThrowableOfType(FaultyInput.class, () -> TruckYaml.read("t.yaml", text));

            assertThat(refused.faults()).isNotEmpty();
        }
    }
}
