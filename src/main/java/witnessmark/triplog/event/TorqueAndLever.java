package witnessmark.triplog.event;

import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * Knows since when the engine has pulled without a break, and when the lever last moved. A lever shift needs both a
 * break in torque and a move of the lever; a ratio that changes without them is no lever shift but a clutch that slips.
 */
final class TorqueAndLever {
    private static final double PULLING_PERCENT = 25;
    private static final double WELL_BEFORE_SECONDS = 0.5;
    private static final double CHANGE_SECONDS = 0.5;
    private static final double LEVER_SECONDS = 2;
    /** Between rows farther apart the torque may have been off unseen; a shift takes it off for longer. */
    private static final double SURE_SECONDS = 0.56;

    private static final double HELD_SECONDS = 1;

    private long lastBreak = Long.MIN_VALUE / 2;
    private long lastPress = Long.MIN_VALUE / 2;
    private long leverMoved;
    private double lever = Double.NaN;

    /** To be asked for every row, in steady driving too. */
    void watch(Moment m) {
        boolean apart = m.seconds() == 0 || m.seconds() > SURE_SECONDS;
        if (apart || m.isPedalPressed()) {
            lastPress = m.micros();
        }
        if (apart || !(m.load() >= PULLING_PERCENT) || m.isPedalPressed()) {
            lastBreak = m.micros();
        }
        double now = m.get(Signal.LEVER);
        if (apart || !(now == lever)) {
            leverMoved = m.micros();
            lever = now;
        }
    }

    /** The same for the rows of a steady stretch, pedal up throughout. */
    void watch(RowBlock block, int from, int to, Trust trust) {
        double[] seconds = block.secondsBefore();
        double[] torque = block.column(Signal.ENGINE_TORQUE);
        double[] accelerator = block.column(Signal.ACCELERATOR);
        double[] levers = trust.changes(Signal.LEVER) ? block.column(Signal.LEVER) : block.absent();
        int pressed = -1;
        int broken = -1;
        int moved = -1;
        double now = lever;
        for (int i = from; i < to; i++) {
            boolean apart = seconds[i] > SURE_SECONDS;
            if (apart) {
                pressed = i;
            }
            if (apart || !(Moment.load(torque[i], accelerator[i]) >= PULLING_PERCENT)) {
                broken = i;
            }
            if (apart || !(levers[i] == now)) {
                moved = i;
                now = levers[i];
            }
        }
        lever = now;
        lastPress = pressed < 0 ? lastPress : block.timeMicros(pressed);
        lastBreak = broken < 0 ? lastBreak : block.timeMicros(broken);
        leverMoved = moved < 0 ? leverMoved : block.timeMicros(moved);
    }

    /** Whether torque was on, pedal up, from well before this time until now, with rows close enough to know. */
    boolean isUnbrokenSince(long micros) {
        return isUnbrokenFrom(micros - (long) (WELL_BEFORE_SECONDS * 1e6));
    }

    /** The same from the change on that followed this time; a lever would have needed a moment without torque there. */
    boolean isUnbrokenAfter(long micros) {
        return isUnbrokenFrom(micros + (long) (CHANGE_SECONDS * 1e6));
    }

    /** The same from the very moment on. */
    boolean isUnbrokenFrom(long micros) {
        return lastBreak < micros;
    }

    private boolean isLeverStillSince(long micros) {
        long before = micros - (long) (LEVER_SECONDS * 1e6);
        return leverMoved < before && lastPress < before;
    }

    /**
     * Whether the change to the run now settled cannot be the lever shift that its ratio looks like, but only a clutch
     * that lets the engine run ahead.
     */
    boolean excludesLeverShift(GearTable table, GearRun from, GearRun after) {
        KnobGear old = table.gear(from.gear);
        KnobGear taken = table.gear(after.gear);
        boolean lever = old.lever() != taken.lever() || old.range() != taken.range();
        boolean ahead = taken.ratio() > old.ratio() && old.ratio() > (1 - SlipEvents.MOST_SLIP) * taken.ratio();
        boolean held = from.seconds() > HELD_SECONDS && !old.isReverse() && !taken.isReverse();
        return lever && ahead && held && (isUnbrokenAfter(from.endMicros) || isLeverStillSince(from.endMicros));
    }
}
