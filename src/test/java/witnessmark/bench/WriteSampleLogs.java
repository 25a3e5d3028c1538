package witnessmark.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.SimulatedDrive;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.SimulatedDrive.Style;
import witnessmark.triplog.gear.GearTable;

/** Writes the shipped sample logs anew: invented drives of the invented truck with thirteen ratios. */
public final class WriteSampleLogs {
    private static final GearTable TABLE = InventedTrucks.thirteen();

    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "sample-cases/logs");
        Files.createDirectories(folder);
        highRangeStarts().writeCsv(folder.resolve("unit-31_high-range-starts.csv"), Recording.usual(10), 31);
        proper(12).writeCsv(folder.resolve("unit-31_after-coaching.csv"), Recording.usual(10), 32);
        coastAndTow().writeCandump(folder.resolve("unit-32_coast-and-tow.candump"), Recording.usual(5), 33);
        lowRangeTooFast().writeCsv(folder.resolve("unit-33_low-range-too-fast.csv"), Recording.usual(10), 34);
        highRangeStarts().writeCsv(folder.resolve("unit-34_slow-logger.csv"), Recording.usual(0.2), 35);
    }

    private static SimulatedDrive through(SimulatedDrive drive, String first, String... gears) {
        drive.start(first);
        for (String gear : gears) {
            int next = index(gear);
            double landing = 1250 / (TABLE.outputRpmPerKmh() * TABLE.gear(next).ratio());
            drive.driveTo(Math.max(landing, drive.kmh() + 0.5), 0.6).shift(gear, Style.DOUBLE);
        }
        return drive;
    }

    private static int index(String gear) {
        for (int i = 0; i < TABLE.gears().size(); i++) {
            if (TABLE.gear(i).name().equals(gear)) {
                return i;
            }
        }
        throw new IllegalArgumentException(gear);
    }

    private static SimulatedDrive highRangeStarts() {
        SimulatedDrive drive = new SimulatedDrive(TABLE, 31);
        drive.stand(5);
        for (int i = 0; i < 3; i++) {
            through(drive, "5", "6", "7").drive(20, 0, 30).stop();
            through(drive, "1", "2", "3", "4", "5", "6").drive(15, 0, 30).stop();
        }
        return drive;
    }

    private static SimulatedDrive proper(int legs) {
        SimulatedDrive drive = new SimulatedDrive(TABLE, 32);
        drive.stand(5);
        for (int i = 0; i < legs; i++) {
            through(drive, "1", "2", "3", "4", "5").drive(8, 0, 30).stop();
        }
        return drive;
    }

    private static SimulatedDrive coastAndTow() {
        SimulatedDrive drive = new SimulatedDrive(TABLE, 33);
        drive.stand(5);
        through(drive, "1", "2", "3", "4", "5", "6", "7", "8").driveTo(75, 0.5).drive(20, 0, 30);
        drive.coast(70, -0.05, "8", false)
                .drive(10, 0, 30)
                .coast(45, -0.05, "8", false)
                .stop();
        return drive.tow(90, 40);
    }

    private static SimulatedDrive lowRangeTooFast() {
        SimulatedDrive drive = new SimulatedDrive(TABLE, 34);
        drive.stand(5);
        for (int i = 0; i < 3; i++) {
            through(drive, "1", "2", "3", "4", "5", "6").driveTo(36 + i, 0.5).drive(6, 0, 30);
            drive.shift("4", Style.DOUBLE).stop();
            through(drive, "1", "2", "3", "4", "5", "5-over").driveTo(27, 0.5).drive(6, 0, 30);
            drive.shift("4", Style.DOUBLE).stop();
        }
        return drive;
    }
}
