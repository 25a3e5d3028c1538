package witnessmark.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import witnessmark.triplog.DetectionScore;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.SimulatedDrive;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.gear.GearTable;

/** Prints precision and recall by event kind on simulated drives of three invented trucks, at several rates. */
public final class LogEventBenchmark {
    public static void main(String[] args) throws IOException {
        int seeds = args.length > 0 ? Integer.parseInt(args[0]) : 10;
        Path file = Files.createTempFile("drive", ".csv");
        double[] rates = args.length > 1 ? new double[] {Double.parseDouble(args[1])} : new double[] {10, 5, 2, 1, 0.2};
        for (double hertz : rates) {
            DetectionScore score = new DetectionScore();
            DetectionScore quiet = new DetectionScore();
            for (GearTable table :
                    List.of(InventedTrucks.ten(), InventedTrucks.thirteen(), InventedTrucks.eighteen())) {
                for (long seed = 1; seed <= seeds; seed++) {
                    Recording how = new Recording(
                            hertz,
                            Double.parseDouble(System.getProperty("rpm-noise", "8")),
                            Double.parseDouble(System.getProperty("kmh-noise", "0.15")),
                            Double.parseDouble(System.getProperty("kmh-step", "0.05")),
                            Double.parseDouble(System.getProperty("dropouts", "0.005")),
                            0.94 + 0.12 * (seed % 5) / 4.0);
                    SimulatedDrive drive = DriveScripts.habits(table, seed);
                    drive.writeCsv(file, how, seed);
                    score.add(drive, DetectionScore.events(file, table), 0);
                    SimulatedDrive proper = DriveScripts.proper(table, seed, 6);
                    proper.writeCsv(file, how, seed);
                    quiet.add(proper, DetectionScore.events(file, table), 0);
                }
            }
            System.out.printf("%n%-32s at %s rows a second%n", "kind", hertz);
            System.out.printf(
                    "%-32s %6s %6s %8s %9s %s%n",
                    "", "true", "found", "recall", "precision", "found in proper driving");
            for (EventKind kind : EventKind.values()) {
                System.out.printf(
                        "%-32s %6d %6d %8.3f %9.3f %d%n",
                        kind,
                        score.truths(kind),
                        score.found(kind),
                        score.recall(kind),
                        score.precision(kind),
                        quiet.found(kind));
            }
        }
        Files.delete(file);
    }
}
