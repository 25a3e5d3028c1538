package witnessmark.triplog.read;

/**
 * How a number was written in up to eight bytes: its length, sign, point and what follows it. In the next row a column
 * mostly has the same shape again; the number is then read from one word at once, with no search for its end that the
 * reading of the following field would have to wait for.
 */
final class NumberShape {
    private static final long MINUS = '-';

    /** The bytes that are no digits, each in its place: sign, point, what ends the field. */
    private long marks;

    private long markMask = -1;
    private int signBits;
    private long beforePoint;
    private int spareBits;
    private long leadingZeros;
    private int digits;
    private int fraction;
    private boolean negative;

    /** The digits of the number without its point, if it has this shape; else -1. */
    long read(long word) {
        if (((word ^ marks) & markMask) != 0) {
            return -1;
        }
        long unsigned = word >>> signBits;
        long joined = unsigned & beforePoint | unsigned >>> 8 & ~beforePoint;
        return HexText.digits(joined << spareBits | leadingZeros);
    }

    /**
     * Takes over the shape of a number.
     *
     * @param word that begins with the number
     * @param length of the number in bytes
     * @param points the decimal point eight times
     * @param endLength how many bytes behind the number belong to its shape
     * @return the digits of the number, or -1 if it is no plain number of this length
     */
    long learn(long word, int length, long points, int endLength) {
        negative = (word & 255) == MINUS;
        signBits = negative ? 8 : 0;
        int point = Long.numberOfTrailingZeros(HexText.firstZero(word ^ points)) >>> 3;
        boolean pointed = point < length;
        fraction = pointed ? length - 1 - point : 0;
        digits = length - (pointed ? 1 : 0) - (negative ? 1 : 0);
        markMask = bytes(length + endLength) & ~bytes(length);
        markMask |= pointed ? bytes(point + 1) & ~bytes(point) : 0;
        markMask |= negative ? 255 : 0;
        marks = word & markMask;
        beforePoint = pointed ? bytes(point) >>> signBits : -1;
        spareBits = 64 - (digits << 3);
        leadingZeros = digits > 0 ? HexText.eightTimes('0') & ~(-1L << spareBits) : 0;
        return digits > 0 ? read(word) : -1;
    }

    /** A mask of the first {@code count} (0 to 8) bytes of a word. */
    static long bytes(int count) {
        return count == 8 ? -1 : (1L << (count << 3)) - 1;
    }

    /** Fits nothing any more. */
    void forget() {
        marks = 0;
        markMask = -1;
    }

    boolean hasPoint() {
        return beforePoint != -1;
    }

    int digits() {
        return digits;
    }

    int fraction() {
        return fraction;
    }

    boolean isNegative() {
        return negative;
    }
}
