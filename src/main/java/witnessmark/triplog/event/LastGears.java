package witnessmark.triplog.event;

import org.jspecify.annotations.Nullable;

/** The two last settled runs, for detectors that ask what was in hand a moment ago. */
final class LastGears {
    @Nullable
    GearRun previous;

    @Nullable
    GearRun current;

    void settled(GearRun run) {
        previous = current;
        current = run;
    }

    void forget() {
        previous = null;
        current = null;
    }
}
