package witnessmark.triplog.event;

import java.util.List;
import witnessmark.triplog.gear.InHand;

/**
 * Spares most rows the detectors that look at rest, at a pressed pedal or at the lever: they are asked only where a row
 * is of that kind, or follows one.
 */
final class RareEvents implements Detector {
    private static final long AFTER_REST_MICROS = 4_000_000;

    private final ClutchDropEvents drops;
    private final IdleEvents idle;
    private final DiscEvents disc;
    private final ReverseEvents reverse;
    private long lastStanding = Long.MIN_VALUE / 2;
    private boolean nearRest;
    private boolean isMoving;

    RareEvents(Drive drive, LastGears gears, LeverGears levers) {
        this.drops = new ClutchDropEvents(drive);
        this.idle = new IdleEvents(drive);
        this.disc = new DiscEvents(drive, gears, levers);
        this.reverse = new ReverseEvents(drive);
    }

    @Override
    public void row(Moment m) {
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
        }
        isMoving = m.inHand() != InHand.STANDING;
        nearRest = m.micros() - lastStanding < AFTER_REST_MICROS;
        if (nearRest) {
            drops.row(m);
            idle.row(m);
        }
        if (m.isPedalPressed() || disc.isWatching()) {
            disc.row(m);
        }
        if (!Double.isNaN(m.direction())) {
            reverse.row(m);
        }
    }

    @Override
    public boolean isOpen() {
        return nearRest && (isMoving || drops.isRevved()) || idle.isLow() || disc.isWatching();
    }

    /** The last row of a stretch of rows alike, in which nothing begins and only idling may go on. */
    void goesOn(Moment m) {
        if (m.inHand() == InHand.STANDING) {
            lastStanding = m.micros();
            idle.goesOn(m);
        }
    }

    void settled(GearRun run) {
        drops.settled(run);
    }

    @Override
    public void interrupted() {
        lastStanding = Long.MIN_VALUE / 2;
        nearRest = false;
        List.of(drops, idle, disc, reverse).forEach(Detector::interrupted);
    }
}
