package witnessmark.gearbox;

/**
 * A letter of the formulas and what it stands for in one question.
 *
 * @param symbol as the formulas write it
 * @param meaning in words
 */
public record Symbol(String symbol, String meaning, Figure figure) {

    /** A number of the truck's profile. */
    public static Symbol of(TruckProfile truck, String symbol, Parameter parameter) {
        return new Symbol(symbol, parameter.meaning(), truck.figure(parameter));
    }
}
