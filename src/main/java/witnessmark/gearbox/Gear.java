package witnessmark.gearbox;

/**
 * One ratio of the whole box.
 *
 * @param id short name: L, 3, 5d (direct), 5o (overdrive), 5u (underdrive), Rl and Rh (reverse in low and high range)
 * @param title the same in words
 * @param auxiliaryRatio turns of the mainshaft to one turn of the output: range times splitter
 */
public record Gear(String id, String title, Lever lever, Range range, Split split, double auxiliaryRatio) {

    /** Turns of the input to one turn of the output shaft. */
    public double ratio() {
        return lever.ratio() * auxiliaryRatio;
    }

    /** Turns of the mainshaft to one turn of the auxiliary's input, as the splitter stands; 1 in direct. */
    public double splitRatio(TruckProfile truck) {
        return split == Split.SPLIT ? truck.splitter().orElseThrow().ratio() : 1;
    }

    public boolean reverse() {
        return lever.kind() == Lever.Kind.REVERSE;
    }
}
