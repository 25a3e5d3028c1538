package witnessmark.gearbox.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

class AnalyseStartTest {

    private static TruckProfile truck(double ratio) {
        return TruckDraft.named("one-gear")
                .mainRatios(List.of(ratio))
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 1000 / (2 * Math.PI * 0.5))
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.START_RPM, 1000)
                .set(Parameter.CLUTCH_CAPACITY, 1200)
                .torqueCurve(Map.of(900.0, 1500.0, 1900.0, 1500.0))
                .build();
    }

    private static Start start(double ratio, double mass, double grade) {
        TruckProfile truck = truck(ratio);
        return new AnalyseStart(truck).of(new StartQuestion(truck.gears().top(), mass, grade));
    }

    private static Launch.LocksUp closes(double ratio, double mass, double grade) {
        assertThat(start(ratio, mass, grade).launch()).isInstanceOf(Launch.LocksUp.class);
        return (Launch.LocksUp) start(ratio, mass, grade).launch();
    }

    /**
     * Clutch at launch, 36 t, wheel radius 0.5 m, axle 3.5, 1000 rpm, 1200 Nm, f 0.008: formula of machine design
     * textbooks from memory; recomputed, the first row also by step integration.
     */
    @ParameterizedTest
    @CsvSource({
        "12.0, 0.4581, 28781.7814, 4.4880",
        "9.0, 0.8223, 51664.2221, 5.9840",
        "6.5, 1.6003, 100549.9437, 8.2855",
        "4.5, 3.4219, 215003.8254, 11.9680",
        "3.0, 8.0233, 504120.1806, 17.9520"
    })
    void clutch_energy_grows_steeply_with_the_gear(double ratio, double seconds, double joule, double kmh) {
        Launch.LocksUp launch = closes(ratio, 36_000, 0);

        assertThat(launch.time().value()).isCloseTo(seconds, within(6e-5));
        assertThat(1000 * launch.slipEnergy().value()).isCloseTo(joule, within(joule * 1e-8));
        assertThat(launch.roadSpeed().value()).isCloseTo(kmh, within(6e-5));
    }

    /** The same on a grade of 5 %, recomputed. */
    @Test
    void a_grade_costs_more() {
        Launch.LocksUp launch = closes(12, 36_000, 5);

        assertThat(launch.time().value()).isCloseTo(0.558608708, within(1e-7));
        assertThat(1000 * launch.slipEnergy().value()).isCloseTo(35_098.4202, within(0.01));
    }

    @Test
    void heating_is_energy_over_heat_capacity() {
        Launch.LocksUp launch = closes(12, 36_000, 0);

        // Upper end: load 36000 x 9.81 x 0.008 x 0.5 / 42 = 33.6343 Nm over 1200 Nm: 28.78 x 1.0280286 kJ, by hand.
        assertThat(launch.mostSlipEnergy().value()).isCloseTo(28.7817814 * (1 + 33.634285714 / 1200), within(1e-7));
        assertThat(launch.heating().value()).isCloseTo(launch.mostSlipEnergy().value() / 30, within(1e-12));
        assertThat(launch.heating().unit()).isEqualTo(Unit.CELSIUS_CHANGE);
    }

    @Test
    void a_clutch_that_does_not_beat_the_load_never_closes() {
        Start start = start(3.0, 36_000, 12);

        assertThat(start.launch()).isInstanceOf(Launch.NoLockUp.class);
        assertThat(start.verdict()).isEqualTo(Start.Verdict.DOES_NOT_START);
        assertThat(((Launch.NoLockUp) start.launch()).shortfall().value())
                .isCloseTo(start.loadAtClutch().value() - 1200, within(1e-9))
                .isPositive();
        assertThat(start.figures()).containsKey("torque missing at the clutch").doesNotContainKey("time of slip");
    }

    @Test
    void on_its_steepest_grade_the_load_is_just_the_clutch_torque() {
        double steepest = start(9.0, 36_000, 0).reach().steepest().value();

        assertThat(start(9.0, 36_000, steepest).loadAtClutch().value()).isCloseTo(1200, within(1e-6));
        assertThat(start(9.0, 36_000, steepest - 0.01).launch()).isInstanceOf(Launch.LocksUp.class);
        assertThat(start(9.0, 36_000, steepest + 0.01).launch()).isInstanceOf(Launch.NoLockUp.class);
    }

    /** tau = 16 T / (pi d^3), strength of materials; first row a textbook problem printed as 14.32 ksi; recomputed. */
    @ParameterizedTest
    @CsvSource({
        "20337.2690, 101.6, 98.7601",
        "12000, 113.9761471, 41.27712499",
        "2000, 60, 47.15702018",
        "18000, 90, 125.7520538"
    })
    void shaft_stress_agrees_with_the_textbook(double torque, double diameterMm, double mpa) {
        assertThat(new ShaftTorsion(torque, diameterMm).shearStress().value()).isCloseTo(mpa, within(mpa * 2e-6));
    }

    @Test
    void the_textbook_shaft_in_its_own_units() {
        double torque = Unit.POUND_FOOT.convert(15_000, Unit.NEWTON_METRE);

        double psi =
                new ShaftTorsion(torque, 4 * 25.4).shearStress().in(Unit.PSI).value();

        assertThat(psi / 1000).isCloseTo(14.32394488, within(1e-7));
    }

    /** Common practice, no source: high range raises the mainshaft torque of a start by the range step. */
    @Test
    void a_start_in_high_range_raises_mainshaft_torque_by_the_range_ratio() {
        TruckProfile truck = SampleTrucks.splitHigh().build();
        AnalyseStart analysis = new AnalyseStart(truck);

        Start low = analysis.of(new StartQuestion(truck.gears().named("1"), 36_000, 2));
        Start high = analysis.of(new StartQuestion(truck.gears().named("5d"), 36_000, 2));

        assertThat(high.mainshaft().needed().value() / low.mainshaft().needed().value())
                .isCloseTo(3.4, within(1e-9));
        assertThat(high.mainshaft().ceiling().value())
                .isCloseTo(low.mainshaft().ceiling().value(), within(1e-9));
        assertThat(high.verdict()).isEqualTo(Start.Verdict.HIGH_RANGE);
    }

    @Test
    void a_higher_lever_gear_leaves_mainshaft_torque_but_loads_the_clutch() {
        TruckProfile truck = SampleTrucks.splitHigh().build();
        AnalyseStart analysis = new AnalyseStart(truck);

        Start first = analysis.of(new StartQuestion(truck.gears().named("1"), 36_000, 2));
        Start third = analysis.of(new StartQuestion(truck.gears().named("3"), 36_000, 2));

        assertThat(third.mainshaft().needed().value())
                .isCloseTo(first.mainshaft().needed().value(), within(1e-9));
        assertThat(third.loadAtClutch().value())
                .isCloseTo(1.96 * first.loadAtClutch().value(), within(1e-9));
    }

    @Test
    void a_thin_shaft_can_be_twisted_by_a_shock() {
        TruckProfile thin =
                SampleTrucks.splitHigh().set(Parameter.MAINSHAFT_DIAMETER, 45).build();
        TruckProfile stout =
                SampleTrucks.splitHigh().set(Parameter.MAINSHAFT_DIAMETER, 90).build();

        assertThat(twist(thin)).isEqualTo(Start.Twist.ONLY_BY_SHOCK);
        assertThat(twist(stout)).isEqualTo(Start.Twist.NOT_REACHED);
    }

    private static Start.Twist twist(TruckProfile truck) {
        return new AnalyseStart(truck)
                .of(new StartQuestion(truck.gears().named("1"), 36_000, 2))
                .mainshaft()
                .twist();
    }

    @Test
    void loaded_the_lowest_gear_and_empty_one_up() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        StartGears loaded = StartGears.of(truck, StartGears.Load.LOADED);
        StartGears empty = StartGears.of(truck, StartGears.Load.EMPTY);

        assertThat(loaded.lowest()).map(Gear::id).contains("1");
        assertThat(empty.lowest()).map(Gear::id).contains("2");
        assertThat(empty.highest().orElseThrow().ratio())
                .isLessThanOrEqualTo(loaded.highest().orElseThrow().ratio());
    }

    @Test
    void on_a_wall_no_gear_is_sensible() {
        StartGears gears = StartGears.of(SampleTrucks.splitHigh().build(), StartGears.Load.LOADED, 40);

        assertThat(gears.lowest()).isEmpty();
        assertThat(gears.highest()).isEmpty();
        assertThat(gears.starts()).hasSize(4);
    }

    @Test
    void nonsense_is_refused() {
        Gear gear = SampleTrucks.splitHigh().build().gears().named("1");

        assertThatThrownBy(() -> new StartQuestion(gear, 0, 0))
                .hasMessage("mass: 0.0 kg cannot be; give 500 to 400000 kg");
        assertThatThrownBy(() -> new StartQuestion(gear, 36_000, 90))
                .hasMessage("grade: 90.0 % cannot be; give -40 to 40, uphill positive");
    }

    @Provide
    Arbitrary<TruckProfile> trucks() {
        return SampleTrucks.byTheRule();
    }

    @Property
    void a_sensible_start_is_never_in_high_range(@ForAll("trucks") TruckProfile truck) {
        for (StartGears.Load load : StartGears.Load.values()) {
            StartGears gears = StartGears.of(truck, load);
            assertThat(gears.highest()).map(Gear::range).isNotEqualTo(Optional.of(Range.HIGH));
            assertThat(gears.lowest().map(Gear::ratio).orElse(1.0))
                    .isGreaterThanOrEqualTo(gears.highest().map(Gear::ratio).orElse(1.0));
        }
    }
}
