package witnessmark.triplog.event;

/** The last road speed that was given, for a row without one; after a while it says nothing of the truck any more. */
final class LastSpeed {
    private static final long LONGEST_MICROS = 1_000_000;

    private double kmh = Double.NaN;
    private long givenMicros;

    /** Road speed of the row, or else the last one if it was given a moment ago; NaN if neither is known. */
    double at(Moment m) {
        if (!Double.isNaN(m.kmh())) {
            kmh = m.kmh();
            givenMicros = m.micros();
        } else if (m.micros() - givenMicros > LONGEST_MICROS) {
            kmh = Double.NaN;
        }
        return kmh;
    }

    void forget() {
        kmh = Double.NaN;
    }
}
