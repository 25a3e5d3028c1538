package witnessmark.triplog.road;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;

/** A whole drive, made up at random by its number: which truck, which acts, which near misses, in which order. */
final class RoadTrip {
    private RoadTrip() {}

    /** Five lever positions in each range, the last of them an overdrive: 10 forward ratios. */
    static GearTable leverOverdrive() {
        List<KnobGear> gears = new ArrayList<>();
        double[] main = {2.43, 1.81, 1.35, 1.00, 0.745};
        for (int i = 0; i < main.length; i++) {
            gears.add(new KnobGear("" + (i + 1), main[i] * 4.4, KnobGear.Range.LOW, KnobGear.Splitter.NONE, i + 1));
            gears.add(new KnobGear("" + (i + 6), main[i], KnobGear.Range.HIGH, KnobGear.Splitter.NONE, i + 1));
        }
        gears.add(new KnobGear("R", 10.9, KnobGear.Range.LOW, KnobGear.Splitter.NONE, -1));
        return new GearTable(gears, 315, 4.1, 1900, 620, 1050, 4.4, Optional.empty(), Optional.empty());
    }

    static GearTable table(long seed) {
        return switch ((int) Math.floorMod(seed / 2, 4L)) {
            case 0 -> InventedTrucks.ten();
            case 1 -> InventedTrucks.thirteen();
            case 2 -> InventedTrucks.eighteen();
            default -> leverOverdrive();
        };
    }

    private static RoadDriver driver(long seed) {
        var random = new java.util.Random(seed * 77 + 5);
        double mass = 12_000 + 24_000 * random.nextDouble();
        double peak = 1500 + 700 * random.nextDouble();
        RoadTruck truck = new RoadTruck(table(seed), mass, peak, 0.97 + 0.06 * random.nextDouble());
        return new RoadDriver(truck, seed);
    }

    /** A driver who has not moved yet. */
    static RoadDriver plain(long seed) {
        return driver(seed);
    }

    /** A drive with most of the habits and some near misses. */
    static RoadDriver habits(long seed) {
        RoadDriver driver = driver(seed);
        RoadHabits habits = new RoadHabits(driver);
        RoadNearMisses misses = new RoadNearMisses(driver);
        List<Runnable> parts = new ArrayList<>();
        for (Consumer<RoadHabits> act : habits.all()) {
            parts.add(() -> act.accept(habits));
        }
        for (Consumer<RoadNearMisses> act : misses.all()) {
            parts.add(() -> act.accept(misses));
        }
        run(driver, parts);
        return driver;
    }

    /** A drive without any habit, but with every near miss. */
    static RoadDriver clean(long seed) {
        RoadDriver driver = driver(seed);
        RoadNearMisses misses = new RoadNearMisses(driver);
        List<Runnable> parts = new ArrayList<>();
        for (int round = 0; round < 2; round++) {
            for (Consumer<RoadNearMisses> act : misses.all()) {
                parts.add(() -> act.accept(misses));
            }
        }
        run(driver, parts);
        return driver;
    }

    private static void run(RoadDriver driver, List<Runnable> parts) {
        Collections.shuffle(parts, driver.random);
        driver.stand(8);
        parts.forEach(Runnable::run);
        driver.stand(5);
        RoadLabels.add(driver);
    }
}
