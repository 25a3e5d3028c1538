package witnessmark.gearbox.exposure;

import witnessmark.gearbox.QuestionRefused;

/**
 * A stretch rolled at one speed.
 *
 * @param kmh above 0
 * @param hours above 0
 */
public record Journey(double kmh, double hours) {

    public Journey {
        if (!(kmh > 0 && kmh <= 200)) {
            throw new QuestionRefused("road speed: " + kmh + " km/h cannot be", "give above 0 to 200");
        }
        if (!(hours > 0 && hours <= 1000)) {
            throw new QuestionRefused(
                    "duration: " + hours + " h cannot be", "give a time or distance that makes above 0 to 1000 hours");
        }
    }

    public static Journey overDistance(double kmh, double km) {
        return new Journey(kmh, km / kmh);
    }

    public static Journey overMinutes(double kmh, double minutes) {
        return new Journey(kmh, minutes / 60);
    }

    public double km() {
        return kmh * hours;
    }
}
