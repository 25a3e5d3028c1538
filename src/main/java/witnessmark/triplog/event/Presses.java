package witnessmark.triplog.event;

/** Remembers when the clutch pedal last went down, for the counting of presses in a shift. */
final class Presses implements Detector {
    private static final int KEPT = 64;
    /** Between two presses the pedal is up at least about this long; rows farther apart may have missed it. */
    private static final double SURE_SECONDS = 0.25;

    private final long[] times = new long[KEPT];
    private final long[] holes = new long[KEPT];
    private int count;
    private int holeCount;
    private boolean pressed;

    @Override
    public void row(Moment m) {
        boolean now = m.isPedalPressed();
        if (!m.isPedalKnown()) {
            holes[holeCount++ % KEPT] = m.micros();
        }
        if (now && !pressed) {
            times[count++ % KEPT] = m.micros();
        }
        if (now && pressed && m.seconds() > SURE_SECONDS) {
            holes[holeCount++ % KEPT] = m.micros();
        }
        pressed = now;
    }

    @Override
    public void interrupted() {
        pressed = false;
    }

    int between(long fromMicros, long toMicros) {
        return within(times, count, fromMicros, toMicros);
    }

    /** Whether the pedal may have come up and gone down again unseen, because rows are missing. */
    boolean maybeMissed(long fromMicros, long toMicros) {
        return within(holes, holeCount, fromMicros, toMicros) > 0;
    }

    private static int within(long[] ring, int filled, long fromMicros, long toMicros) {
        int found = 0;
        for (int i = 0; i < Math.min(filled, KEPT); i++) {
            if (ring[i] >= fromMicros && ring[i] <= toMicros) {
                found++;
            }
        }
        return found;
    }
}
