package witnessmark.gearbox.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.driveline.JointLine;
import witnessmark.gearbox.driveline.UniversalJoint;
import witnessmark.gearbox.exposure.Exposure;
import witnessmark.gearbox.exposure.ExposureSymbols;
import witnessmark.gearbox.exposure.Journey;
import witnessmark.gearbox.plan.PlanSymbols;
import witnessmark.gearbox.plan.PlannedShift;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.gearbox.shift.AnalyseRangeShift;
import witnessmark.gearbox.shift.InRangeShift;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.Rolling;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;
import witnessmark.gearbox.shift.ShiftSymbols;
import witnessmark.gearbox.start.AnalyseStart;
import witnessmark.gearbox.start.StandingStart;
import witnessmark.gearbox.start.StartQuestion;
import witnessmark.gearbox.start.StartSymbols;

/** Every printed formula, worked out from the letters that are printed with it, gives the figure that is printed. */
class PrintedFormulaTest {

    /** Layouts of our own: an overdrive in front and nothing split; high range split; both ranges split under. */
    static Stream<TruckProfile> trucks() {
        return Stream.of(
                TruckDraft.named("front-overdrive")
                        .mainRatios(List.of(3.36, 2.15, 1.37, 1.0, 0.73))
                        .set(Parameter.RANGE_RATIO, 4.71)
                        .set(Parameter.REVERSE_RATIO, 3.22)
                        .set(Parameter.AXLE_RATIO, 4.11)
                        .set(Parameter.TYRE_REVS, 327)
                        .set(Parameter.GOVERNED_RPM, 2150)
                        .set(Parameter.MAINSHAFT_INERTIA, 0.047)
                        .set(Parameter.AUXILIARY_INERTIA, 0.081)
                        .set(Parameter.DRAG, 5)
                        .build(),
                SampleTrucks.splitHigh().set(Parameter.AUXILIARY_INERTIA, 0.09).build(),
                SampleTrucks.splitBoth()
                        .splitter(1.17, true)
                        .set(Parameter.MAINSHAFT_INERTIA, 0.11)
                        .torqueCurve(Map.of(700.0, 1100.0, 1000.0, 1900.0, 1400.0, 1950.0, 2000.0, 1400.0))
                        .build());
    }

    private static void holds(List<Symbol> symbols, Map<String, Figure> figures) {
        Map<String, Double> exact = new HashMap<>();
        Map<String, Double> printed = new HashMap<>();
        symbols.forEach(symbol -> {
            exact.put(symbol.symbol(), symbol.figure().value());
            printed.put(symbol.symbol(), shown(symbol.figure()));
        });
        named(figures, exact, printed);
        figures.forEach((name, figure) -> {
            Formula formula = Formula.of(figure.note());
            double size = Math.max(1e-9, Math.abs(figure.value()));
            assertThat(formula.value(exact))
                    .as(name + ", " + figure.note())
                    .isCloseTo(figure.value(), within(1e-9 * size));
            assertThat(formula.value(printed))
                    .as(name + " from what is printed, " + figure.note())
                    .isCloseTo(figure.value(), within(rounding(formula, printed) + lastDigit(figure.value())));
        });
    }

    /** How far the rounding of the printed letters can carry: each moved by a unit of its last printed digit. */
    private static double rounding(Formula formula, Map<String, Double> printed) {
        double plain = formula.value(printed);
        double sum = 1e-9 * Math.abs(plain);
        for (String letter : printed.keySet()) {
            for (int sign : new int[] {-1, 1}) {
                Map<String, Double> moved = new HashMap<>(printed);
                moved.merge(letter, sign * lastDigit(printed.get(letter)), Double::sum);
                double other = formula.value(moved);
                sum += Double.isFinite(other) ? Math.abs(other - plain) : 0;
            }
        }
        return sum;
    }

    /** A unit of the third digit, which is the least that is printed, and of the smallest number that is. */
    private static double lastDigit(double value) {
        return Math.max(1e-4, value == 0 ? 0 : Math.pow(10, Math.floor(Math.log10(Math.abs(value))) - 2));
    }

    /** Figures whose formula gives them a letter are letters of the others, from the exact and from the printed value. */
    private static void named(Map<String, Figure> figures, Map<String, Double> exact, Map<String, Double> printed) {
        figures.values().forEach(figure -> Formula.of(figure.note()).letter().ifPresent(letter -> {
            exact.put(letter, figure.value());
            printed.put(letter, shown(figure));
        }));
    }

    /** The number that stands on the page. */
    private static double shown(Figure figure) {
        return Double.parseDouble(
                figure.text().replaceAll("^(below|above) ", "").split(" ")[0]);
    }

