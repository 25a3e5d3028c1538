package witnessmark.casefile;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.OptionalDouble;

/**
 * What the same measure was on the same unit before, as an earlier oil sample.
 *
 * @param value in the unit of the measurement it stands beside
 * @param day the day it was taken
 * @param odometerKm what the odometer showed then, empty where nobody wrote it down
 */
public record EarlierSample(double value, LocalDate day, OptionalDouble odometerKm) {
    public EarlierSample {
        value = PlainNumber.checked("earlier value", value);
        if (odometerKm.isPresent()) {
            odometerKm = OptionalDouble.of(PlainNumber.checked("odometer-km", odometerKm.getAsDouble()));
            if (odometerKm.getAsDouble() < 0) {
                throw new CaseRefused(
                        "odometer-km: " + PlainNumber.of(odometerKm.getAsDouble()) + " is below zero",
                        "give what the odometer showed when the sample was taken");
            }
        }
    }

    /**
     * The day that a word names.
     *
     * @throws CaseRefused if it names none
     */
    public static LocalDate dayOf(String word) {
        try {
            return LocalDate.parse(word);
        } catch (DateTimeParseException e) {
            throw new CaseRefused(
                    "earlier sample: '" + CheckedText.shown(word) + "' is no day",
                    "write the day it was taken as year-month-day, such as 2026-03-14");
        }
    }
}
