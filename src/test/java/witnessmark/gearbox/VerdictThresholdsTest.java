package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.gearbox.driveline.Guidance;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.driveline.UniversalJoint;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.RollingEvidence;
import witnessmark.gearbox.evidence.ShiftEvidence;
import witnessmark.gearbox.evidence.StartEvidence;
import witnessmark.gearbox.exposure.Exposure;
import witnessmark.gearbox.exposure.Journey;
import witnessmark.gearbox.plan.CoachingPoint;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.gearbox.shift.AnalyseRangeShift;
import witnessmark.gearbox.shift.InRangeShift;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.Rolling;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;
import witnessmark.gearbox.shift.Reason;
import witnessmark.gearbox.shift.ShiftVerdict;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.gearbox.speed.Steps;
import witnessmark.gearbox.start.AnalyseStart;
import witnessmark.gearbox.start.StandingStart;
import witnessmark.gearbox.start.StartGears;
import witnessmark.gearbox.start.StartQuestion;

/**
 * Every word of judgement that a truck command can say, on both sides of the threshold at which it is said. A word that comes
 * later and has no threshold here fails. Where a threshold lies in the quantity asked about is worked out by hand from the
 * bound; the bound's own source stands in its row.
 */
class VerdictThresholdsTest {

    /** Enums of the trade that ask or describe and judge nothing. */
    private static final Set<Class<?>> NO_JUDGEMENT = Set.of(
            Clutch.class,
            LeverTiming.class,
            Rolling.class,
            SplitterMove.class,
            Exposure.Mode.class,
            StartGears.Load.class,
            ShiftPlan.Floor.class,
            CoachingPoint.Topic.class,
            ShiftStep.Kind.class,
            SpeedUnits.class,
            ComputedFinding.Kind.class,
            ComputedFinding.State.class);

    /** What a finding came to, for every kind of finding. */
    private record Found(ComputedFinding.Kind kind, ComputedFinding.State state) {}

    /**
     * @param source of the bound
     * @param under what is said on the one side of it
     * @param over what is said on the other
     */
    private record Threshold(String source, Set<Object> under, Set<Object> over, Object saysUnder, Object saysOver) {

        @Override
        public String toString() {
            return saysUnder + " | " + saysOver + ": " + source;
        }
    }

    private static final String PRACTICE = "common practice, judgement; no source states a number";

    private static final String OWN_IDLE = "the truck's own idle speed, 600 rpm at 3 km/h; labouring, common practice";

    private static Threshold at(
            String source, double under, double over, DoubleFunction<Collection<?>> say, Object first, Object second) {
        return either(source, say.apply(under), say.apply(over), first, second);
    }

    /** Two sides that no number parts, such as a lever that is home or not. */
    private static Threshold either(
            String source, Collection<?> one, Collection<?> other, Object first, Object second) {
        return new Threshold(source, Set.copyOf(one), Set.copyOf(other), first, second);
    }

