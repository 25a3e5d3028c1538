package witnessmark.triplog.read;

import java.util.Locale;
import java.util.OptionalInt;

/**
 * A 29-bit CAN identifier taken apart as SAE J1939-21 lays it out: priority 3 bits, extended data page, data page,
 * PDU format 8, PDU specific 8, source address 8.
 */
public record J1939Id(int priority, int extendedDataPage, int dataPage, int format, int specific, int source) {
    static final int HIGHEST = 0x1FFF_FFFF;
    private static final int FIRST_BROADCAST_FORMAT = 240;

    /** @throws IllegalArgumentException above 1FFFFFFF */
    public static J1939Id of(long id) {
        if (id < 0 || id > HIGHEST) {
            throw new IllegalArgumentException(
                    "CAN identifier " + Long.toHexString(id).toUpperCase(Locale.ROOT) + " is above 1FFFFFFF");
        }
        int bits = (int) id;
        return new J1939Id(
                bits >>> 26 & 7, bits >>> 25 & 1, bits >>> 24 & 1, bits >>> 16 & 255, bits >>> 8 & 255, bits & 255);
    }

    /** The parameter group number; the destination of an addressed group does not enter it. */
    public int pgn() {
        return extendedDataPage << 17 | dataPage << 16 | format << 8 | (isBroadcast() ? specific : 0);
    }

    public boolean isBroadcast() {
        return format >= FIRST_BROADCAST_FORMAT;
    }

    /** Whom the frame is for (255 all); empty for a broadcast group. */
    public OptionalInt destination() {
        return isBroadcast() ? OptionalInt.empty() : OptionalInt.of(specific);
    }

    /** The same number as {@link #pgn()} without an object, for the reading of long files. */
    static int pgnOf(int id) {
        int group = id >>> 8 & 0x3FFFF;
        return (group >>> 8 & 255) >= FIRST_BROADCAST_FORMAT ? group : group & 0x3FF00;
    }
}
