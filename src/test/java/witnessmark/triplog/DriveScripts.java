package witnessmark.triplog;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import witnessmark.triplog.SimulatedDrive.Style;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;

/** Drives made up at random from good driving and from habits, so that each kind of event comes up in each drive. */
public final class DriveScripts {
    private static final int PARTS = 21;

    private final GearTable table;
    private final SimulatedDrive drive;
    private final Random random;

    private DriveScripts(GearTable table, long seed) {
        this.table = table;
        this.drive = new SimulatedDrive(table, seed);
        this.random = new Random(seed * 31 + 7);
    }

    /** A drive with every kind of habit event at least once, in a random order that its number fixes. */
    public static SimulatedDrive habits(GearTable table, long seed) {
        DriveScripts script = new DriveScripts(table, seed);
        for (int round = 0; round < 2; round++) {
            List<Integer> parts = new ArrayList<>();
            for (int part = 0; part < PARTS; part++) {
                parts.add(part);
            }
            Collections.shuffle(parts, script.random);
            parts.forEach(script::part);
        }
        return script.drive;
    }

    /** A drive without any event. */
    public static SimulatedDrive proper(GearTable table, long seed, int legs) {
        DriveScripts script = new DriveScripts(table, seed);
        script.drive.stand(5);
        for (int leg = 0; leg < legs; leg++) {
            script.upTo(script.cruiseGear(leg % 2 == 0));
            script.drive.drive(30, 0.0, 35);
            script.downToStop();
        }
        return script.drive;
    }

