package witnessmark.triplog.event;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Gathers rows into runs of one gear and hands each run on at the moment it is settled. */
final class FindRuns implements Detector {
    /** A run goes on over odd rows shorter than this, or than two and a half rows of a slow log. */
    private static final double LAPSE_SECONDS = 1.0;

    /** A pedal down for longer is a foot that rests on it. */
    private static final double RESTING_SECONDS = 3;

    private final Drive drive;
    private final StartEvents starts;
    private final Consumer<GearRun> settled;
    private @Nullable GearRun current;
    private long pedalUpMicros;

    FindRuns(Drive drive, StartEvents starts, Consumer<GearRun> settled) {
        this.drive = drive;
        this.starts = starts;
        this.settled = settled;
    }

    @Override
    public void row(Moment m) {
        if (!m.isPedalPressed()) {
            pedalUpMicros = m.micros();
        }
        // A clutch that slips at a start sweeps the ratio past many gears; none is in hand before the pedal is up.
        if (!m.isInGear() || starts.isStarting() && m.isPedalPressed()) {
            return;
        }
        GearRun run = current;
        double lapse = run == null ? 0 : (m.micros() - run.endMicros) / 1e6;
        if (run == null || run.gear != m.inHand() || lapse > Math.max(LAPSE_SECONDS, 2.5 * m.seconds())) {
            run = new GearRun(m);
            current = run;
        }
        // An engine that flares up with the pedal down may dwell where another gear would have it.
        boolean maySettle = !m.isPedalPressed() || m.micros() - pedalUpMicros > RESTING_SECONDS * 1e6;
        if (run.take(m, drive.table(), drive.perKmh(), maySettle)) {
            settled.accept(run);
        }
    }

    /** A further row of the present run from which nothing is to be learned but that the run goes on. */
    void goesOn(Moment m) {
        if (current != null && m.isInGear()) {
            current.skipTo(m);
        }
    }

    /** Whether this gear is in hand, settled and sure, so that further rows of it change nothing but the run's end. */
    boolean isSureOf(int gear) {
        return current != null && current.gear == gear && current.isSure();
    }

    /** Whether this gear is in hand and settled: further rows may make it surer, and change nothing else. */
    boolean isSettledOn(int gear) {
        return current != null && current.gear == gear && current.isSettled();
    }

    @Override
    public void interrupted() {
        current = null;
    }
}
