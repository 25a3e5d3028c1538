package witnessmark.triplog.road;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.signal.Signal;

/** Takes a log of a drive: at a rate, with some of the signals, in a style, with the faults of real recorders. */
final class RoadLog {
    static final double[] RATES = {1, 2, 5, 10, 20};

    /** Sets off a stretch in which a signal stands still. */
    record Frozen(Signal signal, double from, double to) {}

    private record Field(
            String name, String unit, double factor, double addend, int decimals, boolean flipped, boolean word) {}

    private final RoadDriver drive;
    private final Random random;
    final double hertz;
    final Set<Signal> given = EnumSet.noneOf(Signal.class);
    final Style style;
    final Optional<Frozen> frozen;
    private final boolean faults;
    private final double rpmStep;
    private final double kmhStep;
    private final double lag;

    /** Ways in which recorders write their columns. */
    enum Style {
        SNAKE,
        SHORT,
        BRACKETS,
        GERMAN,
        CAMEL,
        CANDUMP
    }

    RoadLog(RoadDriver drive, long seed, double hertz, Style style, boolean faults) {
        this.drive = drive;
        this.random = new Random(seed * 1009 + 3);
        this.hertz = hertz;
        this.style = style;
        this.faults = faults;
        double[] rpmSteps = {0.125, 1, 1, 5};
        double[] kmhSteps = {1 / 256.0, 0.1, 0.1, 0.5};
        this.rpmStep = style == Style.CANDUMP ? 0.125 : rpmSteps[random.nextInt(4)];
        this.kmhStep = style == Style.CANDUMP ? 1 / 256.0 : kmhSteps[random.nextInt(4)];
        this.lag = 0.15 * random.nextDouble();
        choose();
        double end = drive.t;
        double from = random.nextDouble() * end;
        Signal[] may = {Signal.ROAD_SPEED, Signal.ENGINE_SPEED, Signal.CLUTCH, Signal.ACCELERATOR};
        Signal signal = may[random.nextInt(4)];
        this.frozen = faults && random.nextDouble() < 0.25 && given.contains(signal)
                ? Optional.of(new Frozen(signal, from, from + 20 + 280 * random.nextDouble()))
                : Optional.empty();
    }

    private void choose() {
        given.add(Signal.ENGINE_SPEED);
        given.add(Signal.ROAD_SPEED);
        add(Signal.CLUTCH, 0.75);
        add(Signal.ACCELERATOR, 0.85);
        add(Signal.ENGINE_TORQUE, 0.4);
        add(Signal.BRAKE, 0.6);
        add(Signal.PARKING_BRAKE, 0.4);
        add(Signal.GEARBOX_OIL, 0.5);
        add(Signal.OUTPUT_SHAFT_SPEED, 0.2);
        if (style != Style.CANDUMP) {
            add(Signal.CLUTCH_PEDAL, 0.3);
            add(Signal.RANGE_KNOB, 0.6);
            if (style == Style.SHORT || style == Style.CAMEL) {
                add(Signal.NEUTRAL_SWITCH, 0.7);
                add(Signal.REVERSE_SWITCH, 0.6);
            } else {
                add(Signal.LEVER, 0.6);
            }
        }
        if (!given.contains(Signal.CLUTCH_PEDAL)) {
            add(Signal.INPUT_SHAFT_SPEED, 0.15);
        }
    }

    private void add(Signal signal, double share) {
        if (random.nextDouble() < share) {
            given.add(signal);
        }
    }

    void giveAll() {
        given.addAll(ORDER);
    }

    void leaveOut(Signal signal) {
        given.remove(signal);
    }

    /** Whether the log holds what the truth needs to be seen. */
    boolean shows(RoadTruth truth) {
        boolean clutch = given.contains(Signal.CLUTCH) || given.contains(Signal.CLUTCH_PEDAL);
        boolean load = given.contains(Signal.ACCELERATOR) || given.contains(Signal.ENGINE_TORQUE);
        boolean neutral = given.contains(Signal.LEVER) || given.contains(Signal.NEUTRAL_SWITCH);
        boolean reverse = given.contains(Signal.LEVER) || given.contains(Signal.REVERSE_SWITCH);
        for (Signal need : truth.needs()) {
            boolean has =
                    switch (need) {
                        case CLUTCH -> clutch;
                        case ACCELERATOR -> load;
                        case LEVER -> neutral;
                        case CURRENT_GEAR -> reverse;
                        default -> given.contains(need);
                    };
            if (!has) {
                return false;
            }
        }
        boolean start = truth.kind().name().startsWith("START_");
        double least = start && !clutch ? 2 : truth.hertz();
        boolean hidden = frozen.filter(f -> f.from() < truth.to() + 5 && f.to() > truth.from() - 5)
                .isPresent();
        return hertz >= least && !hidden && truth.apartSeconds() > 1.2 / hertz;
    }

