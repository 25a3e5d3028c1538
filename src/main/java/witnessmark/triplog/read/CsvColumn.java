package witnessmark.triplog.read;

/** One column of a CSV log while it is read: what it is for, and how its last plain number was written. */
final class CsvColumn {
    private static final int WORD = 8;
    private static final long NONE = -1;

    /** A signal's ordinal, or one of the constants of {@link CsvPlan}. */
    final int action;

    private final boolean isLast;
    private final long points;
    private final double factor;
    private final double addend;
    private final double lowest;
    private final double highest;

    /** The last short number with what ended it, as written; {@link #NONE} if the last field was none. */
    private long text = NONE;

    private long textMask;
    private boolean isLong;
    /** The first eight bytes of a long number. */
    private final NumberShape head = new NumberShape();
    /** The rest of a long number, or the whole of a short one. */
    private final NumberShape tail = new NumberShape();

    /** The head as last read, which mostly stays, and what its digits came to. */
    private long headText;

    private long headDigits = -1;
    private long headPower = 1;
    private int fraction;
    private double power = 1;
    private int step;
    private boolean endsLine;

    CsvColumn(CsvPlan plan, int at) {
        action = plan.actions[at];
        isLast = at == plan.actions.length - 1;
        char decimal = plan.mapping.decimal();
        points = HexText.eightTimes(decimal == plan.mapping.separator() ? '\n' : decimal);
        int scale = 4 * Math.max(action, 0);
        factor = plan.scales[scale];
        addend = plan.scales[scale + 1];
        lowest = plan.scales[scale + 2];
        highest = plan.scales[scale + 3];
    }

    /** Whether the field that begins with the word is, to its end, the short number that was remembered. */
    boolean isSame(long word) {
        return (word & textMask) == text;
    }

    void remember(long word) {
        text = isLong ? NONE : word & textMask;
    }

    /**
     * The digits of the number that begins there with the word, if it is written as the last one was; else -1. Bytes up
     * to 16 behind the beginning are looked at.
     */
    long read(byte[] bytes, int from, long word) {
        if (!isLong) {
            return tail.read(word);
        }
        if (word != headText) {
            headText = word;
            headDigits = head.read(word);
        }
        long rest = tail.read(ByteLines.word(bytes, from + WORD));
        return (headDigits | rest) < 0 ? -1 : headDigits * headPower + rest;
    }

    /**
     * Learns how the number in {@code bytes[from, to)} is written, and returns its digits; -1 if it is no plain number
     * of at most 15 bytes. What ends the field belongs to the shape, so that where it fits again the field ends as well.
     */
    long learn(byte[] bytes, int from, int to, int lineEnd) {
        forget();
        int length = to - from;
        isLong = length > WORD;
        int rest = isLong ? length - WORD : length;
        // Only the last column ends with the line: another one that does belongs to a broken line.
        endsLine = isLast && to == lineEnd;
        int endLength = to < lineEnd ? 1 : !isLast ? WORD : bytes[to] == '\r' ? 2 : 1;
        if (length == 0 || rest + endLength > WORD) {
            isLong = false;
            return -1;
        }
        step = length + endLength;
        tail.learn(ByteLines.word(bytes, to - rest), rest, points, endLength);
        fraction = tail.fraction();
        boolean negative = tail.isNegative();
        if (isLong) {
            head.learn(ByteLines.word(bytes, from), WORD, points, 0);
            negative = head.isNegative();
            headPower = (long) NumberText.POWERS[tail.digits()];
            fraction = head.hasPoint() ? head.fraction() + tail.digits() : tail.fraction();
            if (tail.isNegative() || head.hasPoint() && tail.hasPoint()) {
                forget();
            }
        }
        textMask = NumberShape.bytes(isLong ? 0 : step);
        power = negative ? -NumberText.POWERS[fraction] : NumberText.POWERS[fraction];
        return read(bytes, from, ByteLines.word(bytes, from));
    }

    private void forget() {
        headText = 0;
        headDigits = -1;
        text = NONE;
        textMask = 0;
        head.forget();
        tail.forget();
    }

    /** The value in the signal's own unit. */
    double value(long digits) {
        return digits / power * factor + addend;
    }

    boolean isPlausible(double value) {
        return value >= lowest && value <= highest;
    }

    boolean isNegative() {
        return power < 0;
    }

    int fraction() {
        return fraction;
    }

    /** Whether the last number learnt ended with its line. */
    boolean endsLine() {
        return endsLine;
    }

    /** From the beginning of the number to the beginning of the next field. */
    int step() {
        return step;
    }
}
