package witnessmark.triplog.read;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.SignalRow;

/**
 * Reads SocketCAN candump text, log form {@code (1436509052.249713) can0 0CF00400#FF7D87482BFFFFFF} or screen form
 * {@code (...) can0 0CF00400 [8] FF 7D ...}, and turns SAE J1939 frames into rows on a grid of a tenth of a second.
 */
final class CandumpReader {
    private static final long GRID_MICROS = 100_000;
    private static final long REORDERED_MICROS = 1_000_000;
    private static final long EXTENDED_FLAG = 0x8000_0000L;
    private static final int NO_FRAME = -1;
    private static final long ZERO_AT_BOTH_ENDS = (long) '0' << 56 | '0';
    private static final int USUAL_LENGTH = 47;
    private static final byte[] HEX = new byte[256];

    static {
        Arrays.fill(HEX, (byte) -1);
        for (int digit = 0; digit < 16; digit++) {
            HEX[Character.forDigit(digit, 16)] = (byte) digit;
            HEX[Character.toUpperCase(Character.forDigit(digit, 16))] = (byte) digit;
        }
    }

    /** Fields by the low byte of their group number, which is unique among the groups that are read. */
    private static final J1939Field[][] BY_LOW_BYTE = new J1939Field[256][];

    static {
        Arrays.stream(J1939Field.values()).filter(f -> f.signal().isPresent()).forEach(f -> {
            List<J1939Field> group = J1939Field.of(f.pgn()).stream()
                    .filter(g -> g.signal().isPresent())
                    .toList();
            BY_LOW_BYTE[f.pgn() & 255] = group.toArray(J1939Field[]::new);
        });
    }

    private final ByteLines lines;
    private final BrokenLines broken;
    private final ReadCounts counts;
    private final RowSink sink;
    private final LatchedSignals latched;

    private int at;
    private long id;
    private long data;
    private int dataBytes;
    private long lastTime = Long.MIN_VALUE;
    private long bucketEnd = Long.MIN_VALUE;
    private boolean pending;
    private long pendingTime;
    private long pendingLine;
    private long lastName;
    private long secondsWord;
    private long secondsWordValue = -1;

    CandumpReader(ByteLines lines, BrokenLines broken, ReadCounts counts, RowSink sink) {
        this.lines = lines;
        this.broken = broken;
        this.counts = counts;
        this.sink = sink;
        this.latched = new LatchedSignals(counts);
    }

    void readAll() throws IOException {
        while (lines.next()) {
            if (lines.end > lines.start) {
                readLine();
            }
        }
        emit();
    }

    private void readLine() {
        if (readUsualLine()) {
            return;
        }
        long time = readTime();
        BrokenKind fault = time < 0 ? BrokenKind.NOT_A_FRAME : readFrame();
        if (fault != null) {
            broken.add(fault == BrokenKind.NOT_A_FRAME && !isText() ? BrokenKind.NOT_TEXT : fault, lines.line);
            return;
        }
        counts.lines++;
        accept(time);
    }

    /**
     * The usual line, ten digits of seconds, six of microseconds, eight of identifier and sixteen of data, taken eight
     * bytes at a time. False, with nothing done, for any other line; the general way then reads it.
     */
    private boolean readUsualLine() {
        byte[] b = lines.buffer;
        int p = lines.start;
        int end = lines.end;
        if (end - p < USUAL_LENGTH || b[p] != '(' || b[p + 11] != '.' || b[p + 18] != ')' || b[p + 19] != ' ') {
            return false;
        }
        int hash = end - 17;
        if (b[hash] != '#' || b[hash - 9] != ' ' || !hasOneName(p + 20, hash - 9)) {
            return false;
        }
        long seconds = secondsOf(b, p + 1);
        long micros = HexText.digits(ByteLines.word(b, p + 11) & 0x00FFFFFFFFFFFF00L | ZERO_AT_BOTH_ENDS);
        int identifier = (int) HexText.value(ByteLines.word(b, hash - 8));
        long low = ByteLines.word(b, hash + 1);
        long high = ByteLines.word(b, hash + 9);
        boolean good = HexText.isHex(ByteLines.word(b, hash - 8)) && HexText.isHex(low) && HexText.isHex(high);
        if (!good || seconds < 0 || micros < 0 || identifier < 0 || identifier > J1939Id.HIGHEST) {
            return false;
        }
        id = identifier;
        data = HexText.bytes(low) | HexText.bytes(high) << 32;
        dataBytes = 8;
        counts.lines++;
        accept(seconds * 1_000_000 + micros / 10);
        return true;
    }

