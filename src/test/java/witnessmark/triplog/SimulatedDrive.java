package witnessmark.triplog;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;

/**
 * A small truck that is driven by a script and knows what it did: engine, clutch, lever, knob and wheels in steps of
 * 20 ms. It is written out as the log of that drive at any rate, with noise, rounding and dropouts.
 */
public final class SimulatedDrive {
    private static final double DT = 0.02;

    /** What truly happened. */
    public record Truth(EventKind kind, double fromSeconds, double toSeconds) {}

    /** How a log of the drive is taken. */
    public record Recording(
            double hertz, double rpmNoise, double kmhNoise, double kmhStep, double dropoutShare, double tyreFactor) {
        public static Recording usual(double hertz) {
            return new Recording(hertz, 8, 0.15, 0.05, 0.005, 0.97);
        }
    }

    /** How the clutch is used in a shift. */
    public enum Style {
        DOUBLE,
        SINGLE,
        FLOAT
    }

    private record Sample(
            double t,
            double rpm,
            double kmh,
            double pedal,
            double accelerator,
            double oil,
            int knob,
            int lever,
            int powerTakeOff,
            double falseKmh) {}

    private final GearTable table;
    private final Random random;
    private final List<Sample> samples = new ArrayList<>();
    private final List<Truth> truths = new ArrayList<>();

    private double t;
    private double kmh;
    private double rpm;
    private double pedal;
    private double accelerator;
    private double oil = 82;
    private int gear = -1;
    private int knob;
    private int lever;
    private int powerTakeOff;
    private boolean powerTakeOffUsed;
    /** What a failing sensor shows in place of the road speed; NaN while it is sound. */
    private double falseKmh = Double.NaN;

    public SimulatedDrive(GearTable table, long seed) {
        this.table = table;
        this.random = new Random(seed);
        this.rpm = table.idleRpm();
    }

    public List<Truth> truths() {
        return truths;
    }

    public double seconds() {
        return t;
    }

    public double kmh() {
        return kmh;
    }

    public int gear() {
        return gear;
    }

    private double locked(int g) {
        return kmh * table.outputRpmPerKmh() * table.gear(g).ratio();
    }

