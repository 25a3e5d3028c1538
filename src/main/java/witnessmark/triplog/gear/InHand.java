package witnessmark.triplog.gear;

/** What is in hand at a moment, where it is no gear; a gear is its index in the table, 0 or more. */
public final class InHand {
    /** Rolling, engine near idle, no ratio fits, pedal up or unknown. */
    public static final int NEUTRAL = -1;
    /** Rolling, no ratio fits, pedal down. */
    public static final int PEDAL_DOWN = -2;

    public static final int STANDING = -3;
    /** Rolling with the engine stopped. */
    public static final int ENGINE_OFF = -4;
    /** No ratio fits and the engine is above idle (between gears or slipping), or a speed is missing. */
    public static final int CANNOT_TELL = -5;

    private InHand() {}

    /** The word for tables: the gear's name, or what is in hand instead. */
    public static String word(GearTable table, int code) {
        return switch (code) {
            case NEUTRAL -> "neutral";
            case PEDAL_DOWN -> "pedal down";
            case STANDING -> "standing";
            case ENGINE_OFF -> "engine off";
            case CANNOT_TELL -> "cannot tell";
            default -> table.gear(code).name();
        };
    }
}
