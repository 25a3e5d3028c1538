package witnessmark.gearbox.shift;

/**
 * How a range shift is to be judged. The bounds are judgement in the spirit of common practice; no source states them.
 */
public enum ShiftVerdict {
    PROPER("proper"),
    HARD("hard on the gearbox"),
    DESTRUCTIVE("destructive");

    /** Slip energy over that of the hardest proper shift: up to this, proper (5 % for rounding). */
    public static final double PROPER_ENERGY = 1.05;
    /** Up to this, hard: a cone lives through some such shifts. Beyond it, destructive. */
    public static final double HARD_ENERGY = 3.0;
    /** Engine or disc speed over governed: up to this, proper (1 % for reading a dial). */
    public static final double PROPER_SPEED = 1.01;
    /** Up to this, hard; beyond it valves meet pistons or a disc may burst. */
    public static final double HARD_SPEED = 1.25;

    private final String words;

    ShiftVerdict(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** By slip energy over that of the hardest proper shift alone. */
    public static ShiftVerdict ofEnergy(double multiple) {
        return multiple <= PROPER_ENERGY ? PROPER : multiple <= HARD_ENERGY ? HARD : DESTRUCTIVE;
    }

    /** By engine, disc or mainshaft speed over the highest ordinary one alone. */
    public static ShiftVerdict ofSpeed(double timesGoverned) {
        return timesGoverned <= PROPER_SPEED ? PROPER : timesGoverned <= HARD_SPEED ? HARD : DESTRUCTIVE;
    }

    ShiftVerdict orWorse(ShiftVerdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