    private double uniform(double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    private void step(double acceleration) {
        kmh = Math.max(0, kmh + acceleration * 3.6 * DT);
        oil += (82 - oil) * DT / 600;
        t += DT;
        samples.add(new Sample(t, rpm, kmh, pedal, accelerator, oil, knob, lever, powerTakeOff, falseKmh));
    }

    private void truth(EventKind kind, double from) {
        truths.add(new Truth(kind, from, t));
    }

    /** Stands with the engine at idle. */
    public SimulatedDrive stand(double seconds) {
        kmh = 0;
        gear = -1;
        lever = 0;
        knob = 0;
        accelerator = 0;
        pedal = 0;
        for (double s = 0; s < seconds; s += DT) {
            rpm += (table.idleRpm() - rpm) * DT / 0.5;
            step(0);
        }
        return this;
    }

    /** Starts from rest in a gear, the clutch slipping until the wheels have caught up. */
    public SimulatedDrive start(String name) {
        int g = index(name);
        double from = t;
        KnobGear chosen = table.gear(g);
        knob = chosen.range() == KnobGear.Range.HIGH ? 1 : 0;
        press(0.8);
        lever = chosen.lever();
        gear = g;
        accelerator = 30;
        double engaged = uniform(850, 1100);
        double pull = 0.35 + 0.05 * Math.min(10, chosen.ratio());
        while (locked(g) < rpm || rpm < engaged - 50) {
            pedal = Math.max(0, pedal - 100 * DT / 0.7);
            rpm += (engaged - rpm) * DT / 0.4;
            step(pull * uniform(0.8, 1.2));
            if (locked(g) >= rpm) {
                break;
            }
        }
        pedal = 0;
        rpm = locked(g);
        drive(1.5, 0.5 * pull, 40);
        if (chosen.range() == KnobGear.Range.HIGH) {
            truth(EventKind.START_IN_HIGH_RANGE, from);
        }
        return this;
    }

    /** Starts from rest in a gear with the foot on the pedal until the clutch has locked, engine held about steady. */
    public SimulatedDrive startOnThePedal(String name) {
        int g = index(name);
        double from = t;
        KnobGear chosen = table.gear(g);
        knob = chosen.range() == KnobGear.Range.HIGH ? 1 : 0;
        press(0.8);
        lever = chosen.lever();
        gear = g;
        accelerator = 30;
        double held = uniform(850, 1000);
        double pull = uniform(0.35, 0.7);
        pedal = 30;
        while (locked(g) < rpm) {
            rpm += (held - rpm) * DT / 0.3;
            step(pull);
        }
        for (double s = 0; s < 0.4; s += DT) {
            pedal = Math.max(0, pedal - 30 * DT / 0.4);
            rpm = locked(g);
            step(pull);
        }
        pedal = 0;
        drive(2.5, 0.5 * pull, 40);
        if (chosen.range() == KnobGear.Range.HIGH) {
            truth(EventKind.START_IN_HIGH_RANGE, from);
        }
        return this;
    }

    /** Marks the last start as too high; for the script's writer, who chose the gear. */
    public SimulatedDrive thatStartWasTooHigh() {
        truths.add(new Truth(EventKind.START_GEAR_TOO_HIGH, t - 10, t));
        return this;
    }

    /** Drives in the gear in hand. */
    public SimulatedDrive drive(double seconds, double acceleration, double pedalPercent) {
        accelerator = pedalPercent;
        for (double s = 0; s < seconds; s += DT) {
            rpm = locked(gear);
            step(acceleration + uniform(-0.05, 0.05));
        }
        return this;
    }

    /** Speeds up or slows down in gear to a road speed. */
    public SimulatedDrive driveTo(double targetKmh, double rate) {
        double acceleration = Math.copySign(rate, targetKmh - kmh);
        accelerator = targetKmh > kmh ? 60 : 0;
        while ((targetKmh - kmh) * acceleration > 0) {
            rpm = locked(gear);
            step(acceleration + uniform(-0.05, 0.05));
        }
        return this;
    }

    private void press(double seconds) {
        pedal = 75;
        for (double s = 0; s < seconds; s += DT) {
            rpm += (Math.max(table.idleRpm(), rpm - 300) - rpm) * DT;
            step(kmh > 0 ? -0.05 : 0);
        }
    }

    /** Changes gear on the move, range preselected in gear where it changes. */
    public SimulatedDrive shift(String name, Style style) {
        int g = index(name);
        KnobGear old = table.gear(gear);
        KnobGear taken = table.gear(g);
        boolean leverMoves = old.lever() != taken.lever() || old.range() != taken.range();
        if (old.range() != taken.range()) {
            knob = taken.range() == KnobGear.Range.HIGH ? 1 : 0;
            drive(0.5, 0, accelerator);
        }
        double from = t;
        accelerator = 0;
        double pause = uniform(0.7, 1.3);
        double begin = rpm;
        for (double s = 0; s < pause; s += DT) {
            double done = s / pause;
            boolean first = done < 0.3;
            boolean second = done > 0.55 && done < 0.95;
            pedal = style == Style.FLOAT || !leverMoves && !first
                    ? 0
                    : style == Style.SINGLE ? (done < 0.95 ? 75 : 0) : first || second ? 75 : 0;
            lever = leverMoves && done > 0.15 && done < 0.85 ? 0 : done >= 0.85 ? taken.lever() : old.lever();
            double target = locked(g);
            rpm = done < 0.15 ? locked(gear) : begin + (target - begin) * Math.min(1, (done - 0.15) / 0.8);
            step(-0.1);
        }
        pedal = 0;
        gear = g;
        lever = taken.lever();
        rpm = locked(g);
        record(old, taken, leverMoves, style, from);
        return this;
    }

    private void record(KnobGear old, KnobGear taken, boolean leverMoves, Style style, double from) {
        double over = locked(gear) / table.governedRpm();
        drive(1.2, 0.1, 20);
        if (old.range() == KnobGear.Range.HIGH && taken.range() == KnobGear.Range.LOW) {
            if (locked(gear) > table.governedRpm() * 1.05) {
                truth(EventKind.LOW_RANGE_ABOVE_CEILING, from);
            }
            double split = table.splitterRatio().orElse(1.0);
            // The splitter returns: slip is R - s instead of R - 1, to be more than at the ceiling with 3 % to spare.
            double slip = (table.rangeStep() - split) / (table.rangeStep() - 1);
            if (old.splitter() == KnobGear.Splitter.OVERDRIVE && slip * over > 1.03) {
                truth(EventKind.OVERDRIVE_TO_LOW, from);
            }
        }
        if (rpm > table.governedRpm() * 1.12) {
            truth(EventKind.ENGINE_OVERSPEED, from);
        }
        if (leverMoves && style != Style.DOUBLE) {
            truth(style == Style.SINGLE ? EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH : EventKind.SHIFT_WITHOUT_CLUTCH, from);
        }
    }

    /** Rolls out of gear, and takes a gear again at the end. */
    public SimulatedDrive coast(double seconds, double acceleration, String gearAfter, boolean moveRange) {
        double from = t;
        pedal = 75;
        accelerator = 0;
        lever = 0;
        boolean counted = kmh > 25;
        boolean moved = false;
        for (double s = 0; s < seconds; s += DT) {
            pedal = s < 0.4 ? 75 : 0;
            rpm += (table.idleRpm() - rpm) * DT / 0.6;
            if (moveRange && !moved && s > seconds / 2) {
                knob = 1 - knob;
                moved = true;
                truths.add(new Truth(EventKind.RANGE_MOVED_IN_NEUTRAL, t, t));
            }
            step(acceleration);
        }
        if (counted && seconds > 8) {
            truth(EventKind.COAST_IN_NEUTRAL, from);
        }
        int g = index(gearAfter);
        double begin = rpm;
        for (double s = 0; s < 1.2; s += DT) {
            pedal = s < 0.4 || s > 0.7 && s < 1.1 ? 75 : 0;
            lever = s > 1 ? table.gear(g).lever() : 0;
            rpm = begin + (locked(g) - begin) * Math.min(1, s / 1.1);
            step(-0.05);
        }
        pedal = 0;
        gear = g;
        knob = table.gear(g).range() == KnobGear.Range.HIGH ? 1 : 0;
        return drive(2, 0.1, 25);
    }

    /** Brakes to a stop, pedal pressed at the end. */
    public SimulatedDrive stop() {
        accelerator = 0;
        while (kmh > 0) {
            boolean open = locked(gear) < table.idleRpm() * 1.1;
            pedal = open ? 75 : 0;
            rpm = open ? rpm + (table.idleRpm() - rpm) * DT / 0.4 : locked(gear);
            step(-uniform(0.9, 1.3));
        }
        return stand(4);
    }

    /** Towed with the engine stopped, from rest to rest. */
    public SimulatedDrive tow(double seconds, double topKmh) {
        stand(2);
        double from = t;
        rpm = 0;
        for (double s = 0; s < seconds; s += DT) {
            step(s > seconds - 12 ? -kmh / 3.6 / 8 : kmh < topKmh ? 0.5 : 0);
        }
        truth(EventKind.ROLLING_ENGINE_STOPPED, from);
        rpm = table.idleRpm();
        return stand(3);
    }

    /** Runs away down a grade in one gear to a multiple of governed speed. */
    public SimulatedDrive runAway(double governedMultiple) {
        double top = governedMultiple * table.governedRpm();
        double from = t;
        accelerator = 0;
        while (locked(gear) < top) {
            rpm = locked(gear);
            step(0.35);
        }
        drive(1.5, 0, 0);
        truth(EventKind.ENGINE_OVERSPEED, from);
        return driveTo(kmh * 0.75, 0.8);
    }

    /** Pulls hard in the gear in hand at a share of the lowest pulling speed. */
    public SimulatedDrive lug(double share, double seconds) {
        driveTo(share * table.lowestPullingRpm() / (table.gear(gear).ratio() * table.outputRpmPerKmh()), 0.5);
        double from = t;
        drive(seconds, 0.02, 95);
        truth(EventKind.LUGGING, from);
        return driveTo(kmh * 1.25, 0.5);
    }

    /** Lets the clutch slip under load by a share of engine speed. */
    public SimulatedDrive slip(double share, double seconds) {
        double from = t;
        accelerator = 80;
        for (double s = 0; s < seconds; s += DT) {
            double now = share * Math.min(1, Math.min(s, seconds - s) / 0.3);
            rpm = locked(gear) / (1 - now);
            step(0.1);
        }
        truth(EventKind.CLUTCH_SLIP, from);
        return drive(2, 0.1, 40);
    }

    /** Steps on the accelerator from a light load; the clutch lets the engine run ahead by as much as a shift down. */
    public SimulatedDrive slipSuddenly(double share, double seconds) {
        drive(2, 0, 12);
        return slip(share, seconds);
    }

    /** Drives on with the foot on the pedal. */
    public SimulatedDrive ride(double seconds) {
        double from = t;
        accelerator = 30;
        pedal = 30;
        for (double s = 0; s < seconds; s += DT) {
            rpm = locked(gear);
            step(0.02);
        }
        pedal = 0;
        truth(EventKind.RIDING_CLUTCH, from);
        return drive(1, 0, 30);
    }

    /** Presses the pedal to the floor while rolling, gear held. */
    public SimulatedDrive floorPedal() {
        double from = t;
        pedal = 100;
        accelerator = 0;
        for (double s = 0; s < 0.6; s += DT) {
            rpm = Math.max(table.idleRpm(), rpm - 250 * DT);
            step(-0.1);
        }
        pedal = 0;
        truth(EventKind.CLUTCH_FLOORED_ROLLING, from);
        return drive(1.5, 0, 30);
    }

    /** Heats the gearbox oil while driving on. */
    public SimulatedDrive heatOil(double celsius, double seconds) {
        double from = t;
        accelerator = 35;
        for (double s = 0; s < seconds; s += DT) {
            oil += (celsius - oil) * DT / 8;
            rpm = locked(gear);
            step(uniform(-0.02, 0.02));
        }
        truth(EventKind.HOT_OIL, from);
        for (double s = 0; s < 60; s += DT) {
            oil += (85 - oil) * DT / 8;
            rpm = locked(gear);
            step(uniform(-0.02, 0.02));
        }
        return this;
    }

    /** Rolls back in reverse and moves the range knob on the way, or not. */
    public SimulatedDrive reverse(boolean moveRange) {
        stand(2);
        lever = -1;
        double reverseRatio = table.gears().stream()
                .filter(KnobGear::isReverse)
                .mapToDouble(KnobGear::ratio)
                .max()
                .orElseThrow();
        boolean moved = false;
        for (double s = 0; s < 10; s += DT) {
            rpm = Math.max(table.idleRpm(), kmh * table.outputRpmPerKmh() * reverseRatio);
            if (moveRange && !moved && s > 5) {
                moved = true;
                knob = 1;
                truths.add(new Truth(EventKind.RANGE_MOVED_IN_REVERSE, t, t));
            }
            step(s < 3 ? 0.4 : s > 8 ? -0.7 : 0);
        }
        return stand(2);
    }

    /** Revs the engine up at rest and lets the pedal go at once; the wheels are torn along. */
    public SimulatedDrive dropClutch(String name) {
        stand(2);
        int g = index(name);
        double from = t;
        double height = uniform(1550, 1900);
        pedal = 75;
        lever = table.gear(g).lever();
        accelerator = 60;
        for (double s = 0; s < 1.2; s += DT) {
            rpm += (height - rpm) * DT / 0.3;
            step(0);
        }
        gear = g;
        double caught =
                uniform(700, 850) / (table.outputRpmPerKmh() * table.gear(g).ratio());
        double seconds = uniform(0.25, 0.4);
        double begin = rpm;
        for (double s = 0; s < seconds; s += DT) {
            pedal = Math.max(0, 75 * (1 - s / 0.08));
            step(caught / 3.6 / seconds);
            rpm = begin + (locked(g) - begin) * Math.min(1, (s + DT) / seconds);
        }
        truth(EventKind.CLUTCH_DROPPED, from);
        return drive(4, 0.3, 40);
    }

    /** Rolls downhill in the gear in hand with the pedal down until the disc runs so many times governed speed. */
    public SimulatedDrive overspeedDisc(double governedMultiple) {
        double top = governedMultiple * table.governedRpm();
        double from = t;
        accelerator = 0;
        pedal = 75;
        for (double rate : new double[] {0.7, -1.2}) {
            while (rate > 0 ? locked(gear) < top : locked(gear) > 0.8 * table.governedRpm()) {
                rpm += (table.idleRpm() - rpm) * DT / 0.4;
                step(rate);
            }
        }
        truth(EventKind.DISC_OVERSPEED, from);
        double begin = rpm;
        for (double s = 0; s < 0.5; s += DT) {
            rpm = begin + (locked(gear) - begin) * Math.min(1, s / 0.4);
            pedal = s < 0.4 ? 75 : 0;
            step(0);
        }
        pedal = 0;
        return drive(3, 0, 20);
    }

    /** Slows down to a roll, takes reverse before the truck stands, and stops. */
    public SimulatedDrive reverseBeforeStanding(double atKmh) {
        driveTo(atKmh, 0.8);
        double from = t;
        pedal = 75;
        accelerator = 0;
        for (double s = 0; s < 0.6; s += DT) {
            rpm += (table.idleRpm() - rpm) * DT / 0.4;
            lever = s < 0.3 ? 0 : -1;
            step(0);
        }
        truth(EventKind.GEAR_AGAINST_ROLL, from);
        while (kmh > 0) {
            rpm += (table.idleRpm() - rpm) * DT / 0.4;
            step(-1.2);
        }
        lever = 0;
        return stand(3);
    }

    /** Splits up or down with the accelerator held and the pedal up. */
    public SimulatedDrive splitUnderTorque(String name) {
        int g = index(name);
        drive(2, 0.05, 60);
        double from = t;
        double begin = rpm;
        double seconds = uniform(0.2, 0.35);
        for (double s = 0; s < seconds; s += DT) {
            rpm = begin + (locked(g) - begin) * Math.min(1, (s + DT) / seconds);
            step(0);
        }
        gear = g;
        truth(EventKind.SPLIT_UNDER_TORQUE, from);
        return drive(4, 0.05, 60);
    }

    /** Idles at a share of the specified idle speed. */
    public SimulatedDrive idleLow(double share, double seconds) {
        stand(2);
        double from = t;
        for (double s = 0; s < seconds; s += DT) {
            rpm += (share * table.idleRpm() - rpm) * DT / 0.5;
            step(0);
        }
        truth(EventKind.IDLE_TOO_LOW, from);
        return stand(2);
    }

    /** Works with the power take-off at rest, engine raised, as it should be. */
    public SimulatedDrive workPowerTakeOff(double seconds) {
        stand(2);
        powerTakeOffUsed = true;
        powerTakeOff = 1;
        accelerator = 15;
        for (double s = 0; s < seconds; s += DT) {
            rpm += (1.5 * table.idleRpm() - rpm) * DT / 0.5;
            step(0);
        }
        powerTakeOff = 0;
        return stand(2);
    }

    /** Drives on with the power take-off left in; above working speed. */
    public SimulatedDrive leavePowerTakeOffIn(double seconds) {
        powerTakeOffUsed = true;
        powerTakeOff = 1;
        double from = t;
        drive(seconds, 0, 30);
        truth(EventKind.POWER_TAKE_OFF_ON_ROAD, from);
        powerTakeOff = 0;
        return drive(3, 0, 30);
    }

    /** Drives on while the speed sensor shows something else for a moment. */
    public SimulatedDrive failSensor(double shownKmh, double seconds) {
        double from = t;
        falseKmh = shownKmh;
        drive(seconds, 0, 30);
        falseKmh = Double.NaN;
        truth(EventKind.IMPOSSIBLE_SPEED_JUMP, from);
        return drive(6, 0, 30);
    }

    private int index(String name) {
        for (int i = 0; i < table.gears().size(); i++) {
            if (table.gear(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no gear " + name);
    }

    /** Writes the drive as a CSV log; the noise is the same for the same seed. */
    public void writeCsv(Path file, Recording how, long noiseSeed) {
        Random noise = new Random(noiseSeed);
        try (Writer out = Files.newBufferedWriter(file)) {
            out.write("time_s,engine_rpm,speed_kmh,clutch,clutch_pedal_pct,accel_pct,gearbox_oil_temp_c,range,lever"
                    + (powerTakeOffUsed ? ",pto\n" : "\n"));
            forEach(
                    how,
                    noise,
                    (s, rpmSeen, kmhSeen) -> out.write(String.format(
                            Locale.ROOT,
                            "%.2f,%s,%s,%d,%.0f,%.1f,%.1f,%d,%d%s%n",
                            s.t,
                            rpmSeen,
                            kmhSeen,
                            s.pedal > 15 ? 1 : 0,
                            s.pedal,
                            s.accelerator,
                            s.oil,
                            s.knob,
                            s.lever,
                            powerTakeOffUsed ? "," + s.powerTakeOff : "")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes the drive as a candump log with J1939 frames. */
    public void writeCandump(Path file, Recording how, long noiseSeed) {
        Random noise = new Random(noiseSeed);
        try (Writer out = Files.newBufferedWriter(file)) {
            forEach(how, noise, (s, rpmSeen, kmhSeen) -> out.write(frames(s, rpmSeen, kmhSeen)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String frames(Sample s, String rpmSeen, String kmhSeen) {
        int rpmRaw = rpmSeen.isEmpty() ? 0xFFFF : (int) Math.round(Double.parseDouble(rpmSeen) / 0.125);
        int kmhRaw = kmhSeen.isEmpty() ? 0xFFFF : (int) Math.round(Double.parseDouble(kmhSeen) * 256);
        int oilRaw = (int) Math.round((s.oil + 273) * 32);
        int switches = s.pedal > 15 ? 0x40 : 0;
        String form = "(%.6f) can0 %s%n";
        double at = 1_700_000_000.0 + s.t;
        return String.format(
                        Locale.ROOT,
                        form,
                        at,
                        String.format(
                                Locale.ROOT,
                                "0CF00400#FF7D%02X%02X%02XFFFFFF",
                                125 + (int) Math.round(s.accelerator),
                                rpmRaw & 255,
                                rpmRaw >> 8))
                + String.format(
                        Locale.ROOT,
                        form,
                        at + 0.001,
                        String.format(
                                Locale.ROOT, "18FEF100#F3%02X%02X%02XFFFFFFFF", kmhRaw & 255, kmhRaw >> 8, switches))
                + String.format(
                        Locale.ROOT, form, at + 0.002, String.format(Locale.ROOT, "0CF00300#FC%02XFFFFFFFFFFFF", (int)
                                Math.round(s.accelerator / 0.4)))
                + String.format(
                        Locale.ROOT,
                        form,
                        at + 0.003,
                        String.format(Locale.ROOT, "18FEF803#FFFFFFFF%02X%02XFFFF", oilRaw & 255, oilRaw >> 8));
    }

    private interface Line {
        void write(Sample sample, String rpm, String kmh) throws IOException;
    }

    private void forEach(Recording how, Random noise, Line line) throws IOException {
        int every = (int) Math.round(1 / (how.hertz() * DT));
        for (int i = 0; i < samples.size(); i += every) {
            Sample s = samples.get(i);
            if (noise.nextDouble() < how.dropoutShare()) {
                continue;
            }
            double rpmSeen = s.rpm <= 0 ? 0 : Math.max(0, s.rpm + noise.nextGaussian() * how.rpmNoise());
            double shown = Double.isNaN(s.falseKmh) ? s.kmh : s.falseKmh;
            double raw = shown <= 0.3 ? 0 : shown * how.tyreFactor() + noise.nextGaussian() * how.kmhNoise();
            double kmhSeen = Math.max(0, Math.round(raw / how.kmhStep()) * how.kmhStep());
            String rpmText = noise.nextDouble() < how.dropoutShare() ? "" : String.format(Locale.ROOT, "%.1f", rpmSeen);
            String kmhText = noise.nextDouble() < how.dropoutShare() ? "" : String.format(Locale.ROOT, "%.2f", kmhSeen);
            line.write(s, rpmText, kmhText);
        }
    }
}
