package witnessmark.triplog.event;

import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.Signal;

/** Looks at each change from one settled gear to another on the move. */
final class ShiftEvents implements Detector {
    /** Over a longer pause in neutral other things may have happened than a shift. */
    private static final double LONGEST_PAUSE_SECONDS = 60;

    /** After a longer pause the presses of the clutch are no longer those of one shift. */
    private static final double LONGEST_SHIFT_SECONDS = 20;

    /** Over a longer pause the speed at its end says little of the speed at which the range moved. */
    private static final double SHORT_SECONDS = 5;

    private static final double BEFORE_SECONDS = 1.5;
    private static final long ABOUT_MICROS = 1_000_000;
    private static final double AFTER_SECONDS = 0.6;
    private static final double WELL_MATCHED_RPM = 60;
    /** Under walking pace a range shift does no harm and the ratio shows little. */
    private static final double LEAST_KMH = 5;

    private final Drive drive;
    private final Presses presses;
    private final TorqueAndLever pull;
    private @Nullable GearRun before;
    private long lastStanding = Long.MIN_VALUE;
    private final Gap gap;
    private final UncertainShifts uncertain;
    /** A shift with fewer than two presses, until its gear has stayed in hand. */
    private @Nullable FewPresses waiting;

    private double slowestHertzSeconds;
    private boolean pedalKnown;
    private long shifts;
    private long leverShifts;
    private long rangeShifts;

    private record FewPresses(GearRun after, int pressed, HabitEvent event) {}

    ShiftEvents(Drive drive, Presses presses, TorqueAndLever pull) {
        this.gap = new Gap(drive.table().governedRpm(), drive.limits().overspeedMargin());
        this.drive = drive;
        this.pull = pull;
        this.presses = presses;
        this.uncertain = new UncertainShifts(drive);
    }

    @Override
    public void row(Moment m) {
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
            decide();
        } else if (waiting != null && waiting.after().isHeld()) {
            decide();
        }
        slowestHertzSeconds = m.seconds();
        pedalKnown = m.isPedalKnown();
        uncertain.row(m);
        if (before != null && m.inHand() == before.gear) {
            gap.inGear(m);
        } else {
            gap.between(m);
        }
        gap.followRange(m.get(Signal.RANGE_KNOB), m.leverPosition(), m);
    }

    @Override
    public boolean isOpen() {
        return waiting != null;
    }

    @Override
    public void interrupted() {
        decide();
        before = null;
        gap.forget();
        uncertain.interrupted();
    }

    /** Decides on what only the whole log tells; to be called once, after the last row. */
    void end() {
        uncertain.end();
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
        decide();
        if (from == null || from.gear == after.gear || lastStanding > from.endMicros) {
            return;
        }
        shifts++;
        double pause = (after.startMicros - from.endMicros) / 1e6;
        KnobGear old = drive.table().gear(from.gear);
        KnobGear taken = drive.table().gear(after.gear);
        boolean lever = old.lever() != taken.lever() || old.range() != taken.range();
        leverShifts += lever ? 1 : 0;
        rangeShifts += old.range() != taken.range() ? 1 : 0;
        double longest = 2.5 * slowestHertzSeconds;
        if (pause > Math.max(LONGEST_PAUSE_SECONDS, longest) || !(after.startKmh >= LEAST_KMH)) {
            return;
        }
        if (old.range() == KnobGear.Range.HIGH && taken.range() == KnobGear.Range.LOW) {
            drive.chances().count(EventKind.Chance.RANGE_DOWNSHIFT);
            new RangeDownshift(drive, from, after, gap, pause > Math.max(SHORT_SECONDS, longest)).look();
        }
        if (lever && pedalKnown && pause <= LONGEST_SHIFT_SECONDS && !pull.isUnbrokenSince(from.endMicros)) {
            clutchUse(from, after, old, taken);
        }
    }

    /** A start from rest with the pedal up: the clutch signal had stopped telling anything. */
    void startedWithoutPedal() {
        uncertain.drop();
    }

    private void clutchUse(GearRun from, GearRun after, KnobGear old, KnobGear taken) {
        // A press when the old gear had just come belongs to the shift into it.
        long begin = Math.max(
                from.endMicros - (long) (BEFORE_SECONDS * 1e6),
                Math.min(from.startMicros + (long) (AFTER_SECONDS * 1e6), from.endMicros - ABOUT_MICROS));
        // The ratio may sweep past the gear before the second press; one until it has settled belongs to the shift.
        long settled = Math.min(after.endMicros, after.startMicros + ABOUT_MICROS);
        long end = Math.max(after.startMicros + (long) (AFTER_SECONDS * 1e6), settled);
        int pressed = presses.between(begin, end);
        if (presses.maybeMissed(begin, end)) {
            return;
        }
        if (pressed >= 2 || old.isReverse() || taken.isReverse()) {
            if (pressed > 0) {
                pressed();
            }
            return;
        }
        double mismatch = Math.abs(after.startRpm - drive.engineRpm(taken, after.startKmh));
        EventKind kind = pressed == 0 ? EventKind.SHIFT_WITHOUT_CLUTCH : EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH;
        double confidence = 0.9 * Math.min(from.confidence(), after.confidence());
        String sentence = Drive.words(
                "From %s to %s at %.0f km/h with %s; engine speed %.0f rpm off the matching one when the gear"
                        + " first showed. %s",
                old.name(),
                taken.name(),
                after.startKmh,
                pressed == 0 ? "no press of the clutch" : "a single press of the clutch",
                mismatch,
                mismatch < WELL_MATCHED_RPM
                        ? "A shift matched so well leaves no mark."
                        : "A well-matched shift would leave no mark; this one may have.");
        HabitEvent event = drive.shift(
                kind,
                from,
                after,
                mismatch / 300,
                confidence,
                EventFigures.of(EventFigure.MISMATCH_RPM, mismatch),
                sentence);
        waiting = new FewPresses(after, pressed, event);
    }

    private void pressed() {
        drive.chances().count(EventKind.Chance.LEVER_SHIFT);
        uncertain.pressed();
    }

    /** Counts the shift that waits if its gear stayed in hand; else the lever may have been in neutral all the while. */
    private void decide() {
        FewPresses shift = waiting;
        waiting = null;
        if (shift == null || !shift.after().isHeld()) {
            return;
        }
        boolean sure = shift.event().confidence() >= Drive.LEAST_CONFIDENCE;
        if (shift.pressed() == 0) {
            uncertain.add(shift.event(), sure);
            return;
        }
        pressed();
        if (sure) {
            drive.found().accept(shift.event());
        }
    }
}
