package witnessmark.triplog.read;

/** What a J1939 field says of itself, by the ranges of SAE J1939-71 for its length. */
public enum FieldStatus {
    VALID,
    PARAMETER_SPECIFIC,
    RESERVED,
    ERROR,
    NOT_AVAILABLE;

    /**
     * For 8, 16 and 32 bits the top byte decides (FB specific, FC and FD reserved, FE error, FF not available);
     * for shorter fields the highest value is "not available" and, from 2 bits, the one below it "error".
     */
    static FieldStatus of(long raw, int lengthBits) {
        if (lengthBits < 8) {
            long top = (1L << lengthBits) - 1;
            return raw == top ? NOT_AVAILABLE : raw == top - 1 ? ERROR : VALID;
        }
        int high = (int) (raw >>> (lengthBits - 8)) & 0xFF;
        return switch (high) {
            case 0xFF -> NOT_AVAILABLE;
            case 0xFE -> ERROR;
            case 0xFD, 0xFC -> RESERVED;
            case 0xFB -> PARAMETER_SPECIFIC;
            default -> VALID;
        };
    }
}
