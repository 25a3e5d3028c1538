package witnessmark.shell.truck;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;

/** Reads the words by which commands tell of a truck on the road: its speed, mass and grade. */
final class RoadOptions {
    private RoadOptions() {}

    /** In km/h; a bare number is in {@code unit}. */
    static Figure speed(String option, String word, String unit) {
        if (word.isEmpty()) {
            throw new WrongUsage(
                    option + " is missing", "give a road speed, as in " + option + " 60 or " + option + " 37mph");
        }
        Unit plain = Unit.parse(unit)
                .filter(u -> u.quantity() == Unit.Quantity.SPEED)
                .orElseThrow(() -> new WrongUsage(
                        "--unit '" + Terminal.harmless(unit) + "' is not a unit of speed", "km/h or mph"));
        return Figure.given(
                TypedFigure.quantity(option, word, plain, Unit.KILOMETRE_PER_HOUR), Unit.KILOMETRE_PER_HOUR);
    }

    /** The profile's own mass for "empty" and "loaded"; a bare number is in kilograms. */
    static Figure mass(TruckProfile truck, String word) {
        return switch (word) {
            case "empty" -> truck.figure(Parameter.MASS_EMPTY);
            case "loaded" -> truck.figure(Parameter.MASS_LOADED);
            default -> {
                double kg = TypedFigure.quantity("--mass", word, Unit.KILOGRAM, Unit.KILOGRAM);
                if (kg > 0 && kg < 500) {
                    throw new WrongUsage(
                            "--mass '" + Terminal.harmless(word) + "' is too little for a truck",
                            "give kilograms, or pounds with lb behind, not tonnes");
                }
                yield Figure.given(kg, Unit.KILOGRAM);
            }
        };
    }

    /** In per cent; the profile's own where none is given. */
    static Figure grade(TruckProfile truck, Parameter usual, String word) {
        return word.isEmpty()
                ? truck.figure(usual)
                : Figure.given(TypedFigure.quantity("--grade", word, Unit.PERCENT, Unit.PERCENT), Unit.PERCENT);
    }
}
