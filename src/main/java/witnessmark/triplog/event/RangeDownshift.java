package witnessmark.triplog.event;

import java.util.Comparator;
import witnessmark.triplog.gear.KnobGear;

/**
 * One shift from high to low range: whether low range was taken above its ceiling, or from an overdrive so fast that the
 * range synchronizer took more than the same shift from direct costs at the ceiling.
 */
final class RangeDownshift {
    private static final long BEFORE_MICROS = 2_000_000;

    private final Drive drive;
    private final GearRun from;
    private final GearRun after;
    private final KnobGear old;
    private final KnobGear taken;
    /** Whose ceiling counts: that of the gear taken, or where that was taken later and slower, of the tallest in low range. */
    private final KnobGear bounding;

    /** Road speed at which the range moved: from knob and lever, else the least that it can have been. */
    private final double kmh;

    /** Engine speed to which the road drove the engine before the gear had settled; 0 if it did not show. */
    private final double drivenRpm;

    private final boolean exact;
    private final boolean longPause;

    /** @param longPause whether the truck rolled on so long that its speed at the end says little */
    RangeDownshift(Drive drive, GearRun from, GearRun after, Gap gap, boolean longPause) {
        this.drive = drive;
        this.from = from;
        this.after = after;
        this.longPause = longPause;
        this.old = drive.table().gear(from.gear);
        this.taken = drive.table().gear(after.gear);
        double moved = gap.rangeToLowKmh(from.endMicros - BEFORE_MICROS, after.startMicros + BEFORE_MICROS / 2);
        this.exact = !Double.isNaN(moved);
        double least = longPause && gap.lowestKmh() < after.startKmh ? gap.lowestKmh() : after.startKmh;
        double driven = gap.drivenRpm() / (taken.ratio() * drive.perKmh());
        this.kmh = exact ? moved : Math.max(Math.max(least, gap.drivenUpKmh()), driven);
        this.drivenRpm = gap.drivenRpm();
        this.bounding = exact && isTakenBelowCeiling() ? tallestOfLowRange() : taken;
    }

    private boolean isTakenBelowCeiling() {
        return highestRpm() <= drive.table().governedRpm() && after.startKmh <= drive.ceilingKmh(taken);
    }

    private double highestRpm() {
        return Math.max(after.highestRpm, drivenRpm);
    }

    private KnobGear tallestOfLowRange() {
        return drive.table().gears().stream()
                .filter(g -> g.range() == KnobGear.Range.LOW && !g.isReverse())
                .min(Comparator.comparingDouble(KnobGear::ratio))
                .orElse(taken);
    }

    void look() {
        double over = over();
        if (over > drive.limits().ceilingMargin()) {
            aboveCeiling(over);
        }
        if (old.isOverdrive()) {
            fromOverdrive();
        }
    }

    private double over() {
        double byRoad = kmh / drive.ceilingKmh(bounding);
        double byEngine = highestRpm() / drive.table().governedRpm();
        return exact || longPause ? byRoad : (byRoad + byEngine) / 2;
    }

    private void aboveCeiling(double over) {
        double ceiling = drive.ceilingKmh(bounding);
        double sure = Math.min(from.confidence(), after.confidence()) * Math.min(1, 0.7 + 6 * (over - 1));
        found(
                EventKind.LOW_RANGE_ABOVE_CEILING,
                over * over,
                sure,
                EventFigures.of(EventFigure.CEILING_KMH, ceiling)
                        .and(EventFigure.ENERGY_MULTIPLE, over * over)
                        .and(EventFigure.RANGE_MOVED_KMH, kmh),
                Drive.words(
                        "From %s to %s, the range moved at %s%.0f km/h; the ceiling of %s is %.0f km/h. The range"
                                + " synchronizer took %s%.1f times the energy of the same shift at the ceiling; engine up"
                                + " to %.0f rpm.",
                        old.name(),
                        taken.name(),
                        atLeast(),
                        kmh,
                        bounding.name(),
                        ceiling,
                        atLeast(),
                        over * over,
                        highestRpm()));
    }

    /** Without knob and lever only the speed at which low range first showed is known; it was no less before. */
    private String atLeast() {
        return exact ? "" : "at least ";
    }

    /**
     * A slow shift down from an overdrive is driving as any other. It is an act where the slip, as a multiple of that of the
     * same shift from direct at the ceiling, goes beyond what is let pass of the ceiling itself.
     */
    private void fromOverdrive() {
        double range = drive.table().rangeStep();
        double split = drive.table().splitterRatio().orElse(1.0);
        boolean splits = old.splitter() == KnobGear.Splitter.OVERDRIVE;
        boolean returning = splits && taken.splitter() != KnobGear.Splitter.OVERDRIVE;
        double slip = returning ? (range - split) / (range - 1) : splits ? split : 1;
        double over = kmh / drive.ceilingKmh(taken);
        if (!(slip * over > drive.limits().ceilingMargin())) {
            return;
        }
        double energy = slip * slip * over * over;
        found(
                EventKind.OVERDRIVE_TO_LOW,
                energy,
                Math.min(from.confidence(), after.confidence()),
                EventFigures.of(EventFigure.SLIP_MULTIPLE, slip)
                        .and(EventFigure.ENERGY_MULTIPLE, energy)
                        .and(EventFigure.CEILING_MULTIPLE, over)
                        .and(EventFigure.SPLITTER_RETURNS, returning ? 1 : 0),
                Drive.words(
                        "From %s, an overdrive, straight to %s, the range moved at %s%.0f km/h: %.2f times the slip of the"
                                + " same shift from direct, %s%.1f times the energy of a proper one at the ceiling.",
                        old.name(), taken.name(), atLeast(), kmh, slip, atLeast(), energy));
    }

    private void found(EventKind kind, double severity, double confidence, EventFigures figures, String sentence) {
        if (confidence >= Drive.LEAST_CONFIDENCE) {
            drive.found().accept(drive.shift(kind, from, after, severity, confidence, figures, sentence));
        }
    }
}
