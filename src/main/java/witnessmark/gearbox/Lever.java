package witnessmark.gearbox;

/**
 * A position of the lever, which picks one ratio of the front section.
 *
 * @param number 1 for the lowest repeating gear and up; 0 for the extra low gear and for reverse
 * @param ratio turns of the input to one turn of the mainshaft; reverse too counts positive
 */
public record Lever(Kind kind, int number, double ratio) {

    public enum Kind {
        /** The extra gear that is used in low range only. */
        LOW,
        MAIN,
        REVERSE
    }

    public String name() {
        return switch (kind) {
            case LOW -> "L";
            case MAIN -> String.valueOf(number);
            case REVERSE -> "R";
        };
    }
}