    /** One name without blanks between the time and the identifier; mostly that of the line before. */
    private boolean hasOneName(int from, int to) {
        long word = ByteLines.word(lines.buffer, from);
        int bits = to - from << 3;
        long name = bits < 64 ? word & (1L << bits) - 1 : 0;
        if (name == lastName && name != 0) {
            return true;
        }
        lastName = 0;
        for (int i = from; i < to; i++) {
            if (lines.buffer[i] == ' ') {
                return false;
            }
        }
        lastName = name;
        return to > from;
    }

    private long secondsOf(byte[] b, int at) {
        long word = ByteLines.word(b, at);
        if (word != secondsWord || secondsWordValue < 0) {
            secondsWord = word;
            secondsWordValue = HexText.digits(word);
        }
        int tens = b[at + 8] - '0' & 255;
        int ones = b[at + 9] - '0' & 255;
        return secondsWordValue < 0 || tens > 9 || ones > 9 ? -1 : secondsWordValue * 100 + tens * 10 + ones;
    }

    private boolean isText() {
        for (int i = lines.start; i < lines.end; i++) {
            if (lines.buffer[i] < ' ' && lines.buffer[i] != '\t') {
                return false;
            }
        }
        return true;
    }

    /** The time in the brackets in microseconds, or a negative number; {@code at} then stands behind the bracket. */
    private long readTime() {
        byte[] b = lines.buffer;
        int p = lines.start;
        while (p < lines.end && b[p] == ' ') {
            p++;
        }
        if (p >= lines.end || b[p] != '(') {
            return NO_FRAME;
        }
        p++;
        long seconds = 0;
        long word = ByteLines.word(b, p);
        if (word == secondsWord && secondsWordValue >= 0) {
            seconds = secondsWordValue;
            p += 8;
        } else {
            int first = p;
            while (p - first < 8 && isDigit(b[p])) {
                seconds = seconds * 10 + b[p++] - '0';
            }
            if (p - first == 8) {
                secondsWord = word;
                secondsWordValue = seconds;
            }
        }
        int more = p;
        while (isDigit(b[p]) && p - more < 5) {
            seconds = seconds * 10 + b[p++] - '0';
        }
        return readFraction(seconds, p);
    }

    private long readFraction(long seconds, int from) {
        byte[] b = lines.buffer;
        int p = from;
        long micros = 0;
        int digits = 0;
        if (b[p] == '.') {
            p++;
            for (; isDigit(b[p]); p++) {
                if (digits < 6) {
                    micros = micros * 10 + b[p] - '0';
                    digits++;
                }
            }
        }
        if (b[p] != ')' || p >= lines.end) {
            return NO_FRAME;
        }
        for (; digits < 6; digits++) {
            micros *= 10;
        }
        at = p + 1;
        return seconds * 1_000_000 + micros;
    }

    private static boolean isDigit(byte b) {
        return b >= '0' && b <= '9';
    }

