package witnessmark.triplog.read;

import java.io.IOException;
import java.util.Arrays;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/** Reads the rows of a CSV log by its plan, field by field from the bytes of the line. */
final class CsvReader {
    private static final int MOST_DIGITS = NumberText.mostDigits();
    private static final long NONE = -1;
    private static final long HALF_DAY = 43_200_000_000L;

    private final ByteLines lines;
    private final BrokenLines broken;
    private final ReadCounts counts;
    private final RowSink sink;
    private final CsvPlan plan;
    private final int[] actions;
    private final byte separator;
    private final byte decimal;
    private final long separators;
    private final long points;
    private final boolean timeIsNumber;
    private final boolean dateIsNumber;
    private final boolean countsMidnights;
    private final SignalRow row = new SignalRow();
    /** The last short field of each signal as it was written; {@link #NONE} after any other field. */
    private final long[] lastText = new long[Signal.count()];

    private final NumberText slow = new NumberText();

    private long time;
    private long date;
    private boolean timeBad;
    private long midnights;
    private long lastInDay = Long.MIN_VALUE;

    CsvReader(ByteLines lines, BrokenLines broken, ReadCounts counts, RowSink sink, CsvPlan plan) {
        this.lines = lines;
        this.broken = broken;
        this.counts = counts;
        this.sink = sink;
        this.plan = plan;
        Arrays.fill(lastText, NONE);
        this.actions = plan.actions;
        this.separator = (byte) plan.mapping.separator();
        this.decimal = (byte) plan.mapping.decimal();
        this.separators = HexText.eightTimes(separator);
        this.points = HexText.eightTimes(decimal == separator ? '\n' : decimal);
        this.timeIsNumber = plan.timeForm.isNumber();
        this.countsMidnights = plan.timeForm.isTimeOfDay() && plan.dateForm.isEmpty();
        this.dateIsNumber = plan.dateForm.map(TimeForm::isNumber).orElse(false);
    }

    void readAll() throws IOException {
        for (int i = 0; i < plan.mapping.headerLines(); i++) {
            if (!lines.next()) {
                return;
            }
        }
        while (lines.next()) {
            if (lines.end > lines.start) {
                readLine();
            }
        }
        for (int action : actions) {
            if (action >= 0) {
                counts.valid[action] = Math.max(0, counts.rows - counts.notAvailable[action] - counts.error[action]);
            }
        }
    }

    /**
     * Fields of up to eight bytes that are plain numbers, nearly all of a log, are read in one go from one word, without
     * a loop whose end the processor would have to guess, and with everything at hand in local variables: this loop is
     * where the time of reading a long file goes. A field that reads as it did in the line before keeps its value in the row.
     * All other fields are handed on.
     */
    private void readLine() {
        byte[] b = lines.buffer;
        int end = lines.end;
        int p = lines.start;
        long separators = this.separators;
        long points = this.points;
        double[] scales = plan.scales;
        timeBad = false;
        date = 0;
        for (int action : actions) {
            int length = end - p;
            if (action >= 0 && length > 0) {
                long word = ByteLines.word(b, p);
                long mark = HexText.firstZero(word ^ separators);
                length = Math.min(Long.numberOfTrailingZeros(mark) >>> 3, length);
                long text = word & (1L << (length << 3)) - 1;
                if (text == lastText[action]) {
                    p += length + 1;
                    continue;
                }
                lastText[action] = NONE;
                int point = Long.numberOfTrailingZeros(HexText.firstZero(word ^ points)) >>> 3;
                int fraction = 0;
                int digits = length;
                if (point < length) {
                    long before = (1L << (point << 3)) - 1;
                    word = word & before | word >>> 8 & ~before;
                    fraction = length - 1 - point;
                    digits--;
                }
                long value = length < 8 && digits > 0 ? HexText.digits(word, digits) : -1;
                if (value >= 0) {
                    int scale = action << 2;
                    double own = value / NumberText.POWERS[fraction] * scales[scale] + scales[scale + 1];
                    if (own >= scales[scale + 2] && own <= scales[scale + 3]) {
                        row.set(action, own);
                        lastText[action] = text;
                        p += length + 1;
                        continue;
                    }
                }
            } else if (length < 0) {
                broken.add(isText() ? BrokenKind.TOO_FEW_COLUMNS : BrokenKind.NOT_TEXT, lines.line);
                return;
            }
            p = action == CsvPlan.SKIP ? fieldEnd(p, end) + 1 : readLongField(action, p, end) + 1;
        }
        finish();
    }

