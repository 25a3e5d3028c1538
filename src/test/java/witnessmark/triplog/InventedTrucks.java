package witnessmark.triplog;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.gear.KnobGear.Range;
import witnessmark.triplog.gear.KnobGear.Splitter;

/** Gear tables of trucks that do not exist; ratios are our own. */
public final class InventedTrucks {
    private InventedTrucks() {}

    private static KnobGear low(String name, double ratio, int lever) {
        return new KnobGear(name, ratio, Range.LOW, Splitter.NONE, lever);
    }

    private static KnobGear high(String name, double ratio, int lever, Splitter splitter) {
        return new KnobGear(name, ratio, Range.HIGH, splitter, lever);
    }

    /** Crawler and four gears low, four gears high with an overdrive split: 13 forward ratios. */
    public static GearTable thirteen() {
        List<KnobGear> gears = new ArrayList<>();
        double range = 3.84;
        double[] main = {2.74, 1.96, 1.40, 1.00};
        gears.add(low("Lo", 4.10 * range, 0));
        for (int i = 0; i < 4; i++) {
            gears.add(low((i + 1) + "", main[i] * range, i + 1));
            gears.add(high((i + 5) + "", main[i], i + 1, Splitter.DIRECT));
            gears.add(high((i + 5) + "-over", main[i] * 0.85, i + 1, Splitter.OVERDRIVE));
        }
        gears.add(new KnobGear("R", 3.75 * range, Range.LOW, Splitter.NONE, -1));
        gears.add(new KnobGear("R-high", 3.75, Range.HIGH, Splitter.DIRECT, -1));
        return new GearTable(gears, 312, 3.70, 2000, 600, 1100, range, Optional.of(0.85), Optional.empty());
    }

    /** Five gears in each range, no splitter: 10 forward ratios. */
    public static GearTable ten() {
        List<KnobGear> gears = new ArrayList<>();
        double[] main = {2.93, 2.2, 1.66, 1.27, 1.0};
        for (int i = 0; i < 5; i++) {
            gears.add(low((i + 1) + "", main[i] * 3.78, i + 1));
            gears.add(high((i + 6) + "", main[i], i + 1, Splitter.NONE));
        }
        gears.add(new KnobGear("R", 13.4, Range.LOW, Splitter.NONE, -1));
        return new GearTable(gears, 320, 3.90, 2100, 650, 1100, 3.78, Optional.empty(), Optional.empty());
    }

    /** Crawler and four gears in each range, all split with an overdrive: 18 forward ratios. */
    public static GearTable eighteen() {
        List<KnobGear> gears = new ArrayList<>();
        gears.add(new KnobGear("Lo", 14.4, Range.LOW, Splitter.DIRECT, 0));
        gears.add(new KnobGear("Lo-over", 12.2, Range.LOW, Splitter.OVERDRIVE, 0));
        double[] main = {2.65, 1.91, 1.38, 1.0};
        for (int i = 0; i < 4; i++) {
            gears.add(new KnobGear((i + 1) + "", main[i] * 3.7, Range.LOW, Splitter.DIRECT, i + 1));
            gears.add(new KnobGear((i + 1) + "-over", main[i] * 3.7 * 0.85, Range.LOW, Splitter.OVERDRIVE, i + 1));
            gears.add(high((i + 5) + "", main[i], i + 1, Splitter.DIRECT));
            gears.add(high((i + 5) + "-over", main[i] * 0.85, i + 1, Splitter.OVERDRIVE));
        }
        gears.add(new KnobGear("R", 13.9, Range.LOW, Splitter.DIRECT, -1));
        return new GearTable(gears, 305, 3.55, 1800, 600, 950, 3.7, Optional.of(0.85), Optional.empty());
    }

    /** Engine speed in a gear that is held fast, in rpm. */
    public static double engineRpm(GearTable table, String gear, double kmh) {
        return kmh
                * table.outputRpmPerKmh()
                * table.gears().stream()
                        .filter(g -> g.name().equals(gear))
                        .mapToDouble(KnobGear::ratio)
                        .findFirst()
                        .orElseThrow();
    }
}
