package witnessmark.triplog.event;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * A change of the splitter alone, with the engine pulling all through it and the pedal up. Engine torque decides where
 * the log has it; an engine that takes its own torque off looks the same by the accelerator.
 */
final class SplitEvents implements Detector {
    private static final double PULLING_PERCENT = 20;
    /** Foot off: what torque is still shown may be on its way down. */
    private static final double LIFTED_PERCENT = 5;

    private static final double COMING_DOWN_PERCENT = 40;
    private static final double BEFORE_SECONDS = 0.8;
    private static final double AFTER_SECONDS = 0.15;
    private static final double LONGEST_SECONDS = 5;
    private static final double LEAST_CONFIDENCE = 0.6;
    private static final int KEPT = 64;

    private final Drive drive;
    private final LastGears gears;
    private final boolean hasSplitter;
    /** When the torque was last off, or the pedal down. */
    private final long[] breaks = new long[KEPT];

    private int count;
    private boolean torqueKnown;
    private boolean loadKnown;
    private @Nullable HabitEvent undecided;
    private long lastStanding = Long.MIN_VALUE;

    SplitEvents(Drive drive, LastGears gears) {
        this.drive = drive;
        this.gears = gears;
        this.hasSplitter = drive.table().splitterRatio().isPresent();
    }

    /** Of a steady stretch, the first row from which a break in torque would still count; {@code to} if none would. */
    int firstToSee(RowBlock block, int from, int to) {
        int first = to;
        long end = block.timeMicros(to - 1);
        while (hasSplitter && first > from && end - block.timeMicros(first - 1) <= BEFORE_SECONDS * 1e6) {
            first--;
        }
        return first;
    }

    /** Notes a break in torque. */
    @Override
    public void row(Moment m) {
        if (!hasSplitter) {
            return;
        }
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
        }
        double torque = m.get(Signal.ENGINE_TORQUE);
        torqueKnown = !Double.isNaN(torque);
        double pedal = m.get(Signal.ACCELERATOR);
        double load = torqueKnown ? torque : pedal;
        loadKnown = !Double.isNaN(load) && m.isPedalKnown();
        boolean lifted = torqueKnown && pedal < LIFTED_PERCENT && torque < COMING_DOWN_PERCENT;
        // At governed speed the governor takes the torque off, whatever the foot does.
        boolean governed = !torqueKnown && m.rpm() >= drive.table().governedRpm();
        if (!(load >= PULLING_PERCENT) || lifted || governed || m.isPedalPressed()) {
            breaks[count++ % KEPT] = m.micros();
        }
    }

    /** Each row counts of what may be slip. */
    @Override
    public boolean isOpen() {
        return undecided != null;
    }

    @Override
    public void interrupted() {
        decide();
        count = 0;
        lastStanding = Long.MIN_VALUE;
    }

    /** To be called after the run has become the current one. */
    void settled(GearRun after) {
        decide();
        GearRun from = gears.previous;
        if (!hasSplitter || !loadKnown || from == null || lastStanding > from.endMicros) {
            return;
        }
        KnobGear old = drive.table().gear(from.gear);
        KnobGear taken = drive.table().gear(after.gear);
        double pause = (after.startMicros - from.endMicros) / 1e6;
        boolean splitOnly = old.lever() == taken.lever()
                && old.range() == taken.range()
                && old.splitter() != taken.splitter()
                && !old.isReverse();
        if (!splitOnly || pause > LONGEST_SECONDS) {
            return;
        }
        drive.chances().count(EventKind.Chance.SPLIT);
        double sure = (torqueKnown ? 0.9 : 0.8) * Math.min(from.confidence(), after.confidence());
        if (isBroken(from, after) || sure < LEAST_CONFIDENCE || gears.slipBetween(drive.table()) != null) {
            return;
        }
        HabitEvent event = event(from, after, old, taken, sure);
        if (taken.ratio() > old.ratio()) {
            // Clutch slip looks the same until it is known whether the gear stays.
            undecided = event;
        } else {
            drive.found().accept(event);
        }
    }

    /** A split down that did not come back by itself was one. */
    private void decide() {
        HabitEvent event = undecided;
        undecided = null;
        if (event != null && gears.slipBetween(drive.table()) == null) {
            drive.found().accept(event);
        }
    }

    private boolean isBroken(GearRun from, GearRun after) {
        long begin = from.endMicros - (long) (BEFORE_SECONDS * 1e6);
        long end = after.startMicros + (long) (AFTER_SECONDS * 1e6);
        for (int i = 0; i < Math.min(count, KEPT); i++) {
            if (breaks[i] >= begin && breaks[i] <= end) {
                return true;
            }
        }
        return false;
    }

    private HabitEvent event(GearRun from, GearRun after, KnobGear old, KnobGear taken, double sure) {
        double step = Math.abs(1 - Math.min(old.ratio(), taken.ratio()) / Math.max(old.ratio(), taken.ratio()));
        double dogRpm = step * after.startKmh * drive.perKmh();
        return HabitEvent.of(
                EventKind.SPLIT_UNDER_TORQUE,
                new HabitEvent.Stretch(
                        from.endMicros,
                        (after.startMicros - from.endMicros) / 1e6,
                        from.lastLine,
                        after.lastLine,
                        after.startKmh,
                        after.highestRpm),
                new HabitEvent.Gears(Optional.of(old.name()), Optional.of(taken.name())),
                dogRpm / 200,
                sure,
                EventFigures.of(EventFigure.DOG_SPEED_DIFFERENCE_RPM, dogRpm),
                Drive.words(
                        "Split from %s to %s at %.0f km/h with the engine pulling all through it, pedal up; the dogs"
                                + " met about %.0f rpm apart. %s",
                        old.name(),
                        taken.name(),
                        after.startKmh,
                        dogRpm,
                        torqueKnown
                                ? "By engine torque."
                                : "By the accelerator: an engine that takes its own torque off looks the same."));
    }
}
