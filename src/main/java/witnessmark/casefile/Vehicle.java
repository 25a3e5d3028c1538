package witnessmark.casefile;

import java.util.OptionalDouble;

/**
 * The truck the gearbox came from, as far as the case says; texts are empty where not said.
 *
 * @param unit the fleet's own name for the truck
 * @param serial serial number of the gearbox or truck, free text
 * @param duty what the truck does, in plain words
 * @param odometerKm odometer reading, km
 * @param kmSinceNew distance of this gearbox since new, km
 * @param kmSinceRepair distance since the gearbox was last repaired, km
 * @param repairNote what that repair was
 */
public record Vehicle(
        String unit,
        String serial,
        String duty,
        OptionalDouble odometerKm,
        OptionalDouble kmSinceNew,
        OptionalDouble kmSinceRepair,
        String repairNote) {
    private static final double FARTHEST_KM = 100_000_000;

    public Vehicle {
        unit = CheckedText.line("unit", unit);
        serial = CheckedText.line("serial", serial);
        duty = CheckedText.free("duty", duty);
        odometerKm = checked("odometer-km", odometerKm);
        kmSinceNew = checked("km-since-new", kmSinceNew);
        kmSinceRepair = checked("km-since-repair", kmSinceRepair);
        repairNote = CheckedText.free("repair-note", repairNote);
    }

    /** A truck of which nothing is known. */
    public static Vehicle unknown() {
        return named("");
    }

    /** A truck of which only the fleet's name for it is known. */
    public static Vehicle named(String unit) {
        return new Vehicle(unit, "", "", OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), "");
    }

    private static OptionalDouble checked(String field, OptionalDouble km) {
        if (km.isEmpty()) {
            return km;
        }
        double value = PlainNumber.checked(field, km.getAsDouble());
        if (value < 0 || value > FARTHEST_KM) {
            throw new CaseRefused(
                    field + ": " + PlainNumber.of(value) + " is not a distance a truck has run",
                    "give km from 0 to " + PlainNumber.of(FARTHEST_KM));
        }
        return OptionalDouble.of(value);
    }
}
