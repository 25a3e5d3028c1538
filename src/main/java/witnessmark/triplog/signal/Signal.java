package witnessmark.triplog.signal;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import witnessmark.gearbox.Unit;

/** A signal that a trip log may carry. A switch is 0 or 1; values outside the plausible range count as not given. */
public enum Signal {
    ENGINE_SPEED(Unit.RPM, 0, 8031.875),
    ROAD_SPEED(Unit.KILOMETRE_PER_HOUR, 0, 250.996),
    OUTPUT_SHAFT_SPEED(Unit.RPM, 0, 8031.875),
    INPUT_SHAFT_SPEED(Unit.RPM, 0, 8031.875),
    /** 1 while the pedal is pressed; it does not say how far. */
    CLUTCH(0, 1),
    /** Pedal travel, 100 at the floor. */
    CLUTCH_PEDAL(Unit.PERCENT, 0, 100),
    /** 1 while the pedal stands at the floor (where the clutch brake bites). */
    CLUTCH_FLOOR(0, 1),
    BRAKE(0, 1),
    PARKING_BRAKE(0, 1),
    ACCELERATOR(Unit.PERCENT, 0, 100),
    ENGINE_TORQUE(Unit.PERCENT, -125, 125),
    /** Forward gears from 1, neutral 0, reverse negative, as an electronic gearbox reports it. */
    CURRENT_GEAR(-16, 32),
    DISTANCE(Unit.KILOMETRE, 0, 1e7),
    GEARBOX_OIL(Unit.CELSIUS, -60, 250),
    ENGINE_OIL(Unit.CELSIUS, -60, 250),
    /** The range knob on the lever, what the hand asks for: 0 low, 1 high. */
    RANGE_KNOB(0, 1),
    /** Where the lever stands: 0 neutral, negative reverse, positive a gear position. */
    LEVER(-2, 12),
    GROSS_MASS(Unit.KILOGRAM, 0, 300_000),
    /** 1 while the power take-off is engaged, from its own switch; the governor's state on the bus is not that. */
    POWER_TAKE_OFF(0, 1),
    /** 1 while the lever stands in neutral, from a switch of its own; in gear it does not say in which. */
    NEUTRAL_SWITCH(0, 1),
    /** 1 while reverse is in, from a switch of its own. */
    REVERSE_SWITCH(0, 1);

    private final Optional<Unit> unit;
    private final double lowest;
    private final double highest;

    Signal(double lowest, double highest) {
        this.unit = Optional.empty();
        this.lowest = lowest;
        this.highest = highest;
    }

    Signal(Unit unit, double lowest, double highest) {
        this.unit = Optional.of(unit);
        this.lowest = lowest;
        this.highest = highest;
    }

    private static final Signal[] ALL = values();

    public static int count() {
        return ALL.length;
    }

    public static Signal at(int ordinal) {
        return ALL[ordinal];
    }

    /** The unit in which rows hold the signal; empty for switches and positions. */
    public Optional<Unit> unit() {
        return unit;
    }

    public boolean isPlausible(double value) {
        return value >= lowest && value <= highest;
    }

    public double lowest() {
        return lowest;
    }

    public double highest() {
        return highest;
    }

    /** The name in mapping files: {@code engine-speed}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The name in sentences: {@code engine speed}. */
    public String words() {
        return this == POWER_TAKE_OFF
                ? "power take-off"
                : name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    public static Optional<Signal> named(String id) {
        return Arrays.stream(ALL).filter(s -> s.id().equals(id)).findFirst();
    }
}
