package witnessmark.triplog.read;

/**
 * Hexadecimal and decimal digits eight at a time: the eight bytes of a text in one long, the first in the lowest byte.
 * Each byte is worked on in its own lane; no lane carries into the next because every sum stays below 256.
 */
final class HexText {
    private static final long LANES = 0x0101010101010101L;
    private static final long TOP_BITS = LANES << 7;
    private static final long UPPER = LANES * 0xF0;
    private static final long EVERY_FOURTH = 0x000000FF000000FFL;

    private HexText() {}

    /** Whether all eight bytes are hexadecimal digits, upper or lower case. */
    static boolean isHex(long text) {
        long folded = text | LANES * 0x20;
        long fromZero = text + LANES * (0x80 - '0');
        long afterNine = folded + LANES * (0x80 - '9' - 1);
        long fromA = folded + LANES * (0x80 - 'a');
        long afterF = folded + LANES * (0x80 - 'f' - 1);
        long good = fromZero & (~afterNine | fromA) & ~afterF & ~text;
        return (good & TOP_BITS) == TOP_BITS;
    }

    /** The four values 0 to 15 of each digit, one in each lane; for hexadecimal digits only. */
    private static long nibbles(long text) {
        long letters = text >>> 6 & LANES;
        return (text & LANES * 15) + letters * 9;
    }

    /** Four bytes from eight hexadecimal digits, the first byte lowest. */
    static long bytes(long text) {
        long nibbles = nibbles(text);
        long pairs = (nibbles << 4 | nibbles >>> 8) & 0x00FF00FF00FF00FFL;
        long words = (pairs | pairs >>> 8) & 0x0000FFFF0000FFFFL;
        return (words | words >>> 16) & 0xFFFFFFFFL;
    }

    /** The number that eight hexadecimal digits write, the first digit highest. */
    static long value(long text) {
        return Integer.reverseBytes((int) bytes(text)) & 0xFFFFFFFFL;
    }

    /** The number that eight decimal digits write, or -1 if one of the bytes is no digit. */
    static long digits(long text) {
        // A digit is 0x30 to 0x39: its upper half is 3, and still is when 6 is added.
        if ((text & UPPER | (text + LANES * 6 & UPPER) >>> 4) != LANES * 0x33) {
            return -1;
        }
        long values = text & LANES * 15;
        long pairs = values * 10 + (values >>> 8);
        return (pairs & EVERY_FOURTH) * (100L + (1_000_000L << 32))
                        + (pairs >>> 16 & EVERY_FOURTH) * (1L + (10_000L << 32))
                >>> 32;
    }

    /** The number that the first {@code count} (1 to 8) of eight bytes write in decimal digits, or -1. */
    static long digits(long text, int count) {
        int spare = 64 - (count << 3);
        return digits(text << spare | (LANES * '0' >>> 1) >>> (63 - spare));
    }

    static long eightTimes(int character) {
        return LANES * (character & 255);
    }

    /** A mark in the top bit of the lowest byte that is zero; nothing below it is marked. */
    static long firstZero(long text) {
        return (text - LANES) & ~text & TOP_BITS;
    }
}
