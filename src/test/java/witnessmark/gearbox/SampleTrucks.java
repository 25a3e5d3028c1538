package witnessmark.gearbox;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Trucks for tests: round numbers of our own. */
public final class SampleTrucks {

    private SampleTrucks() {}

    /** Four main gears in steps of 1.4 twice over, range 3.4, overdrive 0.85 on high range; 312 turns a km, axle 3.5. */
    public static TruckDraft splitHigh() {
        return TruckDraft.named("sample")
                .mainRatios(List.of(2.744, 1.96, 1.4, 1.0))
                .splitter(0.85, false)
                .set(Parameter.RANGE_RATIO, 3.4)
                .set(Parameter.AXLE_RATIO, 3.5)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000);
    }

    /** The same with both ranges split and an extra low gear: eighteen ratios. */
    public static TruckDraft splitBoth() {
        return splitHigh().splitter(0.85, true).set(Parameter.LOW_RATIO, 4.0);
    }

    /** Two gears to reckon by hand: axle 4, wheel radius half a metre, 2000 rpm governed, neither rolling nor air resistance. */
    public static TruckDraft twoGears(double first, double second, double lowestPullingRpm) {
        return TruckDraft.named("two")
                .mainRatios(List.of(first, second))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 1000 / Math.PI)
                .set(Parameter.GOVERNED_RPM, 2000)
                .set(Parameter.LOWEST_PULLING_RPM, lowestPullingRpm)
                .set(Parameter.ROLLING_RESISTANCE, 0)
                .set(Parameter.DRAG_AREA, 0);
    }

    /** Boxes laid out by the rule of thumb: main step m, range m^k, splitter a root of m or none. */
    public static Arbitrary<TruckProfile> byTheRule() {
        Arbitrary<Double> step = Arbitraries.doubles().between(1.25, 1.5);
        Arbitrary<Integer> mainGears = Arbitraries.integers().between(3, 5);
        Arbitrary<String> splits = Arbitraries.of("none", "high-only", "both");
        Arbitrary<Double> axle = Arbitraries.doubles().between(2.5, 6.0);
        Arbitrary<Double> governed = Arbitraries.doubles().between(1700, 2300);
        return Combinators.combine(step, mainGears, splits, axle, governed).as(SampleTrucks::laidOut);
    }

    private static TruckProfile laidOut(double step, int gears, String splits, double axle, double governed) {
        List<Double> ratios = java.util.stream.IntStream.range(0, gears)
                .mapToObj(i -> Math.pow(step, gears - 1 - i))
                .toList();
        TruckDraft draft = TruckDraft.named("laid-out")
                .mainRatios(ratios)
                .set(Parameter.RANGE_RATIO, Math.pow(step, gears))
                .set(Parameter.AXLE_RATIO, axle)
                .set(Parameter.TYRE_REVS, 315)
                .set(Parameter.GOVERNED_RPM, governed);
        return (splits.equals("none") ? draft : draft.splitter(1 / Math.sqrt(step), splits.equals("both"))).build();
    }
}
