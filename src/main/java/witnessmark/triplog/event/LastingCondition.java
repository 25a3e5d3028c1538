package witnessmark.triplog.event;

import java.util.function.Consumer;

/**
 * A condition that holds for a while. A lapse shorter than the patience does not end it; when it ends, it is handed on
 * if it lasted long enough and rests on at least two rows.
 */
final class LastingCondition {
    private final double leastSeconds;
    private final double patienceSeconds;
    private final Consumer<LastingCondition> ended;

    private boolean open;
    long startMicros;
    long endMicros;
    long firstLine;
    long lastLine;
    int rows;
    double km;
    double highestKmh;
    double startKmh;
    double endKmh;
    double startRpm;
    double endRpm;
    double highestRpm;
    double lowestRpm;
    /** Largest and summed value of what the detector measures in the spell. */
    double peak;

    double integral;
    int gear;

    LastingCondition(double leastSeconds, double patienceSeconds, Consumer<LastingCondition> ended) {
        this.leastSeconds = leastSeconds;
        this.patienceSeconds = patienceSeconds;
        this.ended = ended;
    }

    void look(Moment m, boolean holds, double measure) {
        if (holds) {
            if (!open) {
                begin(m);
            }
            take(m, measure);
        } else if (open && (m.micros() - endMicros) / 1e6 > patienceSeconds) {
            end();
        }
    }

    private void begin(Moment m) {
        open = true;
        startMicros = m.micros();
        firstLine = m.line();
        rows = 0;
        km = 0;
        startKmh = m.kmh();
        startRpm = m.rpm();
        highestKmh = 0;
        highestRpm = 0;
        lowestRpm = Double.POSITIVE_INFINITY;
        peak = Double.NEGATIVE_INFINITY;
        integral = 0;
        gear = m.inHand();
    }

    private void take(Moment m, double measure) {
        double since = rows == 0 ? 0 : (m.micros() - endMicros) / 1e6;
        endMicros = m.micros();
        lastLine = m.line();
        endKmh = m.kmh();
        endRpm = m.rpm();
        rows++;
        if (!Double.isNaN(m.kmh())) {
            km += m.kmh() * since / 3600;
            highestKmh = Math.max(highestKmh, m.kmh());
        }
        if (!Double.isNaN(m.rpm())) {
            highestRpm = Math.max(highestRpm, m.rpm());
            lowestRpm = Math.min(lowestRpm, m.rpm());
        }
        peak = Math.max(peak, measure);
        integral += measure * since;
    }

    void end() {
        if (open && rows >= 2 && seconds() >= leastSeconds) {
            ended.accept(this);
        }
        open = false;
    }

    boolean isOpen() {
        return open;
    }

    HabitEvent.Stretch stretch() {
        return new HabitEvent.Stretch(startMicros, seconds(), firstLine, lastLine, highestKmh, highestRpm);
    }

    double seconds() {
        return (endMicros - startMicros) / 1e6;
    }
}
