package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.InHand;

/** Looks at each change from one settled gear to another on the move. */
final class ShiftEvents implements Detector {
    /** A longer pause in neutral is no shift: the range or splitter may have been moved properly in between. */
    private static final double LONGEST_SHIFT_SECONDS = 5;

    private static final double BEFORE_SECONDS = 1.5;
    private static final long ABOUT_MICROS = 1_000_000;
    private static final double AFTER_SECONDS = 0.6;
    private static final double LEAST_CONFIDENCE = 0.6;
    private static final double WELL_MATCHED_RPM = 60;
    /** Under walking pace a range shift does no harm and the ratio shows little. */
    private static final double LEAST_KMH = 5;

    private final Drive drive;
    private final Presses presses;
    private final Pull pull;
    private @Nullable GearRun before;
    private long lastStanding = Long.MIN_VALUE;
    private double slowestHertzSeconds;
    private boolean pedalKnown;
    private long shifts;
    private long leverShifts;
    private long rangeShifts;

    ShiftEvents(Drive drive, Presses presses, Pull pull) {
        this.drive = drive;
        this.pull = pull;
        this.presses = presses;
    }

    @Override
    public void row(Moment m) {
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
        }
        slowestHertzSeconds = m.seconds();
        pedalKnown = m.isPedalKnown();
    }

    @Override
    public void interrupted() {
        before = null;
    }

    long shifts() {
        return shifts;
    }

    long leverShifts() {
        return leverShifts;
    }

    long rangeShifts() {
        return rangeShifts;
    }

    void settled(GearRun after) {
        GearRun from = before;
        before = after;
        if (from == null || from.gear == after.gear || lastStanding > from.endMicros) {
            return;
        }
        shifts++;
        double pause = (after.startMicros - from.endMicros) / 1e6;
        Gear old = drive.table().gear(from.gear);
        Gear taken = drive.table().gear(after.gear);
        boolean lever = old.lever() != taken.lever() || old.range() != taken.range();
        leverShifts += lever ? 1 : 0;
        rangeShifts += old.range() != taken.range() ? 1 : 0;
        if (pause > Math.max(LONGEST_SHIFT_SECONDS, 2.5 * slowestHertzSeconds) || after.startKmh < LEAST_KMH) {
            return;
        }
        if (old.range() == Gear.Range.HIGH && taken.range() == Gear.Range.LOW) {
            drive.chances().count(EventKind.Chance.RANGE_DOWNSHIFT);
            lowRange(from, after, old, taken);
            overdriveToLow(from, after, old, taken);
        }
        if (lever && pedalKnown && !pull.isUnbrokenSince(from.endMicros)) {
            drive.chances().count(EventKind.Chance.LEVER_SHIFT);
            clutchUse(from, after, old, taken);
        }
    }

    private void lowRange(GearRun from, GearRun after, Gear old, Gear taken) {
        double ceiling = drive.ceilingKmh(taken);
        double governed = drive.table().governedRpm();
        double over = (after.startKmh / ceiling + after.highestRpm / governed) / 2;
        if (over <= drive.limits().ceilingMargin()) {
            return;
        }
        double sure = Math.min(from.confidence(), after.confidence()) * Math.min(1, 0.7 + 6 * (over - 1));
        found(
                EventKind.LOW_RANGE_ABOVE_CEILING,
                from,
                after,
                over * over,
                sure,
                Drive.words(
                        "From %s to %s at %.0f km/h; the ceiling of %s is %.0f km/h. The range synchronizer took %.1f times"
                                + " the energy of the same shift at the ceiling; engine up to %.0f rpm.",
                        old.name(), taken.name(), after.startKmh, taken.name(), ceiling, over * over, after.highestRpm),
                "ceiling-km-h",
                ceiling,
                "energy-multiple",
                over * over);
    }

    private void overdriveToLow(GearRun from, GearRun after, Gear old, Gear taken) {
        if (old.splitter() != Gear.Splitter.OVERDRIVE) {
            return;
        }
        double range = drive.table().rangeStep();
        double split = drive.table().splitterRatio().orElse(1.0);
        boolean returning = taken.splitter() != Gear.Splitter.OVERDRIVE;
        double slip = returning ? (range - split) / (range - 1) : split;
        double over = after.startKmh / drive.ceilingKmh(taken);
        double energy = slip * slip * over * over;
        found(
                EventKind.OVERDRIVE_TO_LOW,
                from,
                after,
                energy,
                Math.min(from.confidence(), after.confidence()),
                Drive.words(
                        "From %s, an overdrive, straight to %s at %.0f km/h: %.2f times the slip of the same shift from"
                                + " direct, %.1f times the energy of a proper one at the ceiling.",
                        old.name(), taken.name(), after.startKmh, slip, energy),
                "slip-multiple",
                slip,
                "energy-multiple",
                energy);
    }

    private void clutchUse(GearRun from, GearRun after, Gear old, Gear taken) {
        // A press when the old gear had just come belongs to the shift into it.
        long begin = Math.max(
                from.endMicros - (long) (BEFORE_SECONDS * 1e6),
                Math.min(from.startMicros + (long) (AFTER_SECONDS * 1e6), from.endMicros - ABOUT_MICROS));
        // The ratio may sweep past the gear before the second press; one until it has settled belongs to the shift.
        long settled = Math.min(after.endMicros, after.startMicros + ABOUT_MICROS);
        long end = Math.max(after.startMicros + (long) (AFTER_SECONDS * 1e6), settled);
        int pressed = presses.between(begin, end);
        if (pressed >= 2 || presses.maybeMissed(begin, end) || old.isReverse() || taken.isReverse()) {
            return;
        }
        double mismatch = Math.abs(after.startRpm - drive.engineRpm(taken, after.startKmh));
        EventKind kind = pressed == 0 ? EventKind.SHIFT_WITHOUT_CLUTCH : EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH;
        found(
                kind,
                from,
                after,
                mismatch / 300,
                0.9 * Math.min(from.confidence(), after.confidence()),
                Drive.words(
                        "From %s to %s at %.0f km/h with %s; engine speed %.0f rpm off the matching one when the gear"
                                + " first showed. %s",
                        old.name(),
                        taken.name(),
                        after.startKmh,
                        pressed == 0 ? "no press of the clutch" : "a single press of the clutch",
                        mismatch,
                        mismatch < WELL_MATCHED_RPM
                                ? "A shift matched so well leaves no mark."
                                : "A well-matched shift would leave no mark; this one may have."),
                "mismatch-rpm",
                mismatch);
    }

    private void found(
            EventKind kind,
            GearRun from,
            GearRun after,
            double severity,
            double confidence,
            String sentence,
            Object... figures) {
        if (confidence < LEAST_CONFIDENCE) {
            return;
        }
        drive.found()
                .accept(new HabitEvent(
                        kind,
                        from.endMicros,
                        (after.startMicros - from.endMicros) / 1e6,
                        from.lastLine,
                        after.lastLine,
                        after.startKmh,
                        after.highestRpm,
                        Optional.of(drive.table().gear(from.gear).name()),
                        Optional.of(drive.table().gear(after.gear).name()),
                        severity,
                        confidence,
                        Drive.figures(figures),
                        sentence));
    }
}
