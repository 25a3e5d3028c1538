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

    private static StandingStart start(double ratio, double mass, double grade) {
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
        StandingStart start = start(3.0, 36_000, 12);

        assertThat(start.launch()).isInstanceOf(Launch.NoLockUp.class);
        assertThat(start.verdict()).isEqualTo(StandingStart.Verdict.DOES_NOT_START);
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

    /** Bound of one ordinary start: 60 kJ by default, judgement. The least heat is 28.7818 x load factor kJ at gear 12. */
    @ParameterizedTest
    @CsvSource({
        "29.59, SENSIBLE",
        "29.58, HOT_AT_PART_THROTTLE",
        "28.79, HOT_AT_PART_THROTTLE",
        "28.78, CLUTCH_OVERHEATED"
    })
    void heat_is_judged_by_its_upper_end_and_named_by_its_least(double bound, StandingStart.Verdict verdict) {
        // Most heat 28.7818 x (1 + 33.6343 / 1200) = 29.5885 kJ; by hand.
        TruckProfile truck = TruckDraft.named("one-gear")
                .mainRatios(List.of(12.0))
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 1000 / (2 * Math.PI * 0.5))
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.START_RPM, 1000)
                .set(Parameter.CLUTCH_CAPACITY, 1200)
                .set(Parameter.CLUTCH_START_ENERGY, bound)
                .set(Parameter.MAINSHAFT_DIAMETER, 90)
                .torqueCurve(Map.of(900.0, 1500.0, 1900.0, 1500.0))
                .build();

        StandingStart start =
                new AnalyseStart(truck).of(new StartQuestion(truck.gears().top(), 36_000, 0));

        assertThat(start.verdict()).isEqualTo(verdict);
    }

    /** Downhill the load helps, and a clutch let in gently takes less: full torque is the upper end. */
    @Test
    void downhill_full_torque_makes_the_most_heat() {
        Launch.LocksUp launch = closes(12, 36_000, -3);

        assertThat(launch.mostSlipEnergy().value())
                .isEqualTo(launch.slipEnergy().value());
    }

    /** Half of what the torque is over the load, followed step by step: the truck gains speed until the clutch closes. */
    @Test
    void the_most_heat_agrees_with_a_start_followed_in_steps() {
        double torque = (1200 + start(9.0, 36_000, 4).loadAtClutch().value()) / 2;
        double load = start(9.0, 36_000, 4).loadAtClutch().value();
        double inertia = 36_000 * 0.25 / (31.5 * 31.5);
        double engine = 1000 * Math.PI / 30;
        double joule = 0;
        double speed = 0;
        for (double step = 1e-5; speed < engine; speed += (torque - load) / inertia * step) {
            joule += torque * (engine - speed) * step;
        }

        assertThat(1000 * closes(9.0, 36_000, 4).mostSlipEnergy().value()).isCloseTo(joule, within(joule * 1e-4));
    }

    /** Grip 0.7 (dry tarmac) on 0.4 of the weight, less rolling 0.008: 27.2 %, defaults from memory. */
    @ParameterizedTest
    @CsvSource({"27.19, SENSIBLE", "27.21, SPINS"})
    void beyond_the_grip_of_the_drive_wheels_nothing_starts(double grade, StandingStart.Verdict verdict) {
        TruckProfile truck = SampleTrucks.splitHigh()
                .set(Parameter.MAINSHAFT_DIAMETER, 200)
                .set(Parameter.CLUTCH_START_ENERGY, 5000)
                .build();

        StandingStart start =
                new AnalyseStart(truck).of(new StartQuestion(truck.gears().named("1"), 36_000, grade));

        assertThat(start.reach().byGrip().value()).isCloseTo(27.2, within(1e-9));
        assertThat(start.verdict()).isEqualTo(verdict);
    }

    /** A light truck has torque for a wall; the tyres end it: never more than the grip. */
    @Test
    void torque_to_spare_does_not_promise_a_wall() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        StandingStart start =
                new AnalyseStart(truck).of(new StartQuestion(truck.gears().named("1"), 8_000, 0));

        assertThat(start.reach().byTorque().value()).isGreaterThan(200);
        assertThat(start.reach().steepest().value()).isCloseTo(27.2, within(1e-9));
    }

    /** Shear yield 0.58 x 900 = 522 MPa; 16 T / (pi d^3) of the let-in clutch, 1200 x 12 x 2 Nm, is that at 65.50 mm. */
    @ParameterizedTest
    @CsvSource({"65.51, NOT_REACHED", "65.49, ONLY_BY_SHOCK"})
    void a_shaft_just_stout_enough_for_a_let_in_clutch(double diameter, StandingStart.Twist twist) {
        assertThat(ofShaft(diameter, 36_000, 0).mainshaft().twist()).isEqualTo(twist);
    }

    /** Holding 36 t on 10 % asks 36000 x 9.81 x 0.107464 x 0.5 / 3.5 = 5421.7 Nm: yield at 37.54 mm; by hand. */
    @ParameterizedTest
    @CsvSource({"37.55, ONLY_BY_SHOCK", "37.53, REACHED"})
    void a_shaft_just_stout_enough_for_the_load(double diameter, StandingStart.Twist twist) {
        StandingStart start = ofShaft(diameter, 36_000, 10);

        assertThat(start.mainshaft().twist()).isEqualTo(twist);
        assertThat(start.verdict() == StandingStart.Verdict.TWISTS_SHAFT)
                .isEqualTo(twist == StandingStart.Twist.REACHED);
    }

    private static StandingStart ofShaft(double diameter, double mass, double grade) {
        TruckProfile truck = TruckDraft.named("one-gear")
                .mainRatios(List.of(12.0))
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 1000 / (2 * Math.PI * 0.5))
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.START_RPM, 1000)
                .set(Parameter.CLUTCH_CAPACITY, 1200)
                .set(Parameter.MAINSHAFT_DIAMETER, diameter)
                .torqueCurve(Map.of(900.0, 1500.0, 1900.0, 1500.0))
                .build();
        return new AnalyseStart(truck).of(new StartQuestion(truck.gears().top(), mass, grade));
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

    /** A tenth off the diameter, 0.9^-3 = 1.371742112 times the stress; and 2500 Nm through a ratio of 12 are 30,000 Nm. */
    @Test
    void stress_goes_with_the_cube_of_the_diameter_and_with_the_torque() {
        double stress = new ShaftTorsion(30_000, 60).shearStress().value();

        assertThat(new ShaftTorsion(12 * 2500, 0.9 * 60).shearStress().value() / stress)
                .isCloseTo(1.371742112, within(1e-9));
        assertThat(new ShaftTorsion(60_000, 60).shearStress().value()).isCloseTo(2 * stress, within(1e-9 * stress));
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

        StandingStart low = analysis.of(new StartQuestion(truck.gears().named("1"), 36_000, 2));
        StandingStart high = analysis.of(new StartQuestion(truck.gears().named("5d"), 36_000, 2));

        assertThat(high.mainshaft().needed().value() / low.mainshaft().needed().value())
                .isCloseTo(3.4, within(1e-9));
        assertThat(high.mainshaft().ceiling().value())
                .isCloseTo(low.mainshaft().ceiling().value(), within(1e-9));
        assertThat(high.verdict()).isEqualTo(StandingStart.Verdict.HIGH_RANGE);
    }

    @Test
    void a_higher_lever_gear_leaves_mainshaft_torque_but_loads_the_clutch() {
        TruckProfile truck = SampleTrucks.splitHigh().build();
        AnalyseStart analysis = new AnalyseStart(truck);

        StandingStart first = analysis.of(new StartQuestion(truck.gears().named("1"), 36_000, 2));
        StandingStart third = analysis.of(new StartQuestion(truck.gears().named("3"), 36_000, 2));

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

        assertThat(twist(thin)).isEqualTo(StandingStart.Twist.ONLY_BY_SHOCK);
        assertThat(twist(stout)).isEqualTo(StandingStart.Twist.NOT_REACHED);
    }

    private static StandingStart.Twist twist(TruckProfile truck) {
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
