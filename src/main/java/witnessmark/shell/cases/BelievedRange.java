package witnessmark.shell.cases;

import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.knowledge.Measure;

/** From where to where the values of a measure reach, in words. */
public final class BelievedRange {
    private BelievedRange() {}

    /** The bounds in the unit that the shop reads. */
    public static String of(Measure.Bounds bounds, Measure measure, Units units) {
        Unit own = measure.unit();
        return (Double.isInfinite(bounds.from()) ? "" : "from " + units.read(bounds.from(), own) + " ")
                + (Double.isInfinite(bounds.to()) ? "on" : "to " + units.read(bounds.to(), own));
    }
}