    /** Output 50/3 rpm for each km/h; the hardest proper shift is that of gear 4, ratio 4, at 2000 / 4 rpm, 30 km/h. */
    private static TruckDraft truck() {
        return TruckDraft.named("thresholds")
                .mainRatios(List.of(3.0, 2.0, 1.4, 1.0))
                .set(Parameter.RANGE_RATIO, 4)
                .set(Parameter.REVERSE_RATIO, 3)
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 250)
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.IDLE_RPM, 600)
                .set(Parameter.DRAG, 0);
    }

    private static RangeShift shift(
            TruckProfile truck, String from, String to, double kmh, Clutch clutch, LeverTiming lever, Rolling rolling) {
        return new AnalyseRangeShift(truck)
                .of(new RangeShiftQuestion(
                        truck.gears().named(from),
                        truck.gears().named(to),
                        kmh,
                        clutch,
                        lever,
                        rolling,
                        SplitterMove.AS_THE_GEARS_SAY));
    }

    private static RangeShift proper(String from, String to, double kmh) {
        return shift(truck().build(), from, to, kmh, Clutch.ENGAGED, LeverTiming.PRESELECTED, Rolling.FORWARD);
    }

    private static Set<Object> said(RangeShift shift) {
        return Stream.<Object>concat(Stream.of(shift.verdict(), shift.engine().outcome()), shift.reasons().stream())
                .collect(Collectors.toSet());
    }

    private static Set<Object> found(List<ComputedFinding> findings) {
        return findings.stream().map(f -> new Found(f.kind(), f.state())).collect(Collectors.toSet());
    }

    private static Found found(ComputedFinding.Kind kind, ComputedFinding.State state) {
        return new Found(kind, state);
    }

    /**
     * From gear 4 to 6 the engine stays between idle and governed speed, so that the heat of the cone alone decides: 30 km/h
     * times the root of the bound.
     */
    private static Stream<Threshold> ofEnergy() {
        double hard = 30 * Math.sqrt(1.05);
        double destructive = 30 * Math.sqrt(3);
        DoubleFunction<Collection<?>> up = kmh -> said(proper("4", "6", kmh));
        return Stream.of(
                at(PRACTICE, hard - 0.01, hard + 0.01, up, ShiftVerdict.PROPER, ShiftVerdict.HARD),
                at(PRACTICE, hard - 0.01, hard + 0.01, up, ShiftVerdict.PROPER, Reason.ENERGY_ABOVE_PROPER),
                at(PRACTICE, destructive - 0.01, destructive + 0.01, up, ShiftVerdict.HARD, ShiftVerdict.DESTRUCTIVE),
                at(
                        PRACTICE,
                        hard - 0.01,
                        hard + 0.01,
                        kmh -> found(ShiftEvidence.of(truck().build(), proper("4", "6", kmh))),
                        found(ComputedFinding.Kind.CONE_ENERGY_HIGH, ComputedFinding.State.ABSENT),
                        found(ComputedFinding.Kind.CONE_ENERGY_HIGH, ComputedFinding.State.PRESENT)));
    }

    /** Gear 1, ratio 12, is at 2000 rpm at 10 km/h, where the cone takes a ninth of its hardest shift. */
    private static Stream<Threshold> ofSpeed() {
        DoubleFunction<Collection<?>> down = kmh -> said(proper("8", "1", kmh));
        DoubleFunction<Collection<?>> pedal = kmh -> said(
                shift(truck().build(), "8", "1", kmh, Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, Rolling.FORWARD));
        DoubleFunction<Collection<?>> neutral = kmh ->
                said(shift(truck().build(), "8", "1", kmh, Clutch.ENGAGED, LeverTiming.IN_NEUTRAL, Rolling.FORWARD));
        return Stream.of(
                at(PRACTICE, 10.09, 10.11, down, ShiftVerdict.PROPER, Reason.SPEED_ABOVE_GOVERNED),
                at(PRACTICE, 12.49, 12.51, down, ShiftVerdict.HARD, ShiftVerdict.DESTRUCTIVE),
                at(
                        PRACTICE,
                        10.09,
                        10.11,
                        down,
                        RangeShift.Outcome.WITHIN_GOVERNED,
                        RangeShift.Outcome.ENGINE_OVERSPED),
                at(PRACTICE, 10.09, 10.11, pedal, RangeShift.Outcome.WITHIN_GOVERNED, RangeShift.Outcome.DISC_OVERSPED),
                at(
                        PRACTICE,
                        10.09,
                        10.11,
                        neutral,
                        RangeShift.Outcome.WITHIN_GOVERNED,
                        RangeShift.Outcome.INPUT_WOULD_BE_OVERSPED),
                at(OWN_IDLE, 2.99, 3.01, down, RangeShift.Outcome.BELOW_IDLE, RangeShift.Outcome.WITHIN_GOVERNED),
                at(OWN_IDLE, 2.99, 3.01, down, Reason.BELOW_IDLE, ShiftVerdict.PROPER),
                at(OWN_IDLE, 2.99, 3.01, pedal, RangeShift.Outcome.DISC_BELOW_IDLE, RangeShift.Outcome.WITHIN_GOVERNED),
                at(
                        OWN_IDLE,
                        2.99,
                        3.01,
                        neutral,
                        RangeShift.Outcome.INPUT_WOULD_BE_BELOW_IDLE,
                        RangeShift.Outcome.WITHIN_GOVERNED),
                at("standing still or not", 0, 0.01, down, RangeShift.Outcome.STANDING, RangeShift.Outcome.BELOW_IDLE));
    }

    private static Stream<Threshold> ofLeverAndRolling() {
        TruckProfile truck = truck().build();
        Set<?> preselected = said(proper("8", "1", 5));
        return Stream.of(
                either(
                        "rigid bodies: what is locked to the mainshaft is dragged along",
                        preselected,
                        said(shift(truck, "8", "1", 5, Clutch.ENGAGED, LeverTiming.LEVER_HOME_FIRST, Rolling.FORWARD)),
                        ShiftVerdict.PROPER,
                        Reason.LEVER_HOME_FIRST),
                either(
                        "kinematics, and common practice: stop before moving the range",
                        preselected,
                        said(shift(truck, "8", "1", 5, Clutch.ENGAGED, LeverTiming.IN_NEUTRAL, Rolling.BACK)),
                        ShiftVerdict.PROPER,
                        Reason.ROLLING_AGAINST),
                either(
                        "kinematics: the input turns, the truck rolls the other way",
                        preselected,
                        said(shift(truck, "8", "1", 5, Clutch.ENGAGED, LeverTiming.LEVER_HOME_FIRST, Rolling.BACK)),
                        ShiftVerdict.PROPER,
                        Reason.SPEEDS_ADD),
                at(
                        "standing still or not; common practice: stop before moving the range",
                        0,
                        0.01,
                        kmh -> said(
                                shift(truck, "Rl", "Rh", kmh, Clutch.ENGAGED, LeverTiming.PRESELECTED, Rolling.BACK)),
                        ShiftVerdict.PROPER,
                        Reason.ROLLING_BACK),
                at(
                        "kinematics, standing still or not",
                        0,
                        0.01,
                        kmh -> said(shift(truck, "8", "1", kmh, Clutch.ENGAGED, LeverTiming.PRESELECTED, Rolling.BACK)),
                        RangeShift.Outcome.STANDING,
                        RangeShift.Outcome.TURNED_BACKWARDS),
                at(
                        "kinematics, standing still or not",
                        0,
                        0.01,
                        kmh -> said(shift(truck, "8", "1", kmh, Clutch.ENGAGED, LeverTiming.IN_NEUTRAL, Rolling.BACK)),
                        RangeShift.Outcome.STANDING,
                        RangeShift.Outcome.INPUT_WOULD_TURN_BACKWARDS),
                // 0.1 x 2000 N x 0.09 m / sin 30 = 36 Nm at the cone; 9 Nm of drag behind range 4 are as much.
                at(
                        "cone clutch of machine design textbooks, from memory",
                        8.99,
                        9.01,
                        drag -> said(shift(
                                truck().set(Parameter.CONE_ANGLE, 30)
                                        .set(Parameter.DRAG, drag)
                                        .build(),
                                "8",
                                "1",
                                5,
                                Clutch.ENGAGED,
                                LeverTiming.PRESELECTED,
                                Rolling.FORWARD)),
                        ShiftVerdict.PROPER,
                        Reason.CONE_CANNOT_FINISH));
    }

    private static Stream<Threshold> ofShiftFindings() {
        TruckProfile truck = truck().build();
        DoubleFunction<Collection<?>> down = kmh -> found(ShiftEvidence.of(truck, proper("8", "1", kmh)));
        DoubleFunction<Collection<?>> inRange = kmh -> found(ShiftEvidence.of(
                truck,
                InRangeShift.of(truck, truck.gears().named("2"), truck.gears().named("1"), kmh, Clutch.ENGAGED)));
        DoubleFunction<Collection<?>> inRangeSaid = kmh -> {
            InRangeShift shift = InRangeShift.of(
                    truck, truck.gears().named("2"), truck.gears().named("1"), kmh, Clutch.ENGAGED);
            return Set.of(shift.verdict(), shift.outcome());
        };
        // 3000 rpm of the disc, 1.5 times governed speed, at 15 km/h.
        DoubleFunction<Collection<?>> disc = kmh -> found(ShiftEvidence.of(
                truck, shift(truck, "8", "1", kmh, Clutch.PEDAL_DOWN, LeverTiming.PRESELECTED, Rolling.FORWARD)));
        return Stream.of(
                at(
                        PRACTICE,
                        10.09,
                        10.11,
                        down,
                        found(ComputedFinding.Kind.LOW_RANGE_ABOVE_CEILING, ComputedFinding.State.ABSENT),
                        found(ComputedFinding.Kind.LOW_RANGE_ABOVE_CEILING, ComputedFinding.State.PRESENT)),
                at(
                        PRACTICE,
                        10.09,
                        10.11,
                        inRange,
                        found(ComputedFinding.Kind.ENGINE_OVERSPEED_IN_LOW, ComputedFinding.State.ABSENT),
                        found(ComputedFinding.Kind.ENGINE_OVERSPEED_IN_LOW, ComputedFinding.State.PRESENT)),
                at(PRACTICE, 10.09, 10.11, inRangeSaid, ShiftVerdict.PROPER, ShiftVerdict.HARD),
                at(PRACTICE, 12.49, 12.51, inRangeSaid, ShiftVerdict.HARD, ShiftVerdict.DESTRUCTIVE),
                at(OWN_IDLE, 2.99, 3.01, inRangeSaid, ShiftVerdict.HARD, ShiftVerdict.PROPER),
                at(
                        "the clutch maker's limit; assumed, 1.5 times governed speed",
                        14.99,
                        15.01,
                        disc,
                        found(ComputedFinding.Kind.DISC_OVERSPEED, ComputedFinding.State.ABSENT),
                        found(ComputedFinding.Kind.DISC_OVERSPEED, ComputedFinding.State.PRESENT)),
                // What follows from the road speed alone is told once, by the ceiling.
                either(
                        "one fact counts once",
                        found(ShiftEvidence.of(truck, proper("4", "6", 20))),
                        found(ShiftEvidence.of(truck, proper("8", "4", 20))),
                        found(ComputedFinding.Kind.CONE_ENERGY_HIGH, ComputedFinding.State.ABSENT),
                        found(ComputedFinding.Kind.CONE_ENERGY_HIGH, ComputedFinding.State.NOT_COUNTED)),
                either(
                        "one fact counts once",
                        found(ShiftEvidence.of(
                                truck,
                                InRangeShift.of(
                                        truck,
                                        truck.gears().named("2"),
                                        truck.gears().named("1"),
                                        9,
                                        Clutch.ENGAGED))),
                        down.apply(9),
                        found(ComputedFinding.Kind.ENGINE_OVERSPEED_IN_LOW, ComputedFinding.State.ABSENT),
                        found(ComputedFinding.Kind.ENGINE_OVERSPEED_IN_LOW, ComputedFinding.State.NOT_COUNTED)));
    }

    /** Radius 0.5 m, no rolling resistance, 1000 Nm at any speed, 800 rpm held; gear 1 has 48 to 1 with the axle. */
    private static TruckDraft climber() {
        return truck().set(Parameter.TYRE_REVS, 1000 / Math.PI)
                .set(Parameter.ROLLING_RESISTANCE, 0)
                .set(Parameter.MAINSHAFT_DIAMETER, 60)
                .set(Parameter.CLUTCH_CAPACITY, 1500)
                .torqueCurve(Map.of(800.0, 1000.0, 2000.0, 1000.0));
    }

    private static Collection<?> start(TruckDraft draft, String gear, double kg, double grade) {
        TruckProfile truck = draft.build();
        StartQuestion question = new StartQuestion(truck.gears().named(gear), kg, grade);
        StandingStart start = new AnalyseStart(truck).of(question);
        Set<Object> said = new HashSet<>(found(StartEvidence.of(truck, question)));
        said.add(start.verdict());
        said.add(start.mainshaft().twist());
        return said;
    }

    /**
     * 40 t on 5 %: sine 0.0499376, 19595.5 N, 204.12 Nm at the clutch in gear 1, 306.18 in gear 2. Referred inertia 4.34028
     * (9.76563) kg m2, 83.7758 rad/s: 19.137 (49.392) kJ at full torque, 23.043 (64.515) let in gently; by hand.
     */
    private static Stream<Threshold> ofStarts() {
        DoubleFunction<Collection<?>> lowest =
                kj -> start(climber().set(Parameter.CLUTCH_START_ENERGY, kj), "1", 40_000, 5);
        DoubleFunction<Collection<?>> second =
                kj -> start(climber().set(Parameter.CLUTCH_START_ENERGY, kj), "2", 40_000, 5);
        DoubleFunction<Collection<?>> capacity =
                nm -> start(climber().set(Parameter.CLUTCH_CAPACITY, nm), "1", 40_000, 5);
        String heat = "judgement, for the clutch maker's own figure";
        ComputedFinding.Kind tooHigh = ComputedFinding.Kind.START_GEAR_TOO_HIGH;
        ComputedFinding.Kind gradeability = ComputedFinding.Kind.GRADEABILITY_SHORT;
        return Stream.of(
                at(
                        heat,
                        23.03,
                        23.05,
                        lowest,
                        StandingStart.Verdict.HOT_AT_PART_THROTTLE,
                        StandingStart.Verdict.SENSIBLE),
                at(
                        heat,
                        19.13,
                        19.15,
                        lowest,
                        StandingStart.Verdict.CLUTCH_OVERHEATED,
                        StandingStart.Verdict.HOT_AT_PART_THROTTLE),
                at(
                        heat,
                        64.5,
                        64.53,
                        second,
                        found(tooHigh, ComputedFinding.State.NOT_COUNTED),
                        found(tooHigh, ComputedFinding.State.ABSENT)),
                at(
                        heat,
                        49.38,
                        49.4,
                        second,
                        found(tooHigh, ComputedFinding.State.PRESENT),
                        found(tooHigh, ComputedFinding.State.NOT_COUNTED)),
                // Just held, the clutch slips for minutes.
                at(
                        "torques in balance",
                        204.1,
                        204.14,
                        capacity,
                        StandingStart.Verdict.DOES_NOT_START,
                        StandingStart.Verdict.CLUTCH_OVERHEATED),
                at(
                        "torques in balance",
                        204.1,
                        204.14,
                        capacity,
                        found(gradeability, ComputedFinding.State.PRESENT),
                        found(gradeability, ComputedFinding.State.NOT_COUNTED)),
                at(
                        "grip 0.7 of a share of 0.4 of the weight, 28 %; dry tarmac, from memory",
                        27.99,
                        28.01,
                        grade -> start(climber(), "1", 20_000, grade),
                        StandingStart.Verdict.SENSIBLE,
                        StandingStart.Verdict.SPINS),
                // 40 t down 30 %: sine 0.287348, 112,758 N, 1174.6 Nm in gear 1: by hand.
                at(
                        "torques in balance",
                        1174.5,
                        1174.7,
                        nm -> start(climber().set(Parameter.CLUTCH_CAPACITY, nm), "1", 40_000, -30),
                        StandingStart.Verdict.RUNS_AWAY,
                        StandingStart.Verdict.SENSIBLE),
                either(
                        "common practice: a start is made in low range",
                        start(climber().set(Parameter.CLUTCH_START_ENERGY, 5000), "4", 20_000, 0),
                        start(climber().set(Parameter.CLUTCH_START_ENERGY, 5000), "5", 20_000, 0),
                        StandingStart.Verdict.SENSIBLE,
                        StandingStart.Verdict.HIGH_RANGE));
    }

    /**
     * Shear yield 0.58 x 900 = 522 MPa. A let-in clutch puts 1500 x 3 x 2 = 9000 Nm on the shaft, which 44.446 mm bear; 20 t
     * on 27 % put 20000 x 9.81 x 0.260668 x 0.5 / 16 = 1598.2 Nm, which 24.986 mm bear: by hand.
     */
    private static Stream<Threshold> ofTheShaft() {
        DoubleFunction<Collection<?>> shaft = mm ->
                start(climber().set(Parameter.MAINSHAFT_DIAMETER, mm).set(Parameter.GEAR_BORE, 70), "1", 20_000, 27);
        String torsion = "round shaft in torsion, strength of materials textbooks; shear yield 0.58 of tensile";
        ComputedFinding.Kind kind = ComputedFinding.Kind.MAINSHAFT_TORQUE_OVER_YIELD;
        return Stream.of(
                at(torsion, 44.44, 44.45, shaft, StandingStart.Twist.ONLY_BY_SHOCK, StandingStart.Twist.NOT_REACHED),
                at(torsion, 24.98, 24.99, shaft, StandingStart.Twist.REACHED, StandingStart.Twist.ONLY_BY_SHOCK),
                at(torsion, 24.98, 24.99, shaft, StandingStart.Verdict.TWISTS_SHAFT, StandingStart.Verdict.SENSIBLE),
                at(
                        torsion,
                        44.44,
                        44.45,
                        shaft,
                        found(kind, ComputedFinding.State.NOT_COUNTED),
                        found(kind, ComputedFinding.State.ABSENT)),
                at(
                        torsion,
                        24.98,
                        24.99,
                        shaft,
                        found(kind, ComputedFinding.State.PRESENT),
                        found(kind, ComputedFinding.State.NOT_COUNTED)));
    }

    /**
     * Engine off in high range the mainshaft turns at 50/3 rpm for each km/h: 2020 rpm at 121.2, 2500 at 150. A bore of
     * 70 mm at 60 km/h, 1000 rpm, slides 0.21991 km in a minute; coasting, reverse turns 200 rpm the other way, 0.26389 km.
     */
    private static Stream<Threshold> ofRolling() {
        TruckProfile truck = truck().set(Parameter.GEAR_BORE, 70).build();
        DoubleFunction<Collection<?>> speed =
                kmh -> Set.of(Exposure.of(truck, Exposure.Mode.TOW, Range.HIGH, Journey.overMinutes(kmh, 1))
                        .shaft());
        ComputedFinding.Kind tow = ComputedFinding.Kind.TOW_RUB_LONG;
        ComputedFinding.Kind coast = ComputedFinding.Kind.COAST_RUB_LONG;
        return Stream.of(
                at(PRACTICE, 121.1, 121.3, speed, Exposure.ShaftSpeed.ORDINARY, Exposure.ShaftSpeed.ABOVE_ORDINARY),
                at(PRACTICE, 149.9, 150.1, speed, Exposure.ShaftSpeed.ABOVE_ORDINARY, Exposure.ShaftSpeed.DESTRUCTIVE),
                either(
                        "the countershafts turn with the engine, and stand with it",
                        Set.of(rolled(truck, Exposure.Mode.COAST, 1).oilThrow()),
                        Set.of(rolled(truck, Exposure.Mode.TOW, 1).oilThrow()),
                        Exposure.OilThrow.OF_IDLE,
                        Exposure.OilThrow.NONE_IN_FRONT),
                at(
                        PRACTICE + ": 2 km without oil",
                        2 / 0.21991 - 0.01,
                        2 / 0.21991 + 0.01,
                        minutes -> found(List.of(RollingEvidence.of(truck, rolled(truck, Exposure.Mode.TOW, minutes)))),
                        found(tow, ComputedFinding.State.NOT_COUNTED),
                        found(tow, ComputedFinding.State.PRESENT)),
                at(
                        PRACTICE + ": 5 km with the oil of idle",
                        5 / 0.26389 - 0.01,
                        5 / 0.26389 + 0.01,
                        minutes ->
                                found(List.of(RollingEvidence.of(truck, rolled(truck, Exposure.Mode.COAST, minutes)))),
                        found(coast, ComputedFinding.State.NOT_COUNTED),
                        found(coast, ComputedFinding.State.PRESENT)));
    }

    private static Exposure rolled(TruckProfile truck, Exposure.Mode mode, double minutes) {
        return Exposure.of(truck, mode, Range.HIGH, Journey.overMinutes(60, minutes));
    }

    private static Collection<?> line(double first, double second, double rpm) {
        JointLine line = new JointLine(first, second, JointLine.IN_PHASE);
        Set<Object> said = new HashSet<>(line.concerns(rpm));
        said.add(Guidance.Verdict.of(line.concerns(rpm)));
        said.add(found(
                RollingEvidence.of(line, rpm).kind(),
                RollingEvidence.of(line, rpm).state()));
        return said;
    }

    private static Collection<?> joint(double degrees, double rpm) {
        List<Guidance> concerns = new UniversalJoint(degrees).concerns(rpm);
        return concerns.isEmpty() ? Set.of(Guidance.Verdict.WITHIN) : concerns;
    }

    /** At 5 degrees 0.007625250 of the speed squared: 1000 rad/s2 at 362.133 rad/s, 3458.1 rpm; recomputed from the formula. */
    private static Stream<Threshold> ofJoints() {
        String rules = "a driveshaft maker's public rules";
        String ripple = "a driveshaft maker's public text: a ripple of 0.0027, that of one joint of 2.976506 degrees";
        String shaking = "usual value, from memory; a driveshaft maker's public table of angle by speed comes to it";
        ComputedFinding.Kind kind = ComputedFinding.Kind.DRIVELINE_ANGLE_RIPPLE_HIGH;
        return Stream.of(
                at(ripple, 2.976, 2.977, b -> joint(b, 500), Guidance.Verdict.WITHIN, Guidance.RIPPLE),
                at(shaking, 3458, 3459, n -> line(5, 4.5, n), Guidance.Verdict.LOOK, Guidance.DRIVE_SIDE),
                at(shaking, 3458, 3459, n -> line(4.5, 5, n), Guidance.Verdict.LOOK, Guidance.DRIVEN_SIDE),
                at(shaking, 3458, 3459, n -> line(4.5, 5, n), Guidance.Verdict.LOOK, Guidance.Verdict.BEYOND),
                at(
                        shaking,
                        3458,
                        3459,
                        n -> line(4.5, 5, n),
                        found(kind, ComputedFinding.State.ABSENT),
                        found(kind, ComputedFinding.State.PRESENT)),
                at(rules, 3, 3.01, b -> line(b, 2.5, 500), Guidance.Verdict.WITHIN, Guidance.LARGE_ANGLE),
                at(rules, 0.49, 0.5, b -> line(b, 1, 500), Guidance.STRAIGHT_JOINT, Guidance.Verdict.WITHIN),
                at(rules, 2, 2.01, b -> line(b, 1, 500), Guidance.Verdict.WITHIN, Guidance.UNEQUAL_ANGLES));
    }

    /** Steps that take 0.4 and x of the engine speed: (0.4 - x) / 0.4 is 0.05 at 0.38 and 0.2 at 0.32. */
    private static Stream<Threshold> ofSteps() {
        DoubleFunction<Collection<?>> steps =
                less -> Set.of(Steps.of(truck().mainRatios(List.of(1 / (0.6 * (1 - less)), 1 / 0.6, 1.0))
                                .build())
                        .highRangeEvenness()
                        .orElseThrow()
                        .verdict());
        return Stream.of(
                at(PRACTICE, 0.381, 0.379, steps, Steps.Evenness.Verdict.EQUAL, Steps.Evenness.Verdict.NEARLY_EQUAL),
                at(PRACTICE, 0.321, 0.319, steps, Steps.Evenness.Verdict.NEARLY_EQUAL, Steps.Evenness.Verdict.UNEVEN));
    }

    static List<Threshold> thresholds() {
        return Stream.of(
                        ofEnergy(),
                        ofSpeed(),
                        ofLeverAndRolling(),
                        ofShiftFindings(),
                        ofStarts(),
                        ofTheShaft(),
                        ofRolling(),
                        ofJoints(),
                        ofSteps())
                .flatMap(row -> row)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("thresholds")
    void each_word_is_said_on_its_side_alone(Threshold threshold) {
        assertThat(threshold.source()).isNotBlank();
        assertThat(threshold.under()).contains(threshold.saysUnder()).doesNotContain(threshold.saysOver());
        assertThat(threshold.over()).contains(threshold.saysOver()).doesNotContain(threshold.saysUnder());
    }

    @Test
    void no_word_of_judgement_is_without_its_threshold() {
        Set<Object> held = thresholds().stream()
                .flatMap(threshold -> Stream.of(threshold.saysUnder(), threshold.saysOver()))
                .collect(Collectors.toSet());

        assertThat(judgements()).hasSizeGreaterThanOrEqualTo(9);
        assertThat(judgements()).allSatisfy(words -> assertThat(held).contains((Object[]) words.getEnumConstants()));
        assertThat(Stream.of(ComputedFinding.Kind.values())).allSatisfy(kind -> assertThat(
                        held.stream().filter(said -> said instanceof Found found && found.kind() == kind))
                .as(kind.id())
                .hasSizeGreaterThanOrEqualTo(2));
    }

    /** The enums in which the rooms of the gearbox judge; what a class keeps to itself is no word of it. */
    private static List<Class<?>> judgements() {
        return new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("witnessmark.gearbox").stream()
                        .filter(JavaClass::isEnum)
                        .filter(type -> !type.getModifiers().contains(JavaModifier.PRIVATE))
                        .filter(type -> !type.getPackageName().equals("witnessmark.gearbox"))
                        .<Class<?>>map(JavaClass::reflect)
                        .filter(type -> !NO_JUDGEMENT.contains(type))
                        .toList();
    }

    /** The bounds are judgement for a heavy truck, from memory; a number just outside is refused, and just inside is not. */
    @ParameterizedTest
    @EnumSource(Parameter.class)
    void a_parameter_is_refused_beyond_what_is_possible(Parameter parameter) {
        Parameter.Bounds bounds = parameter.bounds();
        double apart = (bounds.most() - bounds.least()) * 1e-6;

        assertThat(refused(parameter, bounds.least() - apart)).isTrue();
        assertThat(refused(parameter, bounds.least())).isFalse();
        assertThat(refused(parameter, bounds.most())).isFalse();
        assertThat(refused(parameter, bounds.most() + apart)).isTrue();
    }

    private static boolean refused(Parameter parameter, double value) {
        return truck().set(parameter, value).faults().stream()
                .anyMatch(fault -> fault.text().startsWith(parameter.key() + ": " + Parameter.plain(value))
                        && fault.text().contains("is not from"));
    }

    /** And beyond what is usual it is asked about; where possible and usual end together there is nothing to ask. */
    @ParameterizedTest
    @EnumSource(Parameter.class)
    void a_parameter_is_asked_about_beyond_what_is_usual(Parameter parameter) {
        Parameter.Bounds bounds = parameter.bounds();
        double apart = (bounds.usualMost() - bounds.usualLeast()) * 1e-3;

        assertThat(asked(parameter, bounds.usualLeast())).isFalse();
        assertThat(asked(parameter, bounds.usualMost())).isFalse();
        assertThat(asked(parameter, bounds.usualMost() + apart)).isTrue();
        if (bounds.usualLeast() > bounds.least()) {
            assertThat(asked(parameter, bounds.usualLeast() - apart)).isTrue();
        }
    }

    private static boolean asked(Parameter parameter, double value) {
        return ProfileCheck.questions(truck().set(parameter, value)).stream()
                .anyMatch(question -> question.text().startsWith(parameter.key())
                        && question.text().contains("unusual"));
    }
}