    private int readLongField(int action, int from, int end) {
        byte[] b = lines.buffer;
        boolean negative = from < end && b[from] == '-';
        int first = negative ? from + 1 : from;
        long eight = end - first >= 8 ? HexText.digits(ByteLines.word(b, first)) : -1;
        int p = eight < 0 ? first : first + 8;
        long value = Math.max(eight, 0);
        int digit;
        while (p < end && (digit = b[p] - '0' & 255) <= 9) {
            value = value * 10 + digit;
            p++;
        }
        int digits = p - first;
        int fraction = 0;
        if (p < end && b[p] == decimal && decimal != separator) {
            int point = ++p;
            while (p < end && (digit = b[p] - '0' & 255) <= 9) {
                value = value * 10 + digit;
                p++;
            }
            fraction = p - point;
            digits += fraction;
        }
        boolean plain = digits > 0 && digits <= MOST_DIGITS && (p >= end || b[p] == separator);
        if (plain && action >= 0) {
            take(action, value / NumberText.POWERS[fraction], negative);
        } else if (plain && clockIsNumber(action)) {
            takeClock(action, clockForm(action).fromNumber(negative ? -value : value, fraction));
        } else {
            p = fieldEnd(from, end);
            readSlowly(action, from, p);
        }
        return p;
    }

    private boolean clockIsNumber(int action) {
        return action == CsvPlan.TIME ? timeIsNumber : dateIsNumber;
    }

    private void take(int signal, double magnitude, boolean negative) {
        double own = (negative ? -magnitude : magnitude) * plan.scales[signal * 4] + plan.scales[signal * 4 + 1];
        if (own >= plan.scales[signal * 4 + 2] && own <= plan.scales[signal * 4 + 3]) {
            row.set(signal, own);
        } else {
            row.set(signal, Double.NaN);
            counts.error[signal]++;
            broken.add(BrokenKind.OUT_OF_RANGE, lines.line);
        }
    }

    private TimeForm clockForm(int action) {
        return action == CsvPlan.TIME ? plan.timeForm : plan.dateForm.orElseThrow();
    }

    private void takeClock(int action, long micros) {
        timeBad |= TimeForm.isBad(micros);
        if (action == CsvPlan.TIME) {
            time = micros;
        } else {
            date = micros;
        }
    }

    private void readSlowly(int action, int from, int to) {
        if (action < 0) {
            TimeForm form = clockForm(action);
            takeClock(
                    action,
                    form.isNumber()
                            ? slowTime(form, from, to)
                            : form.read(lines.buffer, unquoted(from, 1), unquoted(to, -1)));
            return;
        }
        switch (slow.read(lines.buffer, from, to, (char) decimal)) {
            case NUMBER -> take(action, slow.value(), false);
            case ABSENT -> {
                row.set(action, Double.NaN);
                counts.notAvailable[action]++;
            }
            case BAD -> {
                row.set(action, Double.NaN);
                counts.error[action]++;
                broken.add(BrokenKind.BAD_NUMBER, lines.line);
            }
        }
    }

    private void finish() {
        if (timeBad) {
            broken.add(isText() ? BrokenKind.BAD_TIME : BrokenKind.NOT_TEXT, lines.line);
            return;
        }
        counts.lines++;
        counts.rows++;
        row.stamp(date + time + countMidnights(), lines.line);
        sink.row(row);
    }

    private boolean isText() {
        for (int i = lines.start; i < lines.end; i++) {
            if (lines.buffer[i] >= 0 && lines.buffer[i] < ' ' && lines.buffer[i] != '\t') {
                return false;
            }
        }
        return true;
    }

    private int fieldEnd(int from, int end) {
        byte[] b = lines.buffer;
        int p = from;
        if (p < end && b[p] == '"') {
            p++;
            while (p < end && b[p] != '"') {
                p++;
            }
        }
        while (p < end && b[p] != separator) {
            p++;
        }
        return p;
    }

    private long slowTime(TimeForm form, int from, int to) {
        boolean number = slow.read(lines.buffer, from, to, (char) decimal) == NumberText.Sort.NUMBER;
        boolean sane = number && Math.abs(slow.value()) < 1e12;
        return sane ? form.fromNumber(Math.round(slow.value() * 1e6), 6) : TimeForm.bad();
    }

    /** The position moved past blanks and quotes, forward or backward. */
    private int unquoted(int position, int step) {
        byte[] b = lines.buffer;
        int p = position;
        while (p > lines.start || step > 0) {
            byte next = b[step > 0 ? p : p - 1];
            if (next != ' ' && next != '"' || p >= lines.end && step > 0) {
                break;
            }
            p += step;
        }
        return p;
    }

    /** For times of day without a date: each fall by more than half a day is a midnight. */
    private long countMidnights() {
        if (!countsMidnights) {
            return 0;
        }
        if (lastInDay - time > HALF_DAY) {
            midnights += 2 * HALF_DAY;
        }
        lastInDay = time;
        return midnights;
    }
}
