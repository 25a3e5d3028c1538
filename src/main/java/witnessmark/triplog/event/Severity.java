package witnessmark.triplog.event;

/** How hard an event was on the truck, from its figure: below 1 light, below 2 serious, else severe. */
public enum Severity {
    LIGHT,
    SERIOUS,
    SEVERE;

    public static Severity of(double figure) {
        return figure < 1 ? LIGHT : figure < 2 ? SERIOUS : SEVERE;
    }
}