    /** Of every pair of gears in the two ranges one way of making the shift, each way in its turn. */
    @ParameterizedTest
    @MethodSource("trucks")
    void of_range_shifts(TruckProfile truck) {
        AnalyseRangeShift analysis = new AnalyseRangeShift(truck);
        List<List<RangeShiftQuestion>> pairs = rangeShifts(truck);
        for (int pair = 0; pair < pairs.size(); pair++) {
            List<RangeShiftQuestion> ways = pairs.get(pair);
            holds(truck, analysis.of(ways.get(pair % ways.size())));
        }
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("trucks")
    void of_range_shifts_in_every_way(TruckProfile truck) {
        AnalyseRangeShift analysis = new AnalyseRangeShift(truck);
        rangeShifts(truck).stream().flatMap(List::stream).map(analysis::of).forEach(shift -> holds(truck, shift));
    }

    /** For each pair of gears in the two ranges the ways of making the shift. */
    private static List<List<RangeShiftQuestion>> rangeShifts(TruckProfile truck) {
        return truck.gears().all().stream()
                .flatMap(from -> truck.gears().all().stream()
                        .filter(to -> from.range() != to.range())
                        .map(to -> questions(from, to).toList()))
                .toList();
    }

    private static void holds(TruckProfile truck, RangeShift shift) {
        holds(ShiftSymbols.of(truck, shift.question()), shift.figures());
    }

    private static Stream<RangeShiftQuestion> questions(Gear from, Gear to) {
        return Stream.of(LeverTiming.values())
                .flatMap(lever -> Stream.of(Rolling.values()).flatMap(rolling -> Stream.of(Clutch.values())
                        .map(clutch -> new RangeShiftQuestion(
                                from, to, 17, clutch, lever, rolling, SplitterMove.AS_THE_GEARS_SAY))));
    }

    @Test
    void of_range_shifts_with_the_order_said_or_the_splitter_staying() {
        TruckProfile truck = SampleTrucks.splitHigh().build();
        for (SplitterMove move :
                List.of(SplitterMove.SPLITTER_FIRST, SplitterMove.RANGE_FIRST, SplitterMove.STAYS_SPLIT)) {
            holds(
                    truck,
                    new AnalyseRangeShift(truck)
                            .of(new RangeShiftQuestion(
                                    truck.gears().named("5o"),
                                    truck.gears().named("3"),
                                    21,
                                    Clutch.ENGAGED,
                                    LeverTiming.PRESELECTED,
                                    Rolling.FORWARD,
                                    move)));
        }
    }

    @ParameterizedTest
    @MethodSource("trucks")
    void of_shifts_within_a_range(TruckProfile truck) {
        List<Gear> high = truck.gears().forwardIn(Range.HIGH);
        for (int i = 1; i < high.size(); i++) {
            InRangeShift shift = InRangeShift.of(truck, high.get(i), high.get(i - 1), 61, Clutch.ENGAGED);
            holds(ShiftSymbols.of(truck, shift), shift.figures());
        }
    }

    @ParameterizedTest
    @MethodSource("trucks")
    void of_starts(TruckProfile truck) {
        for (Gear gear : truck.gears().all()) {
            for (double grade : List.of(-2.0, 0.0, 3.0, 14.0)) {
                StartQuestion question = new StartQuestion(gear, 31_000, grade);
                StandingStart start = new AnalyseStart(truck).of(question);
                holds(StartSymbols.of(truck, question), start.figures());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("trucks")
    void of_rolling(TruckProfile truck) {
        for (Exposure.Mode mode : Exposure.Mode.values()) {
            for (Range range : Range.values()) {
                Exposure exposure = Exposure.of(truck, mode, range, Journey.overMinutes(73, 41));
                holds(ExposureSymbols.of(truck, exposure), exposure.figures());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("trucks")
    void of_plans(TruckProfile truck) {
        for (ShiftPlan.Floor floor : ShiftPlan.Floor.values()) {
            ShiftPlan plan = ShiftPlan.of(truck, floor, 34_000, 1.5);
            double before = 0;
            for (PlannedShift shift : plan.shifts()) {
                Map<String, Figure> figures = new LinkedHashMap<>();
                figures.put("step", shift.step().step());
                figures.put("limit", shift.luggingLimit());
                figures.put("lost in a second", plan.lostPerSecond());
                if (!shift.shiftAt().note().startsWith("raised")) {
                    figures.put("at rpm", shift.shiftAt());
                }
                holds(
                        Stream.concat(PlanSymbols.of(truck, plan).stream(), PlanSymbols.of(shift, before).stream())
                                .toList(),
                        figures);
                before = shift.shiftAt().value();
            }
        }
    }

    @Test
    void of_joints() {
        for (double first : List.of(0.3, 4.0, 12.0, 44.0)) {
            Symbol speed = new Symbol("n", "driveline speed", Figure.given(1730, witnessmark.gearbox.Unit.RPM));
            holds(List.of(degrees("b", first), speed), new UniversalJoint(first).figures(1730));
            for (double second : List.of(0.7, 3.5, 31.0)) {
                for (double phase : List.of(0.0, 17.0, 90.0, -140.0)) {
                    holds(
                            List.of(degrees("b1", first), degrees("b2", second), degrees("phase", phase), speed),
                            new JointLine(first, second, phase).figures(1730));
                }
            }
        }
    }

    private static Symbol degrees(String letter, double degrees) {
        return new Symbol(letter, "angle", Figure.given(degrees, witnessmark.gearbox.Unit.DEGREE));
    }
}
