package witnessmark.triplog.event;

/**
 * Where driving ends and an event begins. The usual values are common practice, no source; a shop may set its own.
 *
 * @param ceilingMargin low range above this multiple of its ceiling
 * @param overspeedMargin engine above this multiple of governed speed (a governor lets it run a little over)
 * @param coastKmh coasting in neutral from this road speed
 * @param coastSeconds and from this time
 * @param lugLoadPercent pulling hard from this pedal or torque
 * @param lugSeconds and from this time
 * @param hotOilCelsius gearbox oil hot above this; it depends on the oil
 * @param hotOilSeconds and from this time
 * @param slipShare clutch slip from this share of engine speed
 * @param slipSeconds and from this time
 * @param ridingSeconds foot on the clutch from this time
 * @param load what is known of the load
 */
public record HabitLimits(
        double ceilingMargin,
        double overspeedMargin,
        double coastKmh,
        double coastSeconds,
        double lugLoadPercent,
        double lugSeconds,
        double hotOilCelsius,
        double hotOilSeconds,
        double slipShare,
        double slipSeconds,
        double ridingSeconds,
        Load load) {

    /** Load state for starts from rest. */
    public enum Load {
        LOADED,
        EMPTY,
        UNKNOWN
    }

    public static HabitLimits usual() {
        return new HabitLimits(1.03, 1.08, 20, 6, 70, 2, 120, 60, 0.04, 1.5, 4, Load.UNKNOWN);
    }

    public HabitLimits with(Load known) {
        return new HabitLimits(
                ceilingMargin,
                overspeedMargin,
                coastKmh,
                coastSeconds,
                lugLoadPercent,
                lugSeconds,
                hotOilCelsius,
                hotOilSeconds,
                slipShare,
                slipSeconds,
                ridingSeconds,
                known);
    }
}
