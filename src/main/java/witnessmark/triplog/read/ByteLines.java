package witnessmark.triplog.read;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.function.BooleanSupplier;
import java.util.zip.ZipException;

/**
 * Lines of a stream as stretches of one byte buffer: no string and no copy per line.
 * A line longer than {@link #LONGEST_LINE} is skipped and counted, so memory stays bounded.
 */
final class ByteLines implements Closeable {
    static final int LONGEST_LINE = 16_384;

    /** Slack behind the buffer lets reads of a word or two run past the last line. */
    private static final int SLACK = 16;

    private static final VarHandle WORD = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ONES = 0x0101010101010101L;
    private static final long NEWLINES = 0x0A0A0A0A0A0A0A0AL;

    final byte[] buffer = new byte[(1 << 18) + SLACK];
    /** First byte of the present line. */
    int start;
    /** One past its last byte, line end characters left out. */
    int end;
    /** Number of the present line in the file, from 1. */
    long line;

    /** By how much the number goes on from line to line. */
    private int step = 1;

    private final InputStream in;
    private final BrokenLines broken;
    private final BooleanSupplier goOn;
    private int next;
    private int limit;
    private boolean ended;
    private boolean stopped;

    ByteLines(InputStream in, BrokenLines broken, BooleanSupplier goOn) {
        this.in = in;
        this.broken = broken;
        this.goOn = goOn;
    }

    /** From the next line on the lines come from the end of the file: that line has this number, the one after it one less. */
    void countDownFrom(long last) {
        line = last + 1;
        step = -1;
    }

    static long word(byte[] bytes, int at) {
        return (long) WORD.get(bytes, at);
    }

    /** Moves to the next line; false at the end of the stream. */
    boolean next() throws IOException {
        int from = next;
        while (true) {
            int newline = newline(from);
            if (newline >= 0) {
                take(newline, newline + 1);
                if (end - start <= LONGEST_LINE) {
                    return true;
                }
                broken.add(BrokenKind.LINE_TOO_LONG, line);
                from = next;
                continue;
            }
            int pending = limit - next;
            if (pending > LONGEST_LINE) {
                if (!skipLongLine()) {
                    return false;
                }
                from = next;
                continue;
            }
            if (!fill()) {
                return lastLine();
            }
            from = pending;
        }
    }

    /** Where the line after the present one begins. */
    int ahead() {
        return next;
    }

    /** One past the last byte that the buffer holds. */
    int limit() {
        return limit;
    }

    /** The beginning of the line after the first line feed from there on; past the limit if there is none. */
    int afterNewline(int from) {
        int newline = newline(from);
        return newline < 0 ? limit + 1 : newline + 1;
    }

    /** Moves over the line ahead, which the caller knows to end before {@code following}; false if it is too long. */
    boolean passTo(int following) {
        if (following - next > LONGEST_LINE) {
            return false;
        }
        next = following;
        line += step;
        return true;
    }

    /** Whether the reading was stopped from outside before the end. */
    boolean stopped() {
        return stopped;
    }

    private void take(int newline, int following) {
        start = next;
        end = newline > start && buffer[newline - 1] == '\r' ? newline - 1 : newline;
        next = following;
        line += step;
    }

    private boolean lastLine() {
        if (stopped || next >= limit) {
            return false;
        }
        // So that whoever reads word-wide finds this line ended like any other.
        buffer[limit] = '\n';
        take(limit, limit);
        return true;
    }

    private int newline(int from) {
        byte[] bytes = buffer;
        int at = from;
        // Lines are mostly longer than 16 bytes: two words at a time, until one of them holds the end.
        while (at + 8 < limit) {
            long first = newlines((long) WORD.get(bytes, at));
            long second = newlines((long) WORD.get(bytes, at + 8));
            if ((first | second) != 0) {
                int inside = first != 0
                        ? Long.numberOfTrailingZeros(first) >>> 3
                        : 8 + (Long.numberOfTrailingZeros(second) >>> 3);
                return at + inside < limit ? at + inside : -1;
            }
            at += 16;
        }
        if (at < limit) {
            long last = newlines((long) WORD.get(bytes, at));
            int position = at + (Long.numberOfTrailingZeros(last) >>> 3);
            return last != 0 && position < limit ? position : -1;
        }
        return -1;
    }

    /** The top bit of each byte that is a line feed; bytes after the first such one may be marked wrongly. */
    private static long newlines(long word) {
        long different = word ^ NEWLINES;
        return (different - ONES) & ~different & (ONES << 7);
    }

    private boolean skipLongLine() throws IOException {
        line += step;
        broken.add(BrokenKind.LINE_TOO_LONG, line);
        next = limit;
        while (fill()) {
            int newline = newline(0);
            if (newline >= 0) {
                next = newline + 1;
                return true;
            }
            next = limit;
        }
        return false;
    }

    /** Moves what is left to the front and reads more; false when nothing more comes. */
    private boolean fill() throws IOException {
        if (ended) {
            return false;
        }
        int pending = limit - next;
        System.arraycopy(buffer, next, buffer, 0, pending);
        next = 0;
        limit = pending;
        stopped = !goOn.getAsBoolean();
        int read = stopped ? -1 : readMore();
        if (read <= 0) {
            ended = true;
            return false;
        }
        limit += read;
        return true;
    }

    private int readMore() throws IOException {
        try {
            return in.read(buffer, limit, buffer.length - SLACK - limit);
        } catch (EOFException | ZipException cut) {
            // A truncated or damaged gzip file still gave good lines before the break.
            broken.add(BrokenKind.CUT_OFF, line + step);
            return -1;
        }
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
