package witnessmark.triplog.read;

import witnessmark.triplog.signal.SignalRow;

/** Watches the time of each row, and says which rows to leave out and before which ones the record is interrupted. */
public final class TimeLine {
    private static final long SMALL_STEP_BACK = 2_000_000;
    private static final long SHORTEST_GAP = 2_000_000;
    private static final long DAY = 86_400_000_000L;
    private static final double LONGEST_HABIT = 60_000_000;

    /** What to do with a row. */
    public enum Step {
        GO_ON,
        LEAVE_OUT,
        START_AFRESH
    }

    private boolean begun;
    private long last;
    /** Running median of the time between rows: moved by a twentieth towards each new one. */
    private double habit;

    private long duplicates;
    private long backward;
    private long setBack;
    private long gaps;
    private long gapMicros;
    private long jumpsAhead;

    public Step next(SignalRow row) {
        long step = row.timeMicros() - last;
        if (!begun) {
            begun = true;
            last = row.timeMicros();
            return Step.START_AFRESH;
        }
        if (step <= 0) {
            return backOrSame(row, step);
        }
        last = row.timeMicros();
        boolean gap = step > SHORTEST_GAP && habit > 0 && step > 3 * habit;
        learn(step);
        if (!gap) {
            return Step.GO_ON;
        }
        if (step > DAY) {
            jumpsAhead++;
        } else {
            gaps++;
            gapMicros += step;
        }
        return Step.START_AFRESH;
    }

    private Step backOrSame(SignalRow row, long step) {
        if (step == 0) {
            duplicates++;
            return Step.LEAVE_OUT;
        }
        if (-step <= SMALL_STEP_BACK) {
            backward++;
            return Step.LEAVE_OUT;
        }
        setBack++;
        last = row.timeMicros();
        return Step.START_AFRESH;
    }

    private void learn(long step) {
        double moved = habit == 0 ? step : habit * (step > habit ? 1.05 : 1 / 1.05);
        habit = moved > LONGEST_HABIT ? LONGEST_HABIT : moved;
    }

    /** The usual time between rows; 0 before the second row. */
    public double habitSeconds() {
        return habit / 1e6;
    }

    public ClockFaults faults() {
        return new ClockFaults(duplicates, backward, setBack, gaps, gapMicros / 1e6, jumpsAhead);
    }
}
