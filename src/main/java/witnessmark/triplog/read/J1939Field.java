package witnessmark.triplog.read;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.triplog.signal.Signal;

/**
 * Where a suspect parameter number lies in its parameter group and how its raw value is scaled
 * (SAE J1939-71 as cross-checked against several public decoders; value = raw x resolution + offset).
 */
public enum J1939Field {
    ENGINE_SPEED(61444, 190, 24, 16, 0.125, 0, Signal.ENGINE_SPEED),
    ENGINE_TORQUE(61444, 513, 16, 8, 1, -125, Signal.ENGINE_TORQUE),
    PEDAL_LOW_IDLE(61443, 558, 0, 2, 1, 0),
    ACCELERATOR(61443, 91, 8, 8, 0.4, 0, Signal.ACCELERATOR),
    DRIVELINE_ENGAGED(61442, 560, 0, 2, 1, 0),
    SHIFT_IN_PROCESS(61442, 574, 4, 2, 1, 0),
    OUTPUT_SHAFT_SPEED(61442, 191, 8, 16, 0.125, 0, Signal.OUTPUT_SHAFT_SPEED),
    CLUTCH_SLIP(61442, 522, 24, 8, 0.4, 0),
    INPUT_SHAFT_SPEED(61442, 161, 40, 16, 0.125, 0, Signal.INPUT_SHAFT_SPEED),
    SELECTED_GEAR(61445, 524, 0, 8, 1, -125),
    ACTUAL_RATIO(61445, 526, 8, 16, 0.001, 0),
    CURRENT_GEAR(61445, 523, 24, 8, 1, -125, Signal.CURRENT_GEAR),
    TWO_SPEED_AXLE(65265, 69, 0, 2, 1, 0),
    PARKING_BRAKE(65265, 70, 2, 2, 1, 0, Signal.PARKING_BRAKE),
    ROAD_SPEED(65265, 84, 8, 16, 1.0 / 256, 0, Signal.ROAD_SPEED),
    CRUISE_ACTIVE(65265, 595, 24, 2, 1, 0),
    CRUISE_ENABLED(65265, 596, 26, 2, 1, 0),
    BRAKE(65265, 597, 28, 2, 1, 0, Signal.BRAKE),
    CLUTCH(65265, 598, 30, 2, 1, 0, Signal.CLUTCH),
    CRUISE_SET_SPEED(65265, 86, 40, 8, 1, 0),
    POWER_TAKE_OFF_STATE(65265, 976, 48, 5, 1, 0),
    CRUISE_STATE(65265, 527, 53, 3, 1, 0),
    TRIP_DISTANCE(65248, 244, 0, 32, 0.125, 0),
    TOTAL_DISTANCE(65248, 245, 32, 32, 0.125, 0, Signal.DISTANCE),
    FINE_TOTAL_DISTANCE(65217, 917, 0, 32, 0.005, 0, Signal.DISTANCE),
    FINE_TRIP_DISTANCE(65217, 918, 32, 32, 0.005, 0),
    ENGINE_OIL(65262, 175, 16, 16, 1.0 / 32, -273, Signal.ENGINE_OIL),
    GEARBOX_OIL(65272, 177, 32, 16, 1.0 / 32, -273, Signal.GEARBOX_OIL);

    private static final J1939Field[] ALL = values();

    private final int pgn;
    private final int spn;
    private final int startBit;
    private final int lengthBits;
    private final double resolution;
    private final double offset;
    private final Optional<Signal> signal;
    private final int signalIndex;
    private final long mask;
    private final double lowest;
    private final double highest;

    J1939Field(int pgn, int spn, int startBit, int lengthBits, double resolution, double offset, Signal... signal) {
        this.pgn = pgn;
        this.spn = spn;
        this.startBit = startBit;
        this.lengthBits = lengthBits;
        this.resolution = resolution;
        this.offset = offset;
        this.signal = Arrays.stream(signal).findFirst();
        this.signalIndex = this.signal.map(Signal::ordinal).orElse(-1);
        this.mask = (1L << lengthBits) - 1;
        this.lowest = this.signal.map(Signal::lowest).orElse(Double.NEGATIVE_INFINITY);
        this.highest = this.signal.map(Signal::highest).orElse(Double.POSITIVE_INFINITY);
    }

    /** One field read from one frame; the value is NaN unless the status is VALID. */
    public record Reading(J1939Field field, long raw, FieldStatus status, double value) {}

    /** All known fields of the parameter group, in the order of this list. */
    public static List<J1939Field> of(int pgn) {
        return Arrays.stream(ALL).filter(f -> f.pgn == pgn).toList();
    }

    /**
     * Reads the field.
     *
     * @param data the bytes of the frame, byte 1 in the lowest eight bits
     * @param dataBytes how many bytes the frame has
     * @throws IllegalArgumentException if the frame is too short for the field
     */
    public Reading read(long data, int dataBytes) {
        if (!fitsIn(dataBytes)) {
            throw new IllegalArgumentException(words() + ": frame of " + dataBytes + " bytes is too short, "
                    + (startBit + lengthBits + 7) / 8 + " are needed");
        }
        long raw = raw(data);
        FieldStatus status = status(raw);
        return new Reading(this, raw, status, status == FieldStatus.VALID ? value(raw) : Double.NaN);
    }

    boolean fitsIn(int dataBytes) {
        return startBit + lengthBits <= dataBytes * 8;
    }

    long raw(long data) {
        return data >>> startBit & mask;
    }

    /** The cruise states are a list of their own in which 6 is a state too. */
    FieldStatus status(long raw) {
        return this == CRUISE_STATE && raw == 6 ? FieldStatus.VALID : FieldStatus.of(raw, lengthBits);
    }

    double value(long raw) {
        return raw * resolution + offset;
    }

    boolean isPlausible(double value) {
        return value >= lowest && value <= highest;
    }

    public int pgn() {
        return pgn;
    }

    public int spn() {
        return spn;
    }

    public int lengthBits() {
        return lengthBits;
    }

    public Optional<Signal> signal() {
        return signal;
    }

    /** Ordinal of the signal, or -1; for the reading of long files. */
    int signalIndex() {
        return signalIndex;
    }

    public String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
