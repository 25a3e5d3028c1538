package witnessmark.triplog.gear;

import java.util.List;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/**
 * Takes out road speeds that no vehicle can have after the one before: more than 8 km/h and 15 m/s2 away (the hardest
 * stop on dry road is about 8 m/s2); over rows half a second and more apart, from 36 km/h a second on. After three seconds the new speed is believed.
 */
final class SpeedJumpFilter {
    private static final double FREE_KMH = 8;
    private static final double KMH_PER_SECOND = 54;
    /** The hardest stop, with something to spare: 10 m/s2. */
    private static final double BRAKED_KMH_PER_SECOND = 36;

    private static final double BELIEVED_AFTER_SECONDS = 3;

    private double lastGood = Double.NaN;
    private long lastTime;
    private boolean jumping;

    void forget() {
        lastGood = Double.NaN;
        jumping = false;
    }

    /** Makes the row's speed NaN while it cannot be; notes each jump once. */
    void pass(SignalRow row, List<CleanRows.Jump> met) {
        double speed = row.get(Signal.ROAD_SPEED);
        if (Double.isNaN(speed)) {
            return;
        }
        double away = Math.abs(speed - lastGood);
        if (!(away > FREE_KMH) || isPossible(away, row) || isBraked(speed, row)) {
            lastGood = speed;
            lastTime = row.timeMicros();
            jumping = false;
            return;
        }
        double seconds = (row.timeMicros() - lastTime) / 1e6;
        if (!jumping) {
            jumping = true;
            met.add(new CleanRows.Jump(row.timeMicros(), row.line(), lastGood, speed, seconds));
        }
        row.set(Signal.ROAD_SPEED, Double.NaN);
    }

    /** A slow log has a hard stop in one step. */
    private boolean isBraked(double speed, SignalRow row) {
        double seconds = (row.timeMicros() - lastTime) / 1e6;
        return !jumping && lastGood - speed <= BRAKED_KMH_PER_SECOND * seconds && speed < lastGood;
    }

    private boolean isPossible(double away, SignalRow row) {
        double seconds = (row.timeMicros() - lastTime) / 1e6;
        return seconds > BELIEVED_AFTER_SECONDS || away <= FREE_KMH + KMH_PER_SECOND * Math.min(seconds, 0.5);
    }
}
