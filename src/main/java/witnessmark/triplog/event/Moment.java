package witnessmark.triplog.event;

import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** The row that is looked at, moved along the block; a signal that is not given is NaN. */
final class Moment {
    private RowBlock block = new RowBlock(0);
    private int row;
    private int inHand;
    private double scatter;
    private double seconds;

    void at(RowBlock rows, int index, int code, double ratioScatter) {
        block = rows;
        row = index;
        inHand = code;
        scatter = ratioScatter;
        seconds = rows.secondsBefore(index);
    }

    double get(Signal signal) {
        return block.get(signal, row);
    }

    double kmh() {
        return block.get(Signal.ROAD_SPEED, row);
    }

    double rpm() {
        return block.get(Signal.ENGINE_SPEED, row);
    }

    /** A gear's index, or a code of {@link InHand}. */
    int inHand() {
        return inHand;
    }

    boolean isInGear() {
        return inHand >= 0;
    }

    double scatter() {
        return scatter;
    }

    /** Seconds since the row before; 0 where the record was interrupted. */
    double seconds() {
        return seconds;
    }

    boolean isAfresh() {
        return seconds == 0;
    }

    long micros() {
        return block.timeMicros(row);
    }

    long line() {
        return block.line(row);
    }

    /** Pedal or torque in per cent, NaN if the log has neither. */
    double load() {
        double torque = get(Signal.ENGINE_TORQUE);
        double pedal = get(Signal.ACCELERATOR);
        return Double.isNaN(torque) ? pedal : Double.isNaN(pedal) ? torque : Math.max(torque, pedal);
    }

    /** Whether the clutch pedal is pressed; false also where the log cannot say. */
    boolean isPedalPressed() {
        return get(Signal.CLUTCH) > 0.5 || get(Signal.CLUTCH_PEDAL) > 15;
    }

    /** Output shaft speed in rpm, from the shaft's own sensor or from road speed. */
    double outputRpm(double perKmh) {
        double shaft = get(Signal.OUTPUT_SHAFT_SPEED);
        return shaft > 0 ? shaft : kmh() * perKmh;
    }
}
