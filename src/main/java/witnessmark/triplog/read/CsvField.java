package witnessmark.triplog.read;

import witnessmark.triplog.signal.SignalRow;

/** Reads a field that may be anything: long, blank, quoted, a word, broken. */
final class CsvField {
    private static final int MOST_DIGITS = NumberText.mostDigits();

    private final ByteLines lines;
    private final BrokenLines broken;
    private final ReadCounts counts;
    private final CsvPlan plan;
    private final SignalRow row;
    private final CsvClock clock;
    private final NumberText words = new NumberText();
    private final char decimal;
    private final boolean hasPoint;

    CsvField(ByteLines lines, BrokenLines broken, ReadCounts counts, CsvPlan plan, SignalRow row, CsvClock clock) {
        this.lines = lines;
        this.broken = broken;
        this.counts = counts;
        this.plan = plan;
        this.row = row;
        this.clock = clock;
        this.decimal = plan.mapping.decimal();
        this.hasPoint = decimal != plan.mapping.separator();
    }

    /** Reads {@code [from, to)} of the line as a number if it is a plain one, else by its words. */
    void read(int action, int from, int to) {
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
        if (p < to && b[p] == decimal && hasPoint) {
            int point = ++p;
            while (p < to && (digit = b[p] - '0' & 255) <= 9) {
                value = value * 10 + digit;
                p++;
            }
            fraction = p - point;
            digits += fraction;
        }
        boolean plain = digits > 0 && digits <= MOST_DIGITS && p >= to;
        if (!plain) {
            readWords(action, from, to);
        } else if (action >= 0) {
            take(action, value / NumberText.POWERS[fraction], negative);
        } else {
            clock.takeNumber(action, negative ? -value : value, fraction);
        }
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

    private void readWords(int action, int from, int to) {
        if (action < 0) {
            readNumberOfTime(action, from, to);
            return;
        }
        switch (words.read(lines.buffer, from, to, decimal)) {
            case NUMBER -> take(action, words.value(), false);
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

    private void readNumberOfTime(int action, int from, int to) {
        boolean number = words.read(lines.buffer, from, to, decimal) == NumberText.Sort.NUMBER;
        if (number && Math.abs(words.value()) < 1e12) {
            clock.takeNumber(action, Math.round(words.value() * 1e6), 6);
        } else {
            clock.takeNothing();
        }
    }

    /** Reads a time or date that is written by a pattern, perhaps between blanks or quotes. */
    void readTime(int action, int from, int to) {
        clock.takeText(action, lines.buffer, bare(from, 1), bare(to, -1));
    }

    /** The position moved past blanks and quotes, forward or backward. */
    private int bare(int position, int step) {
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
}
