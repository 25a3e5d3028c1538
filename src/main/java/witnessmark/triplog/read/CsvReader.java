package witnessmark.triplog.read;

import java.io.IOException;
import java.util.stream.IntStream;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.SignalRow;

/**
 * Reads the rows of a CSV log by its plan, field by field from the bytes of the line. Most lines are written like the one
 * before; they are read in one go, without a search for the ends of the line and of its fields.
 */
final class CsvReader {
    private static final long NEWLINES = HexText.eightTimes('\n');

    private final ByteLines lines;
    private final BrokenLines broken;
    private final ReadCounts counts;
    private final RowSink sink;
    private final CsvPlan plan;
    private final CsvColumn[] columns;
    private final CsvColumn last;
    private final CsvField field;
    private final CsvClock clock;
    private final long separators;
    private final SignalRow row = new SignalRow();

    CsvReader(ByteLines lines, BrokenLines broken, ReadCounts counts, RowSink sink, CsvPlan plan) {
        this.lines = lines;
        this.broken = broken;
        this.counts = counts;
        this.sink = sink;
        this.plan = plan;
        this.columns = IntStream.range(0, plan.actions.length)
                .mapToObj(at -> new CsvColumn(plan, at))
                .toArray(CsvColumn[]::new);
        this.last = columns[columns.length - 1];
        this.clock = new CsvClock(plan);
        this.field = new CsvField(lines, broken, counts, plan, row, clock);
        this.separators = HexText.eightTimes(plan.mapping.separator());
    }

    void readAll() throws IOException {
        if (skipHeader()) {
            readRows();
        }
    }

    /** The same where the lines come {@link TurnedRound}, of a file with so many of them. */
    void readAllTurned(long linesOfFile) throws IOException {
        if (skipHeader()) {
            lines.countDownFrom(linesOfFile);
            readRows();
        }
    }

    private boolean skipHeader() throws IOException {
        for (int i = 0; i < plan.mapping.headerLines(); i++) {
            if (!lines.next()) {
                return false;
            }
        }
        return true;
    }

    private void readRows() throws IOException {
        readUsualLines();
        while (lines.next()) {
            if (lines.end > lines.start) {
                readLine();
            }
            readUsualLines();
        }
        for (int action : plan.actions) {
            if (action >= 0) {
                counts.valid[action] = Math.max(0, counts.rows - counts.notAvailable[action] - counts.error[action]);
            }
        }
    }

    /**
     * Reads on as long as the lines have the shape of those before. Bytes beyond what the buffer holds may be taken for
     * part of a line at first; that line is then left for the next time, and what was taken from it is read again.
     */
    private void readUsualLines() {
        byte[] b = lines.buffer;
        int limit = lines.limit();
        int p = lines.ahead();
        while (true) {
            clock.beginRow();
            for (CsvColumn column : columns) {
                if (p >= limit) {
                    return;
                }
                long word = ByteLines.word(b, p);
                int step = column.isSame(word) ? column.step() : readUsual(column, word, p, limit);
                if (step == 0) {
                    return;
                }
                p += step;
            }
            p = last.endsLine() ? p : lines.afterNewline(p);
            if (p > limit || !lines.passTo(p)) {
                return;
            }
            finish();
        }
    }

    /** Reads a field that is written as the last one of its column; the way to the next field, or 0 if it is not. */
    private int readUsual(CsvColumn column, long word, int from, int limit) {
        boolean signal = column.action >= 0;
        if (!signal && (column.action == CsvPlan.SKIP || !clock.isNumber(column.action))) {
            return readUsualText(column.action, word, from, limit);
        }
        long digits = column.read(lines.buffer, from, word);
        if (digits < 0 || !signal && column.isNegative()) {
            return 0;
        }
        if (signal) {
            double value = column.value(digits);
            if (!column.isPlausible(value)) {
                return 0;
            }
            row.setAgain(column.action, value);
            column.remember(word);
        } else {
            clock.takeNumber(column.action, digits, column.fraction());
        }
        return clock.isBad() ? 0 : column.step();
    }

    private int readUsualText(int action, long word, int from, int limit) {
        int first = (int) word & 255;
        int to = first == '"' || first == ' ' ? -1 : separator(from, limit);
        if (to < 0) {
            return 0;
        }
        if (action != CsvPlan.SKIP) {
            clock.takeText(action, lines.buffer, from, to);
        }
        return clock.isBad() ? 0 : to + 1 - from;
    }

    /** The first separator from there on, or -1 if the line ends before it. */
    private int separator(int from, int limit) {
        byte[] b = lines.buffer;
        for (int p = from; p < limit; p += 8) {
            long word = ByteLines.word(b, p);
            long mark = HexText.firstZero(word ^ separators);
            long newline = HexText.firstZero(word ^ NEWLINES);
            if ((mark | newline) != 0) {
                int inside = Long.numberOfTrailingZeros(mark);
                return inside < Long.numberOfTrailingZeros(newline) ? p + (inside >>> 3) : -1;
            }
        }
        return -1;
    }

    /** Reads any line, and learns from its fields what the following ones may look like. */
    private void readLine() {
        int end = lines.end;
        int p = lines.start;
        clock.beginRow();
        for (CsvColumn column : columns) {
            if (p > end) {
                broken.add(isText() ? BrokenKind.TOO_FEW_COLUMNS : BrokenKind.NOT_TEXT, lines.line);
                return;
            }
            int to = fieldEnd(p, end);
            if (column.action >= 0) {
                readSignal(column, p, to, end);
            } else if (column.action != CsvPlan.SKIP) {
                readTime(column, p, to, end);
            }
            p = to + 1;
        }
        if (clock.isBad()) {
            broken.add(isText() ? BrokenKind.BAD_TIME : BrokenKind.NOT_TEXT, lines.line);
            return;
        }
        finish();
    }

    private void readSignal(CsvColumn column, int from, int to, int end) {
        long digits = column.learn(lines.buffer, from, to, end);
        double value = digits >= 0 ? column.value(digits) : Double.NaN;
        if (column.isPlausible(value)) {
            row.set(column.action, value);
            column.remember(ByteLines.word(lines.buffer, from));
        } else {
            field.read(column.action, from, to);
        }
    }

    private void readTime(CsvColumn column, int from, int to, int end) {
        if (clock.isNumber(column.action)) {
            column.learn(lines.buffer, from, to, end);
            field.read(column.action, from, to);
        } else {
            field.readTime(column.action, from, to);
        }
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
        for (; p < end; p += 8) {
            long mark = HexText.firstZero(ByteLines.word(b, p) ^ separators);
            if (mark != 0) {
                return Math.min(p + (Long.numberOfTrailingZeros(mark) >>> 3), end);
            }
        }
        return end;
    }

    private void finish() {
        counts.lines++;
        counts.rows++;
        row.stamp(clock.micros(), lines.line);
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
}