    private Map<Signal, Field> fields() {
        Map<Signal, Field> all =
                switch (style) {
                    case SNAKE, CANDUMP -> named(
                            "engine_rpm speed_kmh clutch clutch_pedal_pct accel_pct engine_torque_pct brake parking_brake"
                                    + " gearbox_oil_temp_c output_shaft_rpm input_shaft_rpm range lever neutral_switch"
                                    + " reverse_switch",
                            " ",
                            false);
                    case SHORT -> named(
                            "rpm v clu clutch_travel acc trq brk park_brk gb_oil_t oss iss range_low lever lever_neutral rev",
                            " ",
                            false);
                    case BRACKETS -> named(
                            "Engine Speed [rpm]|Vehicle Speed [km/h]|Clutch Switch|Clutch Pedal Position [%]|Accelerator Pedal"
                                    + " [%]|Actual Engine Torque [%]|Brake Switch|Parking Brake|Transmission Oil Temp"
                                    + " [degC]|Output Shaft Speed [rpm]|Input Shaft Speed [rpm]|Range Selector|Lever"
                                    + " Position|Neutral Switch|Reverse Switch",
                            "\\|", false);
                    case GERMAN -> named(
                            "Motordrehzahl (1/min)|Geschwindigkeit (km/h)|Kupplung|Kupplungsweg (%)|Fahrpedal (%)|Motormoment"
                                    + " (%)|Bremse|Handbremse|Getriebeoeltemperatur (C)|Abtriebsdrehzahl"
                                    + " (1/min)|Eingangsdrehzahl (1/min)|Gruppe|Schalthebel|Leerlaufschalter|Rueckwaertsgang",
                            "\\|", true);
                    case CAMEL -> named(
                            "engineSpeed roadSpeed_mph clutchPedal clutchPosition throttle engineTorque brakePedal"
                                    + " parkingBrake transOilTemp_F transOutputRpm transInputRpm rangeKnob lever"
                                    + " neutralSwitch reverseSwitch",
                            " ",
                            true);
                };
        if (style == Style.CAMEL) {
            all.computeIfPresent(
                    Signal.ROAD_SPEED, (s, f) -> new Field(f.name, "mph", 1 / 1.609344, 0, 2, false, false));
            all.computeIfPresent(Signal.GEARBOX_OIL, (s, f) -> new Field(f.name, "F", 1.8, 32, 1, false, false));
        }
        if (style == Style.SHORT) {
            all.computeIfPresent(Signal.RANGE_KNOB, (s, f) -> new Field(f.name, "", 1, 0, 0, true, false));
        }
        return all;
    }

    private static final List<Signal> ORDER = List.of(
            Signal.ENGINE_SPEED,
            Signal.ROAD_SPEED,
            Signal.CLUTCH,
            Signal.CLUTCH_PEDAL,
            Signal.ACCELERATOR,
            Signal.ENGINE_TORQUE,
            Signal.BRAKE,
            Signal.PARKING_BRAKE,
            Signal.GEARBOX_OIL,
            Signal.OUTPUT_SHAFT_SPEED,
            Signal.INPUT_SHAFT_SPEED,
            Signal.RANGE_KNOB,
            Signal.LEVER,
            Signal.NEUTRAL_SWITCH,
            Signal.REVERSE_SWITCH);

    private Map<Signal, Field> named(String names, String separator, boolean words) {
        String[] each = names.split(separator);
        Map<Signal, Field> fields = new LinkedHashMap<>();
        for (int i = 0; i < each.length; i++) {
            Signal signal = ORDER.get(i);
            boolean isSwitch = signal.unit().isEmpty() && signal != Signal.LEVER && signal != Signal.RANGE_KNOB;
            if (given.contains(signal)) {
                int decimals = signal.unit().isEmpty() ? 0 : signal == Signal.ROAD_SPEED ? 2 : 1;
                fields.put(signal, new Field(each[i], "", 1, 0, decimals, false, words && isSwitch));
            }
        }
        return fields;
    }

