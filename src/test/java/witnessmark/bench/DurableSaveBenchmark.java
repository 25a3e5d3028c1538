package witnessmark.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.time.Clock;
import java.util.Arrays;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreLocation;
import witnessmark.gearbox.Layout;

/**
 * Times one entry from the call to the acknowledgement, on the disk, turn about with a bare insert of the same text into
 * SQLite with synchronous=FULL, without and with its write-ahead log. Arguments: how many (400), the folder.
 */
public final class DurableSaveBenchmark {
    private DurableSaveBenchmark() {}

    public static void main(String[] args) throws Exception {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 400;
        Path folder = args.length > 1 ? Path.of(args[1]) : Files.createTempDirectory("durable-save");
        CaseId id = new CaseId("bench");
        double[] own = new double[count];
        double[] rollback = new double[count];
        double[] ahead = new double[count];
        double[] busy = new double[count];
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        try (CaseStore store = new CaseStore(StoreLocation.in(folder.resolve("store")), Clock.systemUTC());
                Connection plain = sqlite(folder.resolve("rollback.db"), "delete");
                Connection wal = sqlite(folder.resolve("wal.db"), "wal");
                PreparedStatement intoPlain = plain.prepareStatement("insert into entry (body) values (?)");
                PreparedStatement intoWal = wal.prepareStatement("insert into entry (body) values (?)")) {
            store.open(new Opened(id, "t", "", Vehicle.unknown(), Layout.unknown()), "bench");
            for (int i = -100; i < count; i++) {
                String note = "note " + i + " of some length, as a technician types it";
                intoPlain.setString(1, note);
                intoWal.setString(1, note);
                long busyBefore = threads.getCurrentThreadCpuTime();
                double first = millis(() -> store.append(id, new NoteAdded(note), "bench"));
                double ownBusy = (threads.getCurrentThreadCpuTime() - busyBefore) / 1e6;
                double second = millis(intoPlain::execute);
                double third = millis(intoWal::execute);
                if (i >= 0) {
                    own[i] = first;
                    busy[i] = ownBusy;
                    rollback[i] = second;
                    ahead[i] = third;
                }
            }
        }
        print("durable save of one entry", own);
        print("  of it processor time", busy);
        print("SQLite, rollback journal", rollback);
        print("SQLite, write-ahead log", ahead);
    }

    private static Connection sqlite(Path file, String journal) throws Exception {
        Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        try (var statement = connection.createStatement()) {
            statement.execute("pragma journal_mode=" + journal);
            statement.execute("pragma synchronous=full");
            statement.execute("create table entry (id integer primary key, body text)");
        }
        return connection;
    }

    /** Work to be timed. */
    private interface Work {
        void run() throws Exception;
    }

    private static double millis(Work work) throws Exception {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e6;
    }

    private static void print(String what, double[] times) {
        Arrays.sort(times);
        System.out.printf(
                "%-28s median %.2f   95 of 100 under %.2f   slowest %.2f ms%n",
                what, times[times.length / 2], times[times.length * 95 / 100], times[times.length - 1]);
    }
}
