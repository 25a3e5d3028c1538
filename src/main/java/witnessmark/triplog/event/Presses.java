package witnessmark.triplog.event;

/** Remembers when the clutch pedal last went down, for the counting of presses in a shift. */
final class Presses implements Detector {
    private static final int KEPT = 64;
    private final long[] times = new long[KEPT];
    private int count;
    private boolean pressed;

    @Override
    public void row(Moment m) {
        boolean now = m.isPedalPressed();
        if (now && !pressed) {
            times[count++ % KEPT] = m.micros();
        }
        pressed = now;
    }

    @Override
    public void interrupted() {
        pressed = false;
    }

    int between(long fromMicros, long toMicros) {
        int found = 0;
        for (int i = 0; i < Math.min(count, KEPT); i++) {
            if (times[i] >= fromMicros && times[i] <= toMicros) {
                found++;
            }
        }
        return found;
    }
}
