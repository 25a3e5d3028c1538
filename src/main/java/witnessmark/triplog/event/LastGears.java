package witnessmark.triplog.event;

import org.jspecify.annotations.Nullable;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;

/** The three last settled runs, for detectors that ask what was in hand a moment ago. */
final class LastGears {
    @Nullable
    GearRun beforeThat;

    @Nullable
    GearRun previous;

    @Nullable
    GearRun current;

    void settled(GearRun run) {
        beforeThat = previous;
        previous = current;
        current = run;
    }

    /**
     * The run of a shorter gear of the same lever position that lay between two runs of one gear, if it may have been a
     * clutch that slipped as much as a split; null if there was none, or if it was a split down and up again.
     */
    @Nullable
    GearRun slipBetween(GearTable table) {
        GearRun middle = previous;
        if (beforeThat == null || middle == null || current == null || beforeThat.gear != current.gear) {
            return null;
        }
        KnobGear outer = table.gear(current.gear);
        KnobGear inner = table.gear(middle.gear);
        boolean split = outer.lever() == inner.lever() && outer.range() == inner.range();
        boolean dogs = middle.followsTheWheels() || middle.coasted();
        return split && inner.ratio() > outer.ratio() && !dogs ? middle : null;
    }

    /** Whether the last settled run is of this gear. */
    boolean isCurrent(int gear) {
        return current != null && current.gear == gear;
    }

    void forget() {
        beforeThat = null;
        previous = null;
        current = null;
    }
}
