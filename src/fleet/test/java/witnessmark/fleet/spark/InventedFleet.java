package witnessmark.fleet.spark;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.SimulatedDrive;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.TabulateGears;
import witnessmark.truck.ReadyTrucks;

/** The logs of a fleet that never was, good and bad, in a folder. */
record InventedFleet(Path folder) {
    private static final GearTable THIRTEEN = TabulateGears.of(ReadyTrucks.named("thirteen-ratio"));
    private static final Pattern STAMP = Pattern.compile("(?m)^\\((\\d+)");
    private static final long FIRST = 1_700_000_000L;
    /** 2 March 2026, six in the morning, UTC. */
    private static final long MONDAY = 1_772_431_200L;

    private static final long DAY = 86_400;

    /** A bus log with habits, recorded from an hour of a day on. */
    void bus(String path, long seed, int day, int hour) throws IOException {
        Path file = made(path);
        DriveScripts.habits(THIRTEEN, seed).writeCandump(file, Recording.usual(10), seed);
        shift(file, MONDAY + day * DAY + hour * 3600L - FIRST);
    }

    /** A bus log of proper driving, of about 50 kB a leg. */
    void proper(String path, long seed, int day, int hour, int legs) throws IOException {
        Path file = made(path);
        DriveScripts.proper(THIRTEEN, seed, legs).writeCandump(file, Recording.usual(10), seed);
        shift(file, MONDAY + day * DAY + hour * 3600L - FIRST);
    }

    /** A CSV log without dates. */
    void csv(String path, long seed) throws IOException {
        SimulatedDrive drive = DriveScripts.habits(THIRTEEN, seed);
        drive.writeCsv(made(path), Recording.usual(5), seed);
    }

    private static void shift(Path file, long seconds) throws IOException {
        String text = Files.readString(file);
        Files.writeString(
                file, STAMP.matcher(text).replaceAll((MatchResult m) -> "(" + (Long.parseLong(m.group(1)) + seconds)));
    }

    void write(String path, byte[] bytes) throws IOException {
        Files.write(made(path), bytes);
    }

    void write(String path, String text) throws IOException {
        write(path, text.getBytes(StandardCharsets.UTF_8));
    }

    void copy(String from, String to) throws IOException {
        Files.copy(folder.resolve(from), made(to));
    }

    void packed(String from, String to) throws IOException {
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(made(to)))) {
            Files.copy(folder.resolve(from), out);
        }
    }

    private Path made(String path) throws IOException {
        Path file = folder.resolve(path);
        Files.createDirectories(file.getParent());
        return file;
    }

    /** Good logs of several trucks and days, and whatever else may lie in such a folder. */
    static InventedFleet mixed(Path folder) throws IOException {
        InventedFleet fleet = new InventedFleet(Files.createDirectories(folder));
        for (int truck = 1; truck <= 3; truck++) {
            for (int day = 0; day < 2; day++) {
                fleet.bus("haul-" + truck + "/day" + day + "-early.candump", 10L * truck + day, day, 5);
                fleet.proper("haul-" + truck + "/day" + day + "-late.candump", 10L * truck + day, day, 12, 2);
            }
        }
        for (int log = 0; log < 8; log++) {
            fleet.proper("haul-many/part-" + log + ".candump", 50 + log, log % 3, 4 + 2 * (log / 3), 1);
        }
        fleet.csv("quarry-7_first.csv", 71);
        fleet.csv("quarry-7_second.csv", 72);
        fleet.csv("own/ten.csv", 73);
        fleet.csv("=SUM(1)/a; \"b\", \u00e9\u6f22\ud83d\ude9a.csv", 74);
        fleet.csv("-7_x.csv", 75);
        fleet.copy("haul-1/day0-early.candump", "haul-1/again.candump");
        fleet.packed("haul-2/day1-early.candump", "haul-2/packed.log.gz");
        fleet.copy("haul-3/day0-late.candump", "haul-lost/whose.candump");
        fleet.bus("haul-3/other-recorder.candump", 99, 0, 5);
        bad(fleet);
        return fleet;
    }

    /** Names and entries that a file system allows and few folders of logs hold. */
    void odd() throws IOException, InterruptedException {
        for (String name : List.of(
                "odd-names/2026-03-02T06:00:00.csv",
                "12:30_flat.csv",
                "odd-names/two\nlines.csv",
                "odd-names/100%25 #1?[a]*{b}.CSV",
                "odd-names/ blank .csv",
                "odd-names/_under.csv",
                "_.csv",
                "odd names/back\\slash.csv")) {
            csv(name, name.hashCode());
        }
        csv("odd-names/plain.csv", 80);
        packed("odd-names/plain.csv", "odd-names/PACKED.CSV.GZ");
        Files.delete(folder.resolve("odd-names/plain.csv"));
        for (String none : List.of(".hidden.csv", ".hidden/log.csv", "odd-names/log.csv.xz", "odd-names/log.csv.zip")) {
            write(none, "time_s,engine_rpm\n0,600\n");
        }
        Files.createDirectories(folder.resolve("empty-folder"));
        Files.createDirectories(folder.resolve("odd-names/folder.csv"));
        Path elsewhere = Files.createDirectories(folder.resolveSibling("elsewhere"));
        new InventedFleet(elsewhere).csv("log.csv", 81);
        Files.createSymbolicLink(folder.resolve("linked-folder"), elsewhere);
        Files.createSymbolicLink(folder.resolve("linked_log.csv"), elsewhere.resolve("log.csv"));
        Files.createSymbolicLink(folder.resolve("back"), folder);
        Files.createSymbolicLink(folder.resolve("gone_log.csv"), folder.resolve("nowhere"));
        Files.createSymbolicLink(folder.resolve("itself_log.csv"), folder.resolve("itself_log.csv"));
        Files.createSymbolicLink(folder.resolve("gone-folder"), folder.resolve("nowhere"));
        csv("no-mapping/log.csv", 82);
        Files.createSymbolicLink(folder.resolve("no-mapping/mapping.yaml"), folder.resolve("nowhere"));
        csv("wide-mapping/log.csv", 83);
        write("wide-mapping/mapping.yaml", new byte[] {(byte) 0xFF, (byte) 0xFE, 't', 0});
        Process pipe =
                new ProcessBuilder("mkfifo", folder.resolve("pipe_log.csv").toString()).start();
        if (pipe.waitFor() != 0) {
            throw new IOException("mkfifo failed");
        }
    }

    private static void bad(InventedFleet fleet) throws IOException {
        byte[] noise = new byte[30_000];
        new Random(4).nextBytes(noise);
        fleet.write("bad/noise.csv", noise);
        fleet.write("bad/empty.csv", "");
        fleet.write("bad/words.txt", "This is a letter, and no log.\nIt has lines.\n");
        fleet.write("bad/wide.csv", new byte[] {(byte) 0xFF, (byte) 0xFE, 't', 0, '\n', 0});
        fleet.write("bad/cut.log.gz", new byte[] {0x1F, (byte) 0x8B, 8, 0, 1});
        fleet.write("odd-mapping/mapping.yaml", "columns: [this is no mapping");
        fleet.csv("odd-mapping/log.csv", 76);
        fleet.write("README.txt", "Not a log.");
        fleet.write("deep/er/too-deep.csv", "time_s,engine_rpm\n0,600\n");
        String log = Files.readString(fleet.folder.resolve("quarry-7_first.csv"));
        fleet.write("bad/broken-lines.csv", log.replaceFirst("(?m)^1\\.02,.*$", "1.02,broken") + "99999,1,2");
    }
}
