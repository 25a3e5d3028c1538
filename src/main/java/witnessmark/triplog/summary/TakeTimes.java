package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Notes, block by block, which times a log covers, what its odometer read, and by what its rows are known again. */
public final class TakeTimes {
    private static final long LONGEST_PAUSE = 3_600_000_000L;
    /** A clock that goes on jumping makes no more spans than this; the last one then takes the rest. */
    private static final int MOST_SPANS = 50;

    private final List<TimeSpan> spans = new ArrayList<>();
    private final TakeMarks marks = new TakeMarks();
    private boolean begun;
    private long from;
    private long last;
    private double firstKm = Double.NaN;
    private double lastKm = Double.NaN;

    /** Takes the rows of the block from {@code first} until before {@code end}. */
    public void rows(RowBlock block, int first, int end) {
        for (int i = first; i < end; i++) {
            if (block.isAfresh(i)) {
                interrupted(block.timeMicros(i), i > first ? block.timeMicros(i - 1) : last);
            }
        }
        if (end > first) {
            last = block.timeMicros(end - 1);
            marks.rows(block, first, end);
            if (block.gives(Signal.DISTANCE)) {
                odometer(block.column(Signal.DISTANCE), first, end);
            }
        }
    }

    private void interrupted(long now, long before) {
        boolean parted = now < before || now - before > LONGEST_PAUSE;
        if (begun && !(parted && spans.size() < MOST_SPANS)) {
            return;
        }
        if (begun) {
            close(before);
        }
        begun = true;
        from = now;
    }

    private void close(long at) {
        spans.add(new TimeSpan(Math.min(from, at), Math.max(from, at)));
    }

    private void odometer(double[] km, int first, int end) {
        for (int i = first; Double.isNaN(firstKm) && i < end; i++) {
            firstKm = km[i];
        }
        for (int i = end - 1; i >= first; i--) {
            if (!Double.isNaN(km[i])) {
                lastKm = km[i];
                return;
            }
        }
    }

    /** What was noted; to be asked once, after the last row. */
    public RecordedTimes times() {
        if (begun) {
            close(last);
        }
        boolean readable = lastKm >= firstKm;
        return new RecordedTimes(
                spans,
                readable ? Optional.of(new RecordedTimes.Odometer(firstKm, lastKm)) : Optional.empty(),
                marks.marks());
    }
}
