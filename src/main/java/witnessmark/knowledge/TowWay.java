package witnessmark.knowledge;

import java.util.Set;

/** How a truck, or its gearbox alone, is moved; each way has its own reminders besides those of every tow. */
public enum TowWay {
    /** On a trailer, nothing turning. */
    HAULED,
    /** All drive axles lifted. */
    LIFTED,
    /** Drive axles on the ground, their shafts pulled. */
    SHAFTS,
    /** Drive axles on the ground, the driveline taken off. */
    DRIVELINE,
    /** The gearbox alone, out of its truck. */
    LOOSE;

    /** Those in which the truck goes as a whole. */
    public static final Set<TowWay> OF_TRUCK = Set.of(HAULED, LIFTED, SHAFTS, DRIVELINE);
}
