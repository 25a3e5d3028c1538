package witnessmark.triplog.event;

import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.TrackGears;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** The row that is looked at, moved along the block; a signal that is not given is NaN. */
final class Moment {
    static final double PRESSED_PERCENT = TrackGears.PRESSED_PERCENT;
    private static final double NEAR_IDLE = 1.3;
    private static final double ABOVE_IDLE = 1.12;

    private final Trust trust;
    private final double idleRpm;
    private RowBlock block = new RowBlock(0);
    private double[] road = {};
    private double[] engine = {};
    private double[] shaft = {};
    private double[] clutch = {};
    private double[] clutchPedal = {};
    /** The same as far as they are believed, else NaN throughout. */
    private double[] believedClutch = {};

    private double[] believedPedal = {};
    private double[] torque = {};
    private double[] accelerator = {};
    private int row;
    private int inHand;
    private double scatter;
    private double seconds;
    private double kmh;
    private double rpm;
    private double load;
    private boolean pedalPressed;
    private boolean pedalKnown;
    private boolean clutchBelieved;
    private boolean clutchPedalBelieved;
    private boolean leverGiven;

    Moment(Trust trust, double idleRpm) {
        this.trust = trust;
        this.idleRpm = idleRpm;
    }

    /** The rows that are looked at from here on. */
    void over(RowBlock rows) {
        trust.over(rows);
        boolean contradicted = trust.clutchDoubt().isPresent();
        clutchBelieved = !contradicted && trust.changes(Signal.CLUTCH);
        clutchPedalBelieved = !contradicted && trust.changes(Signal.CLUTCH_PEDAL);
        leverGiven = rows.gives(Signal.LEVER)
                || rows.gives(Signal.CURRENT_GEAR)
                || rows.gives(Signal.NEUTRAL_SWITCH)
                || rows.gives(Signal.REVERSE_SWITCH);
        block = rows;
        road = rows.column(Signal.ROAD_SPEED);
        engine = rows.column(Signal.ENGINE_SPEED);
        shaft = rows.column(Signal.OUTPUT_SHAFT_SPEED);
        clutch = rows.column(Signal.CLUTCH);
        clutchPedal = rows.column(Signal.CLUTCH_PEDAL);
        believedClutch = clutchBelieved ? clutch : rows.absent();
        believedPedal = clutchPedalBelieved ? clutchPedal : rows.absent();
        torque = rows.column(Signal.ENGINE_TORQUE);
        accelerator = rows.column(Signal.ACCELERATOR);
    }

    /** Moves on; what nearly all detectors ask is looked up once. */
    void at(int index, int code, double ratioScatter) {
        row = index;
        inHand = code;
        scatter = ratioScatter;
        seconds = block.secondsBefore(index);
        kmh = road[index];
        rpm = engine[index];
        pedalPressed = isPedalPressedAt(index);
        pedalKnown = !Double.isNaN(believedClutch[index]) || !Double.isNaN(believedPedal[index]);
        if (code == InHand.PEDAL_DOWN && !pedalPressed) {
            inHand = rpm < NEAR_IDLE * idleRpm ? InHand.NEUTRAL : InHand.CANNOT_TELL;
        }
        load = load(torque[index], accelerator[index]);
    }

    /** The larger of torque and pedal in per cent, either NaN where not given. */
    static double load(double torque, double pedal) {
        return Double.isNaN(torque) ? pedal : pedal > torque ? pedal : torque;
    }

    /** Whether the clutch is pressed by its switch or by the pedal's travel, either NaN where not given. */
    static boolean isPressed(double clutch, double pedal) {
        return clutch > 0.5 || pedal > PRESSED_PERCENT;
    }

    /** Whether the clutch is pressed in a row of the block and that is believed. */
    boolean isPedalPressedAt(int index) {
        return isPressed(believedClutch[index], believedPedal[index]);
    }

    /** The column of the clutch switch, NaN throughout where it is not believed. */
    double[] believedClutch() {
        return believedClutch;
    }

    /** The column of the clutch pedal's travel, NaN throughout where it is not believed. */
    double[] believedPedal() {
        return believedPedal;
    }

    /** NaN also while the signal has never changed though it should. */
    double get(Signal signal) {
        return trust.changes(signal) ? block.get(signal, row) : Double.NaN;
    }

    /** Whether the log has the pedal down, believed or not. */
    boolean isPedalShownPressed() {
        return isPressed(clutch[row], clutchPedal[row]);
    }

    /**
     * Where the lever stands: 0 neutral, below 0 reverse, above 0 in gear, by its own signal, the gear that the truck
     * reports, or the switches at the lever; NaN if none tells whether it is in neutral. A neutral switch alone does not
     * tell reverse from a forward gear.
     */
    double leverPosition() {
        if (!leverGiven) {
            return Double.NaN;
        }
        if (get(Signal.REVERSE_SWITCH) > 0.5) {
            return -1;
        }
        double neutral = get(Signal.NEUTRAL_SWITCH);
        if (neutral > 0.5) {
            return 0;
        }
        double lever = get(Signal.LEVER);
        double position = Double.isNaN(lever) ? get(Signal.CURRENT_GEAR) : lever;
        return Double.isNaN(position) && neutral <= 0.5 ? 1 : position;
    }

    /** Whether reverse is in (below 0), neutral (0), or neither; NaN if the log has nothing that would show reverse. */
    double direction() {
        if (!leverGiven) {
            return Double.NaN;
        }
        double reverse = get(Signal.REVERSE_SWITCH);
        double lever = get(Signal.LEVER);
        boolean told = !Double.isNaN(reverse) || !Double.isNaN(lever) || !Double.isNaN(get(Signal.CURRENT_GEAR));
        if (!told) {
            return Double.NaN;
        }
        double position = leverPosition();
        return Double.isNaN(position) ? 1 : position;
    }

    double kmh() {
        return kmh;
    }

    double rpm() {
        return rpm;
    }

    boolean isAboveIdle() {
        return rpm > ABOVE_IDLE * idleRpm;
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
        return load;
    }

    /** Whether the clutch pedal is pressed; false also where the log cannot say or is not believed. */
    boolean isPedalPressed() {
        return pedalPressed;
    }

    /** Whether the log gives the clutch pedal here, believed or not. */
    boolean isPedalGiven() {
        return !Double.isNaN(clutch[row]) || !Double.isNaN(clutchPedal[row]);
    }

    /** Whether the log says anything of the clutch pedal here that can be believed. */
    boolean isPedalKnown() {
        return pedalKnown;
    }

    /** Output shaft speed in rpm, from the shaft's own sensor or from road speed. */
    double outputRpm(double perKmh) {
        return shaft[row] > 0 ? shaft[row] : kmh * perKmh;
    }
}
