package witnessmark.triplog.gear;

/**
 * One ratio of the box.
 *
 * @param name as on the knob: {@code 5}, {@code 7-over}, {@code Lo}, {@code R}
 * @param ratio input turns per output turn, above 0
 * @param range the range it needs
 * @param splitter the splitter position it needs
 * @param lever lever position: 0 for a crawler, 1 upwards, negative for reverse
 */
public record KnobGear(String name, double ratio, Range range, Splitter splitter, int lever) {
    /** Position of the range section. */
    public enum Range {
        LOW,
        HIGH,
        NONE
    }

    /** Position of the splitter. */
    public enum Splitter {
        UNDERDRIVE,
        DIRECT,
        OVERDRIVE,
        NONE
    }

    public KnobGear {
        if (!(ratio > 0.05 && ratio < 100)) {
            throw new IllegalArgumentException("gear " + name + ": ratio " + ratio + " is not between 0.05 and 100");
        }
    }

    public boolean isReverse() {
        return lever < 0;
    }

    /** Whether the splitter stands in overdrive, or the gear is one by itself. */
    public boolean isOverdrive() {
        return splitter == Splitter.OVERDRIVE || ratio < 1;
    }
}