    private double uniform(double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    private String startGear() {
        return table.gears().stream()
                .filter(g -> g.lever() == 1 && g.range() == KnobGear.Range.LOW)
                .findFirst()
                .orElseThrow()
                .name();
    }

    private String cruiseGear(boolean top) {
        KnobGear gear = table.gears().get(table.gears().size() - (top ? 1 : 2));
        return gear.name();
    }

    private int index(String name) {
        for (int i = 0; i < table.gears().size(); i++) {
            if (table.gear(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException(name);
    }

    /** Starts and shifts up through the gears, direct gears only until the top, matching revs, double-clutched. */
    private void upTo(String name) {
        if (drive.gear() < 0) {
            drive.start(startGear());
        }
        while (drive.gear() < index(name)) {
            int next = next(drive.gear(), index(name));
            double shiftRpm = 0.84 * table.governedRpm();
            drive.driveTo(
                    shiftRpm
                            / (table.outputRpmPerKmh()
                                    * table.gear(drive.gear()).ratio()),
                    0.5);
            drive.shift(table.gear(next).name(), Style.DOUBLE);
            drive.drive(uniform(1.5, 3), 0.1, 50);
        }
    }

    private int next(int from, int last) {
        for (int i = from + 1; i < last; i++) {
            KnobGear gear = table.gear(i);
            boolean whole = gear.splitter() != KnobGear.Splitter.OVERDRIVE && !gear.isReverse();
            if (whole && table.gear(from).ratio() / gear.ratio() > 1.2) {
                return i;
            }
        }
        return last;
    }

    /** Slows down by proper downshifts, one through the range below its ceiling, then stops. */
    private void downToStop() {
        KnobGear here = table.gear(drive.gear());
        if (here.splitter() == KnobGear.Splitter.OVERDRIVE) {
            String direct = here.name().replace("-over", "");
            drive.shift(direct, Style.DOUBLE);
        }
        KnobGear lowest = table.gears().stream()
                .filter(g -> g.range() == KnobGear.Range.HIGH
                        && g.lever() == 1
                        && g.splitter() != KnobGear.Splitter.OVERDRIVE)
                .findFirst()
                .orElseThrow();
        if (drive.gear() > index(lowest.name())) {
            drive.driveTo(0.75 * table.ceilingKmh(lowest), 0.6);
            drive.shift(lowest.name(), Style.DOUBLE);
        }
        KnobGear low = table.gears().stream()
                .filter(g -> g.range() == KnobGear.Range.LOW && g.splitter() != KnobGear.Splitter.OVERDRIVE)
                .reduce((a, b) -> b)
                .orElseThrow();
        if (random.nextBoolean() && table.gear(drive.gear()).range() == KnobGear.Range.HIGH) {
            drive.driveTo(0.75 * table.ceilingKmh(low), 0.6);
            drive.shift(low.name(), Style.DOUBLE);
            drive.drive(2, 0, 10);
        }
        drive.stop();
    }

    private String directHigh(int lever) {
        return high(lever, false);
    }

    private String high(int lever, boolean over) {
        return table.gears().stream()
                .filter(g -> g.range() == KnobGear.Range.HIGH
                        && g.lever() == lever
                        && (g.splitter() == KnobGear.Splitter.OVERDRIVE) == over)
                .findFirst()
                .orElseThrow()
                .name();
    }

    private String low(int lever) {
        return table.gears().stream()
                .filter(g -> g.range() == KnobGear.Range.LOW
                        && g.lever() == lever
                        && g.splitter() != KnobGear.Splitter.OVERDRIVE)
                .findFirst()
                .orElseThrow()
                .name();
    }

    private int levers() {
        return table.gears().stream().mapToInt(KnobGear::lever).max().orElseThrow();
    }

    private void part(int part) {
        drive.stand(uniform(4, 8));
        switch (part) {
            case 0 -> lowRangeTooFast();
            case 1 -> overdriveToLow();
            case 2 -> {
                drive.start(directHigh(1 + random.nextInt(2)));
                drive.drive(4, 0.2, 40);
                downToStop();
                drive.stand(6).startOnThePedal(directHigh(1)).drive(4, 0.2, 40);
            }
            case 3 -> {
                drive.start(low(4)).thatStartWasTooHigh();
                drive.drive(4, 0.2, 40);
            }
            case 4 -> {
                upTo(cruiseGear(true));
                drive.drive(10, 0, 30).coast(uniform(12, 40), -0.15, cruiseGear(true), false);
                drive.drive(5, 0, 30);
            }
            case 5 -> drive.tow(uniform(40, 120), uniform(20, 60));
            case 6 -> {
                upTo(directHigh(2));
                drive.runAway(uniform(1.15, 1.3));
            }
            case 7 -> {
                upTo(directHigh(3));
                drive.lug(uniform(0.78, 0.9), uniform(3.5, 8));
            }
            case 8 -> clutchHabits(Style.SINGLE);
            case 9 -> clutchHabits(Style.FLOAT);
            case 10 -> {
                upTo(directHigh(levers() - 1));
                drive.drive(4, 0, 40).slip(uniform(0.07, 0.09), uniform(2.5, 6)).drive(4, 0, 30);
                drive.slip(uniform(0.13, 0.2), uniform(4, 7)).drive(4, 0, 30);
                drive.slipSuddenly(uniform(0.13, 0.2), uniform(4, 7)).drive(4, 0, 30);
                drive.ride(uniform(5.5, 12)).drive(3, 0, 30).floorPedal().drive(3, 0, 30);
            }
            case 11 -> {
                upTo(cruiseGear(true));
                drive.heatOil(uniform(126, 135), uniform(120, 200));
            }
            case 12 -> {
                upTo(directHigh(2));
                drive.drive(3, 0, 30).coast(uniform(3.5, 5), -0.1, directHigh(2), true);
            }
            case 13 -> drive.reverse(true);
            case 14 -> drive.dropClutch(startGear());
            case 15 -> {
                upTo(low(2));
                drive.drive(3, 0.1, 30).overspeedDisc(uniform(1.4, 1.6));
            }
            case 16 -> {
                upTo(low(2));
                drive.drive(3, 0.1, 30).reverseBeforeStanding(uniform(6, 9));
            }
            case 17 -> splitUnderTorque();
            case 18 -> drive.idleLow(uniform(0.8, 0.88), uniform(30, 60));
            case 19 -> {
                drive.workPowerTakeOff(30);
                upTo(directHigh(3));
                drive.leavePowerTakeOffIn(uniform(15, 60));
            }
            default -> {
                upTo(directHigh(3));
                drive.drive(8, 0, 30).failSensor(uniform(140, 200), uniform(0.3, 1.5));
                drive.failSensor(0, uniform(0.3, 1.5));
            }
        }
        if (drive.kmh() > 0) {
            downToStop();
        }
    }

    private void lowRangeTooFast() {
        upTo(directHigh(2));
        KnobGear target = table.gear(index(low(levers())));
        drive.driveTo(uniform(1.12, 1.45) * table.ceilingKmh(target), 0.5).drive(3, 0, 30);
        drive.shift(target.name(), Style.DOUBLE);
    }

    private void overdriveToLow() {
        boolean split = table.hasOverdriveSplit();
        upTo(split ? high(1, true) : directHigh(1));
        KnobGear target = table.gear(index(low(levers())));
        double share = split ? uniform(0.995, 1.01) : uniform(0.7, 0.95);
        drive.driveTo(share * table.ceilingKmh(target), 0.5).drive(3, 0, 30);
        drive.shift(target.name(), Style.DOUBLE).drive(3, 0, 20);
    }

    private void splitUnderTorque() {
        upTo(directHigh(3));
        if (table.hasOverdriveSplit()) {
            drive.splitUnderTorque(high(3, true)).splitUnderTorque(directHigh(3));
        }
    }

    private void clutchHabits(Style style) {
        upTo(directHigh(1));
        for (int lever = 2; lever <= levers() - 1; lever++) {
            double shiftRpm = 0.85 * table.governedRpm();
            drive.driveTo(
                    shiftRpm
                            / (table.outputRpmPerKmh()
                                    * table.gear(drive.gear()).ratio()),
                    0.5);
            drive.shift(directHigh(lever), style).drive(3, 0.1, 40);
        }
    }
}