    private char separator() {
        return style == Style.GERMAN ? ';' : ',';
    }

    private String timeName() {
        return switch (style) {
            case SHORT -> "t";
            case BRACKETS -> "Time [s]";
            case GERMAN -> "Zeit (s)";
            case CAMEL -> "timestamp";
            default -> "time_s";
        };
    }

    /** The mapping that a person would write. */
    Optional<ColumnMapping> byHand() {
        if (style == Style.CANDUMP) {
            return Optional.empty();
        }
        Map<Signal, ColumnMapping.Column> columns = new EnumMap<>(Signal.class);
        fields().forEach((signal, f) -> columns.put(
                signal,
                new ColumnMapping.Column(f.name, f.unit.isEmpty() ? signal.unit() : Unit.parse(f.unit), 1, f.flipped)));
        return Optional.of(new ColumnMapping(
                separator(),
                style == Style.GERMAN ? ',' : '.',
                1,
                new ColumnMapping.Time(
                        timeName(),
                        style == Style.CAMEL ? "milliseconds" : "seconds",
                        Optional.empty(),
                        Optional.empty(),
                        ZoneOffset.UTC),
                columns));
    }

    void write(Path file) {
        try (Writer out = Files.newBufferedWriter(file)) {
            Map<Signal, Field> fields = fields();
            if (style != Style.CANDUMP) {
                String cut = String.valueOf(separator());
                out.write(timeName());
                for (Field f : fields.values()) {
                    out.write(cut + f.name);
                }
                out.write("\n");
            }
            rows(out, fields);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void rows(Writer out, Map<Signal, Field> fields) throws IOException {
        int every = (int) Math.round(20 / hertz);
        Map<Signal, Double> last = new EnumMap<>(Signal.class);
        double seenKmh = 0;
        boolean pressed = false;
        for (int i = 0; i < drive.states.size(); i++) {
            RoadState s = drive.states.get(i);
            seenKmh += (s.kmh() - seenKmh) * Math.min(1, 0.05 / Math.max(0.05, lag));
            if (i % every != 0 || faults && random.nextDouble() < 0.002) {
                continue;
            }
            Map<Signal, Double> now = read(s, seenKmh);
            boolean was = pressed;
            pressed = s.pedal() > 12;
            if (faults && was != pressed && hertz >= 20 && random.nextDouble() < 0.05) {
                now.computeIfPresent(Signal.CLUTCH, (k, v) -> 1 - v);
            }
            frozen.filter(f -> s.t() > f.from() && s.t() < f.to() && last.containsKey(f.signal()))
                    .ifPresent(f -> now.put(f.signal(), last.get(f.signal())));
            last.putAll(now);
            double at = s.t() + (random.nextDouble() - 0.5) * 0.1 / hertz;
            out.write(style == Style.CANDUMP ? frames(at, now) : line(at, now, fields));
        }
    }

    private Map<Signal, Double> read(RoadState s, double seenKmh) {
        Map<Signal, Double> now = new EnumMap<>(Signal.class);
        double shown = seenKmh < 0.6 ? 0 : Math.max(0, seenKmh + random.nextGaussian() * 0.08);
        now.put(Signal.ENGINE_SPEED, s.rpm() < 30 ? 0 : round(s.rpm() + random.nextGaussian() * 5, rpmStep));
        now.put(Signal.ROAD_SPEED, round(shown, kmhStep));
        now.put(Signal.CLUTCH, s.pedal() > 12 ? 1.0 : 0);
        now.put(Signal.CLUTCH_PEDAL, round(s.pedal(), 0.4));
        now.put(Signal.ACCELERATOR, round(s.throttle(), 0.4));
        now.put(Signal.ENGINE_TORQUE, round(s.torque(), 1));
        now.put(Signal.BRAKE, s.brake() ? 1.0 : 0);
        now.put(Signal.PARKING_BRAKE, s.parked() ? 1.0 : 0);
        now.put(Signal.GEARBOX_OIL, round(s.oil(), 0.5));
        double perKmh = drive.table.outputRpmPerKmh() * drive.truck.tyre();
        now.put(Signal.OUTPUT_SHAFT_SPEED, round(s.kmh() * perKmh, 0.5));
        now.put(Signal.INPUT_SHAFT_SPEED, round(s.inputRpm(), 0.5));
        now.put(Signal.RANGE_KNOB, (double) s.knob());
        now.put(Signal.LEVER, (double) s.lever());
        now.put(Signal.NEUTRAL_SWITCH, s.lever() == 0 ? 1.0 : 0);
        now.put(Signal.REVERSE_SWITCH, s.lever() < 0 ? 1.0 : 0);
        return now;
    }

    private static double round(double value, double step) {
        return Math.round(value / step) * step;
    }

    private String line(double at, Map<Signal, Double> now, Map<Signal, Field> fields) {
        StringBuilder line = new StringBuilder(
                style == Style.CAMEL
                        ? String.valueOf(1_700_000_000_000L + Math.round(at * 1000))
                        : String.format(Locale.ROOT, "%.3f", at));
        List<String> cells = new ArrayList<>();
        fields.forEach((signal, f) -> cells.add(cell(now.get(signal), f)));
        cells.forEach(c -> line.append(separator()).append(c));
        String text = line.append('\n').toString();
        return style == Style.GERMAN ? text.replace('.', ',') : text;
    }

    private String cell(double value, Field f) {
        if (faults && random.nextDouble() < 0.001) {
            return "";
        }
        double written = f.flipped ? 1 - value : value * f.factor + f.addend;
        if (f.word) {
            return style == Style.GERMAN ? (written > 0.5 ? "ein" : "aus") : written > 0.5 ? "on" : "off";
        }
        return String.format(Locale.ROOT, "%." + f.decimals + "f", written);
    }

    private String frames(double at, Map<Signal, Double> now) {
        int rpm = (int) Math.round(now.get(Signal.ENGINE_SPEED) / 0.125);
        int torque =
                given.contains(Signal.ENGINE_TORQUE) ? 125 + (int) Math.round(now.get(Signal.ENGINE_TORQUE)) : 0xFF;
        int kmh = (int) Math.round(now.get(Signal.ROAD_SPEED) * 256);
        int clutch = given.contains(Signal.CLUTCH) ? now.get(Signal.CLUTCH) > 0.5 ? 0x40 : 0 : 0xC0;
        int brake = given.contains(Signal.BRAKE) ? now.get(Signal.BRAKE) > 0.5 ? 0x10 : 0 : 0x30;
        int parked = given.contains(Signal.PARKING_BRAKE) ? now.get(Signal.PARKING_BRAKE) > 0.5 ? 0xF7 : 0xF3 : 0xFF;
        int throttle = given.contains(Signal.ACCELERATOR) ? (int) Math.round(now.get(Signal.ACCELERATOR) / 0.4) : 0xFF;
        StringBuilder frames = new StringBuilder();
        double zero = 1_700_000_000.0 + at;
        frame(frames, zero, String.format("0CF00400#FFFF%02X%02X%02XFFFFFF", torque, rpm & 255, rpm >> 8));
        frame(
                frames,
                zero + 0.0006,
                String.format("18FEF100#%02X%02X%02X%02XFFFFFFFF", parked, kmh & 255, kmh >> 8, clutch | brake | 0x0F));
        frame(frames, zero + 0.0011, String.format("0CF00300#FF%02XFFFFFFFFFFFF", throttle));
        if (given.contains(Signal.OUTPUT_SHAFT_SPEED)) {
            int out = (int) Math.round(now.get(Signal.OUTPUT_SHAFT_SPEED) / 0.125);
            int in = given.contains(Signal.INPUT_SHAFT_SPEED)
                    ? (int) Math.round(now.get(Signal.INPUT_SHAFT_SPEED) / 0.125)
                    : 0xFFFF;
            frame(
                    frames,
                    zero + 0.0016,
                    String.format("0CF00203#FF%02X%02XFFFF%02X%02XFF", out & 255, out >> 8, in & 255, in >> 8));
        }
        if (given.contains(Signal.GEARBOX_OIL)) {
            int oil = (int) Math.round((now.get(Signal.GEARBOX_OIL) + 273) * 32);
            frame(frames, zero + 0.0021, String.format("18FEF803#FFFFFFFF%02X%02XFFFF", oil & 255, oil >> 8));
        }
        return frames.toString();
    }

    private static void frame(StringBuilder to, double at, String frame) {
        to.append(String.format(Locale.ROOT, "(%.6f) can0 ", at)).append(frame).append('\n');
    }

    /** Time of the log's first moment, as it is written. */
    double zero() {
        return style == Style.CAMEL || style == Style.CANDUMP ? 1_700_000_000.0 : 0;
    }
}
