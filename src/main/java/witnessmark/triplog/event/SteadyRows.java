package witnessmark.triplog.event;

import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * Finds stretches of rows in which nothing can begin: driving in one gear, or standing, with the pedal up, the engine
 * between its limits or pulling little below them, the clutch holding, the oil not hot and the knob where it was. Such
 * rows are most of a log.
 */
final class SteadyRows {
    /** Safely below the slip at which a spell begins, so that rounding decides nothing. */
    private static final double SHARE_OF_SLIP = 0.9;

    private final Drive drive;

    SteadyRows(Drive drive) {
        this.drive = drive;
    }

    /** One past the last row, before {@code to}, of the stretch that begins with the row; the row itself if none does. */
    int until(RowBlock block, int[] inHand, int row, int to) {
        GearTable table = drive.table();
        int code = inHand[row];
        boolean standing = code == InHand.STANDING;
        double lowest = standing ? IdleEvents.lowestRpm(table.idleRpm()) : table.lowestPullingRpm();
        double highest = table.governedRpm() * (standing ? 1 : drive.limits().overspeedMargin());
        double lugging = drive.limits().lugLoadPercent();
        double holding = 1 - SHARE_OF_SLIP * drive.limits().slipShare();
        double slipping = standing ? Double.POSITIVE_INFINITY : table.gear(code).ratio() / holding;
        double perKmh = drive.perKmh();
        double hot = drive.limits().hotOilCelsius();
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] output = block.column(Signal.OUTPUT_SHAFT_SPEED);
        double[] input = block.column(Signal.INPUT_SHAFT_SPEED);
        double[] clutch = block.column(Signal.CLUTCH);
        double[] pedal = block.column(Signal.CLUTCH_PEDAL);
        double[] floor = block.column(Signal.CLUTCH_FLOOR);
        double[] oil = block.column(Signal.GEARBOX_OIL);
        double[] torque = block.column(Signal.ENGINE_TORQUE);
        double[] accelerator = block.column(Signal.ACCELERATOR);
        double[] takeOff = block.column(Signal.POWER_TAKE_OFF);
        double[] knob = block.column(Signal.RANGE_KNOB);
        double[] seconds = block.secondsBefore();
        int i = row;
        while (i < to
                && inHand[i] == code
                && seconds[i] > 0
                && !(engine[i] <= lowest && (standing || Moment.load(torque[i], accelerator[i]) >= lugging))
                && !(engine[i] >= highest)
                && !(engine[i] > slipping * (output[i] > 0 ? output[i] : road[i] * perKmh))
                && !Moment.isPressed(clutch[i], pedal[i])
                && !(floor[i] > 0)
                && !(input[i] > 0 && !standing && input[i] < holding * engine[i])
                && !(oil[i] > hot)
                && !(takeOff[i] > 0)
                && (knob[i] == knob[row] || Double.isNaN(knob[i]) && Double.isNaN(knob[row]))) {
            i++;
        }
        return i;
    }
}
