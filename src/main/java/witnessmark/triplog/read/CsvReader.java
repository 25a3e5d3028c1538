package witnessmark.triplog.read;

import java.io.IOException;
import java.util.stream.IntStream;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.SignalRow;

/** Reads the rows of a CSV log by its plan, field by field from the bytes of the line. */
final class CsvReader {
    private static final int MOST_DIGITS = NumberText.mostDigits();
    private static final long HALF_DAY = 43_200_000_000L;

    private final ByteLines lines;
    private final BrokenLines broken;
    private final ReadCounts counts;
    private final RowSink sink;
    private final CsvPlan plan;
    private final CsvColumn[] columns;
    private final byte separator;
    private final byte decimal;
    private final long separators;
    private final boolean timeIsNumber;
    private final boolean dateIsNumber;
    private final boolean countsMidnights;
    private final SignalRow row = new SignalRow();
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
        this.columns = IntStream.range(0, plan.actions.length)
                .mapToObj(at -> new CsvColumn(plan, at))
                .toArray(CsvColumn[]::new);
        this.separator = (byte) plan.mapping.separator();
        this.decimal = (byte) plan.mapping.decimal();
        this.separators = HexText.eightTimes(separator);
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
        for (int action : plan.actions) {
            if (action >= 0) {
                counts.valid[action] = Math.max(0, counts.rows - counts.notAvailable[action] - counts.error[action]);
            }
        }
    }

    /** Most fields are plain numbers, and many read as they did in the line before; all others are handed on. */
    private void readLine() {
        byte[] b = lines.buffer;
        int end = lines.end;
        int p = lines.start;
        timeBad = false;
        date = 0;
        for (CsvColumn column : columns) {
            if (p > end) {
                broken.add(isText() ? BrokenKind.TOO_FEW_COLUMNS : BrokenKind.NOT_TEXT, lines.line);
                return;
            }
            long word = ByteLines.word(b, p);
            if (column.isSame(word)) {
                p += column.step();
            } else if (column.action >= 0) {
                p += readSignal(column, word, p, end);
            } else {
                p += readOther(column, word, p, end);
            }
        }
        finish();
    }

    /** Returns the length of the field with what ends it. */
    private int readSignal(CsvColumn column, long word, int from, int end) {
        long digits = column.read(lines.buffer, from, word);
        if (digits >= 0) {
            double value = column.value(digits);
            if (column.isPlausible(value)) {
                row.set(column.action, value);
                column.remember(word);
                return column.step();
            }
        }
        return readNewShape(column, word, from, end);
    }

    private int readNewShape(CsvColumn column, long word, int from, int end) {
        int to = fieldEnd(from, end);
        long digits = column.learn(lines.buffer, from, to, end);
        double value = digits >= 0 ? column.value(digits) : Double.NaN;
        if (column.isPlausible(value)) {
            row.set(column.action, value);
            column.remember(word);
        } else {
            readAny(column.action, from, to);
        }
        return to + 1 - from;
    }

    private int readOther(CsvColumn column, long word, int from, int end) {
        boolean number = column.action != CsvPlan.SKIP && clockIsNumber(column.action);
        if (number) {
            long digits = column.read(lines.buffer, from, word);
            if (digits >= 0 && !column.isNegative()) {
                takeClock(column.action, clockForm(column.action).fromNumber(digits, column.fraction()));
                return column.step();
            }
        }
        int to = fieldEnd(from, end);
        if (number) {
            column.learn(lines.buffer, from, to, end);
            readAny(column.action, from, to);
        } else if (column.action != CsvPlan.SKIP) {
            readSlowly(column.action, from, to);
        }
        return to + 1 - from;
    }

    /** Reads a field that may be anything. */
    private void readAny(int action, int from, int to) {
        byte[] b = lines.buffer;
        boolean negative = from < to && b[from] == '-';
        int first = negative ? from + 1 : from;
        long value = 0;
        int p = first;
        int digit;
        while (p < to && (digit = b[p] - '0' & 255) <= 9) {
            value = value * 10 + digit;
            p++;
        }
        int digits = p - first;
        int fraction = 0;
        if (p < to && b[p] == decimal && decimal != separator) {
            int point = ++p;
            while (p < to && (digit = b[p] - '0' & 255) <= 9) {
                value = value * 10 + digit;
                p++;
            }
            fraction = p - point;
            digits += fraction;
        }
        boolean plain = digits > 0 && digits <= MOST_DIGITS && p >= to;
        if (plain && action >= 0) {
            take(action, value / NumberText.POWERS[fraction], negative);
        } else if (plain) {
            takeClock(action, clockForm(action).fromNumber(negative ? -value : value, fraction));
        } else {
            readSlowly(action, from, to);
        }
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
        while (p < end) {
            long mark = HexText.firstZero(ByteLines.word(b, p) ^ separators);
            if (mark != 0) {
                return Math.min(p + (Long.numberOfTrailingZeros(mark) >>> 3), end);
            }
            p += 8;
        }
        return end;
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
