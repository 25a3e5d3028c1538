package witnessmark.triplog.read;

/** Why a line, or one value in it, could not be used. */
public enum BrokenKind {
    LINE_TOO_LONG("line longer than 16,384 bytes, skipped"),
    NOT_TEXT("line holds bytes that are not text, skipped"),
    TOO_FEW_COLUMNS("line has too few columns, skipped"),
    BAD_TIME("time is not in the form of the mapping, line skipped"),
    BAD_NUMBER("value is not a number, that value left out"),
    OUT_OF_RANGE("value no vehicle can have, that value left out"),
    NOT_A_FRAME("line is not a CAN frame, skipped"),
    BAD_IDENTIFIER("identifier above 1FFFFFFF or not hexadecimal, skipped"),
    BAD_DATA("frame data is not pairs of hexadecimal digits, at most 8 bytes, skipped"),
    WIDER_FRAME("frame of the wider CAN FD form, which is not read, skipped"),
    SHORT_FRAME("frame too short for its signal, that value left out"),
    CUT_OFF("file ends in the middle of a line or of the compressed data");

    private final String words;

    BrokenKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
