package witnessmark.triplog.gear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The truck's numbers that the reading of a log needs.
 *
 * @param gears all ratios, reverse too, at most 60; kept sorted from the shortest (highest ratio) to the tallest
 * @param revsPerKm tyre revolutions per kilometre
 * @param axleRatio of the drive axle
 * @param governedRpm highest engine speed the governor allows under load
 * @param idleRpm engine speed at idle
 * @param lowestPullingRpm below it the engine is not asked to pull
 * @param rangeStep ratio of low range to high range, 1 without a range
 * @param splitterRatio ratio of the split position (below 1 for an overdrive), empty without a splitter
 * @param highestStartGear tallest gear for a start from rest, loaded and empty; empty where only the trade's rule is known
 */
public record GearTable(
        List<KnobGear> gears,
        double revsPerKm,
        double axleRatio,
        double governedRpm,
        double idleRpm,
        double lowestPullingRpm,
        double rangeStep,
        Optional<Double> splitterRatio,
        Optional<StartGears> highestStartGear) {

    /** Names of the tallest gears for a start from rest. */
    public record StartGears(String loaded, String empty) {}

    private static final int MOST_GEARS = 60;

    /** @throws IllegalArgumentException with every fault, one line each */
    public GearTable {
        List<String> faults = new ArrayList<>();
        gears = gears.stream()
                .sorted(Comparator.comparingDouble(KnobGear::ratio).reversed())
                .toList();
        if (gears.isEmpty() || gears.size() > MOST_GEARS) {
            faults.add("gears: " + gears.size() + " ratios given; 1 to " + MOST_GEARS + " are needed");
        }
        range(faults, "tyre revolutions per km", revsPerKm, 50, 2000);
        range(faults, "axle ratio", axleRatio, 0.5, 30);
        range(faults, "governed speed in rpm", governedRpm, 500, 8000);
        range(faults, "idle speed in rpm", idleRpm, 200, 2000);
        range(faults, "lowest pulling speed in rpm", lowestPullingRpm, 200, 5000);
        range(faults, "range step", rangeStep, 1, 20);
        if (idleRpm >= governedRpm || lowestPullingRpm >= governedRpm) {
            faults.add("idle and lowest pulling speed must lie below governed speed");
        }
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join(System.lineSeparator(), faults));
        }
    }

    private static void range(List<String> faults, String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            faults.add(what + ": " + value + " is not between " + low + " and " + high);
        }
    }

    public KnobGear gear(int index) {
        return gears.get(index);
    }

    /** Index of the next forward gear with a higher ratio, or -1. */
    public int shorter(int index) {
        int at = index - 1;
        while (at >= 0 && gears.get(at).isReverse()) {
            at--;
        }
        return at;
    }

    /** Index of the next forward gear with a lower ratio, or -1. */
    public int taller(int index) {
        int at = index + 1;
        while (at < gears.size() && gears.get(at).isReverse()) {
            at++;
        }
        return at < gears.size() ? at : -1;
    }

    /** Output shaft turns per minute for each km/h of road speed. */
    public double outputRpmPerKmh() {
        return revsPerKm * axleRatio / 60;
    }

    /** Road speed in km/h at which the engine would turn at governed speed in this gear. */
    public double ceilingKmh(KnobGear gear) {
        return governedRpm / (gear.ratio() * outputRpmPerKmh());
    }

    public boolean hasRange() {
        return gears.stream().anyMatch(g -> g.range() == KnobGear.Range.LOW)
                && gears.stream().anyMatch(g -> g.range() == KnobGear.Range.HIGH);
    }

    /** Whether it has an overdrive, by the splitter or by the lever. */
    public boolean hasOverdrive() {
        return gears.stream().anyMatch(KnobGear::isOverdrive);
    }

    public boolean hasOverdriveSplit() {
        return gears.stream().anyMatch(g -> g.splitter() == KnobGear.Splitter.OVERDRIVE);
    }

    /** Highest road speed at which any gear of low range may be taken; empty without a range. */
    public Optional<Double> lowRangeCeilingKmh() {
        return gears.stream()
                .filter(g -> hasRange() && g.range() == KnobGear.Range.LOW && !g.isReverse())
                .map(this::ceilingKmh)
                .max(Comparator.naturalOrder());
    }

    /** Ratio of the front section in this gear. */
    public double mainRatio(KnobGear gear) {
        double split = gear.splitter() == KnobGear.Splitter.OVERDRIVE || gear.splitter() == KnobGear.Splitter.UNDERDRIVE
                ? splitterRatio.orElse(1.0)
                : 1;
        return gear.ratio() / split / (gear.range() == KnobGear.Range.LOW ? rangeStep : 1);
    }
}