    /** Reads interface, identifier and data; null if all is well. */
    private @Nullable BrokenKind readFrame() {
        byte[] b = lines.buffer;
        int end = lines.end;
        int p = skipSpaces(b, at, end);
        while (p < end && b[p] != ' ') {
            p++;
        }
        p = skipSpaces(b, p, end);
        int first = p;
        long value = 0;
        while (p < end && HEX[b[p] & 255] >= 0 && p - first < 9) {
            value = value << 4 | HEX[b[p] & 255];
            p++;
        }
        int digits = p - first;
        if (p >= end || digits == 0) {
            return BrokenKind.NOT_A_FRAME;
        }
        if (b[p] != '#' && b[p] != ' ') {
            return BrokenKind.BAD_IDENTIFIER;
        }
        if (value > J1939Id.HIGHEST && value != (value & J1939Id.HIGHEST | EXTENDED_FLAG)) {
            return BrokenKind.BAD_IDENTIFIER;
        }
        id = digits <= 3 ? NO_FRAME : value & J1939Id.HIGHEST;
        return b[p] == '#' ? readPackedData(p + 1) : readSpacedData(p);
    }

    private static int skipSpaces(byte[] b, int from, int end) {
        int p = from;
        while (p < end && b[p] == ' ') {
            p++;
        }
        return p;
    }

    private @Nullable BrokenKind readPackedData(int from) {
        byte[] b = lines.buffer;
        int end = lines.end;
        int p = from;
        if (p < end && b[p] == '#') {
            return BrokenKind.WIDER_FRAME;
        }
        if (p < end && b[p] == 'R') {
            // A request carries no data.
            id = NO_FRAME;
            return null;
        }
        long bits = 0;
        int bytes = 0;
        while (p + 1 < end && bytes < 8) {
            int pair = HEX[b[p] & 255] << 4 | HEX[b[p + 1] & 255];
            if (pair < 0) {
                break;
            }
            bits |= (long) pair << (bytes << 3);
            bytes++;
            p += 2;
        }
        data = bits;
        dataBytes = bytes;
        // Newer versions of the tool add the direction, " R" or " T", behind the data.
        return p == end || b[p] == ' ' && end - p <= 3 ? null : BrokenKind.BAD_DATA;
    }

    private @Nullable BrokenKind readSpacedData(int from) {
        byte[] b = lines.buffer;
        int end = lines.end;
        int p = skipSpaces(b, from, end);
        if (p + 2 >= end || b[p] != '[') {
            return BrokenKind.NOT_A_FRAME;
        }
        while (p < end && b[p] != ']') {
            p++;
        }
        p++;
        long bits = 0;
        int bytes = 0;
        p = skipSpaces(b, p, end);
        while (p + 1 < end && bytes < 8) {
            int pair = HEX[b[p] & 255] << 4 | HEX[b[p + 1] & 255];
            if (pair < 0) {
                break;
            }
            bits |= (long) pair << (bytes << 3);
            bytes++;
            p = skipSpaces(b, p + 2, end);
        }
        data = bits;
        dataBytes = bytes;
        return p >= end ? null : BrokenKind.BAD_DATA;
    }

    private void accept(long frameTime) {
        long time = frameTime;
        if (time < lastTime) {
            if (lastTime - time > REORDERED_MICROS) {
                emit();
                latched.forget();
                bucketEnd = Long.MIN_VALUE;
            } else {
                counts.reordered++;
                time = lastTime;
            }
        }
        lastTime = time;
        if (time >= bucketEnd) {
            emit();
            bucketEnd = time - time % GRID_MICROS + GRID_MICROS;
        }
        if (id >= 0) {
            decode(time);
        }
    }

    private void decode(long time) {
        int bits = (int) id;
        int pgn = J1939Id.pgnOf(bits);
        J1939Field[] fields = BY_LOW_BYTE[pgn & 255];
        if (fields == null || fields[0].pgn() != pgn) {
            return;
        }
        boolean cut = false;
        for (J1939Field field : fields) {
            if (!field.fitsIn(dataBytes)) {
                cut = true;
                continue;
            }
            latched.take(field, field.raw(data), bits & 255, time);
        }
        if (cut) {
            broken.add(BrokenKind.SHORT_FRAME, lines.line);
        }
        pending = true;
        pendingTime = time;
        pendingLine = lines.line;
    }

    private void emit() {
        if (!pending) {
            return;
        }
        pending = false;
        SignalRow row = latched.row(pendingTime, pendingLine);
        counts.rows++;
        sink.row(row);
    }
}
