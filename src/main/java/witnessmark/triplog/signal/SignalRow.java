package witnessmark.triplog.signal;

import java.util.Arrays;

/**
 * One row of a log, refilled for each line so that reading a long file makes no garbage.
 * Whoever keeps a value copies it. A signal that the row does not give is NaN.
 */
public final class SignalRow {
    private final double[] values = new double[Signal.count()];
    /** One bit for each signal that was ever given. */
    private long given;

    private long timeMicros;
    private long line;

    public SignalRow() {
        clear();
    }

    public void clear() {
        Arrays.fill(values, Double.NaN);
    }

    public double get(Signal signal) {
        return values[signal.ordinal()];
    }

    /** By ordinal; shared. */
    double[] values() {
        return values;
    }

    public double at(int ordinal) {
        return values[ordinal];
    }

    public void set(int ordinal, double value) {
        values[ordinal] = value;
        if ((given >>> ordinal & 1) == 0) {
            given |= 1L << ordinal;
        }
    }

    /** Sets a signal that was given before. */
    public void setAgain(int ordinal, double value) {
        values[ordinal] = value;
    }

    public void set(Signal signal, double value) {
        set(signal.ordinal(), value);
    }

    /** One bit for each signal that some row so far gave; the others need not be looked at. */
    public long given() {
        return given;
    }

    /** Time since 1970 if the log knows the date, else since its own zero. */
    public long timeMicros() {
        return timeMicros;
    }

    /** Line of the file, from 1, that completed the row. */
    public long line() {
        return line;
    }

    public void stamp(long timeMicros, long line) {
        this.timeMicros = timeMicros;
        this.line = line;
    }
}
