package witnessmark.triplog.road;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.UnreadableLog;

/**
 * Measures recall of the visible and precision, kind by kind, with the columns mapped by hand and by guess. Even seeds
 * are for work on the program, odd ones are held apart: {@code RoadReport FIRST LAST [even|odd] [show]}.
 */
public final class RoadReport {
    private RoadReport() {}

    /** Prints the tables. */
    public static void main(String[] args) throws IOException {
        Set<String> words = Set.of(args);
        int first = Integer.parseInt(args[0]);
        int last = Integer.parseInt(args[1]);
        boolean show = words.contains("show");
        RoadScore hand = new RoadScore(show);
        RoadScore guess = new RoadScore(words.contains("showguess"));
        RoadScore clean = new RoadScore(true);
        Path folder = Files.createTempDirectory("road");
        double hours = 0;
        double cleanHours = 0;
        for (int seed = first; seed <= last; seed++) {
            if (words.contains("even") && seed % 2 != 0 || words.contains("odd") && seed % 2 == 0) {
                continue;
            }
            RoadDriver drive = RoadTrip.habits(seed);
            hours += drive.t / 3600;
            RoadLog log = log(drive, seed);
            Path file = folder.resolve("road-" + seed + ".log");
            log.write(file);
            hand.add(drive, log, read(file, drive, log.byHand()).events(), name(seed, log));
            try {
                TripResult guessed = read(file, drive, Optional.empty());
                guess.add(drive, log, guessed.events(), name(seed, log));
                if (words.contains("showguess")) {
                    System.out.println(guessed.mappingNotes());
                }
            } catch (UnreadableLog e) {
                System.out.println("guess refused: " + e.getMessage());
                guess.add(drive, log, java.util.List.of(), name(seed, log));
            }
            RoadDriver good = RoadTrip.clean(seed + 50_000);
            cleanHours += good.t / 3600;
            RoadLog cleanLog = log(good, seed);
            cleanLog.write(file);
            clean.add(good, cleanLog, read(file, good, cleanLog.byHand()).events(), "clean " + name(seed, cleanLog));
            if (words.contains("keep")) {
                log.write(file);
            } else {
                Files.delete(file);
            }
        }
        System.out.printf("by hand, %.1f h%n%sby guess%n%s", hours, hand.table(), guess.table());
        System.out.printf("clean, %.1f h: %d false%n%s", cleanHours, clean.falseEvents, clean.table());
    }

    static String name(int seed, RoadLog log) {
        return seed + " " + log.style + " " + log.hertz + " Hz "
                + log.given.stream().map(s -> s.id()).collect(Collectors.joining("+"))
                + log.frozen.map(f -> " frozen " + f).orElse("");
    }

    static RoadLog log(RoadDriver drive, int seed) {
        double hertz = RoadLog.RATES[Math.floorMod(seed / 2 + seed / 10, 5)];
        RoadLog.Style style = RoadLog.Style.values()[Math.floorMod(seed / 2 * 7 + seed % 2 * 3, 6)];
        return new RoadLog(drive, seed, hertz, style, seed / 2 % 3 != 0);
    }

    static TripResult read(Path file, RoadDriver drive, Optional<ColumnMapping> mapping) {
        return ReadTrip.read(
                new TripRequest(file, drive.table, HabitLimits.usual(), mapping, false, Optional.empty()),
                Progress.SILENT);
    }
}
