package witnessmark.triplog.signal;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Some thousand rows by column: the working memory of the analysis, filled, worked through, and filled again. */
public final class RowBlock {
    /** One column for each signal; those never given share the column {@link #absent}, which costs nothing. */
    private final double[][] columns = new double[Signal.count()][];

    private final double[] absent;
    /** Ordinals of the signals that were ever given. */
    private int[] given = {};

    /** Their columns. */
    private double[][] filled = {};

    private long givenBits;

    private final long[] timeMicros;
    private final long[] line;
    private final boolean[] afresh;
    private final double[] secondsBefore;
    private int size;

    public RowBlock(int capacity) {
        absent = new double[capacity];
        Arrays.fill(absent, Double.NaN);
        Arrays.fill(columns, absent);
        timeMicros = new long[capacity];
        line = new long[capacity];
        afresh = new boolean[capacity];
        secondsBefore = new double[capacity];
    }

    /**
     * Takes a copy of the row.
     *
     * @param isAfresh whether the record was interrupted before it
     * @param seconds since the row before it, 0 where it is afresh
     */
    public void add(SignalRow row, boolean isAfresh, double seconds) {
        if (row.given() != givenBits) {
            give(row.given());
        }
        int at = size++;
        int[] signals = given;
        double[][] to = filled;
        double[] values = row.values();
        for (int i = 0; i < signals.length; i++) {
            to[i][at] = values[signals[i]];
        }
        timeMicros[at] = row.timeMicros();
        line[at] = row.line();
        afresh[at] = isAfresh;
        secondsBefore[at] = seconds;
    }

    /** Takes a copy of the rows of the other block from {@code from} on, which must find room. */
    public void add(RowBlock other, int from) {
        int count = other.size - from;
        if ((other.givenBits | givenBits) != givenBits) {
            give(other.givenBits);
        }
        for (int s : given) {
            System.arraycopy(other.columns[s], from, columns[s], size, count);
        }
        System.arraycopy(other.timeMicros, from, timeMicros, size, count);
        System.arraycopy(other.line, from, line, size, count);
        System.arraycopy(other.afresh, from, afresh, size, count);
        System.arraycopy(other.secondsBefore, from, secondsBefore, size, count);
        size += count;
    }

    private void give(long signals) {
        givenBits |= signals;
        given = IntStream.range(0, Signal.count())
                .filter(s -> (givenBits >>> s & 1) != 0)
                .toArray();
        for (int s : given) {
            if (columns[s] == absent) {
                columns[s] = absent.clone();
            }
        }
        filled = Arrays.stream(given).mapToObj(s -> columns[s]).toArray(double[][]::new);
    }

    public boolean isFull() {
        return size == timeMicros.length;
    }

    public int size() {
        return size;
    }

    /** Drops all rows. */
    public void clear() {
        size = 0;
    }

    /**
     * The whole column of a signal, NaN where a row does not give it; only the first {@link #size} entries count, and
     * only until the next row is added.
     */
    public double[] column(Signal signal) {
        return columns[signal.ordinal()];
    }

    /** Whether any row so far gave the signal; its column is all NaN if none did. */
    public boolean gives(Signal signal) {
        return columns[signal.ordinal()] != absent;
    }

    /** The column of signals that are never given: all NaN. */
    public double[] absent() {
        return absent;
    }

    public double get(Signal signal, int row) {
        return columns[signal.ordinal()][row];
    }

    public long timeMicros(int row) {
        return timeMicros[row];
    }

    public long line(int row) {
        return line[row];
    }

    /** Whether the record was interrupted before this row: nothing is carried over from the row before. */
    public boolean isAfresh(int row) {
        return afresh[row];
    }

    /** Seconds since the row before, 0 where the record was interrupted or begins. */
    public double secondsBefore(int row) {
        return secondsBefore[row];
    }

    /** {@link #secondsBefore(int)} as a column. */
    public double[] secondsBefore() {
        return secondsBefore;
    }

    /** {@link #timeMicros(int)} as a column. */
    public long[] timeMicros() {
        return timeMicros;
    }
}
