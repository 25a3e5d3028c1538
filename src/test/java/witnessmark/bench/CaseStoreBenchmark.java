package witnessmark.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntConsumer;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.store.CaseQuery;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.PostgresServer;
import witnessmark.casefile.store.StoreLocation;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.gearbox.Unit;

/**
 * Times lists, searches, counts and single changes on a store of many cases of some findings each.
 * Arguments: how many cases (100000); the folder to keep them in, or the file that names a shared database (a new temporary
 * folder; an existing store is used again), or the word postgres for a server of its own; how many findings a case (20).
 */
public final class CaseStoreBenchmark {
    private static final int BATCH = 2_000;
    private static final int RUNS = 25;
    private static final String[] WORDS =
            "grinds hangs slips bangs whines low high range splitter lever cold hot hill air oil clutch".split(" ");

    private final Random random = new Random(20260302);
    private final int findings;

    private CaseStoreBenchmark(int findings) {
        this.findings = findings;
    }

    public static void main(String[] args) throws Exception {
        int cases = args.length > 0 ? Integer.parseInt(args[0]) : 100_000;
        int findings = args.length > 2 ? Integer.parseInt(args[2]) : 20;
        if (args.length > 1 && args[1].equals("postgres")) {
            try (PostgresServer server = PostgresServer.start()) {
                run(server.location(server.emptyStore(), "anna"), cases, findings);
            }
            return;
        }
        Path place = args.length > 1 ? Path.of(args[1]) : Files.createTempDirectory("case-store");
        run(StoreLocation.at(place), cases, findings);
        if (Files.isDirectory(place)) {
            System.out.printf("file: %d MB%n", Files.size(place.resolve("cases.mv.db")) / 1_000_000);
        }
    }

    private static void run(StoreLocation shared, int cases, int findings) throws Exception {
        long start = System.nanoTime();
        try (CaseStore store = new CaseStore(shared, Clock.systemUTC())) {
            long there = store.count(CaseQuery.all());
            System.out.printf("open store of %d cases, cold virtual machine: %.0f ms%n", there, millisSince(start));
            new CaseStoreBenchmark(findings).fill(store, (int) there, cases);
        }
        try (CaseStore store = new CaseStore(shared, Clock.systemUTC())) {
            new CaseStoreBenchmark(findings).measure(store, cases);
        }
    }

    private void fill(CaseStore store, int from, int to) {
        long start = System.nanoTime();
        for (int first = from; first < to; first += BATCH) {
            List<CaseDocument> batch = new ArrayList<>();
            for (int i = first; i < Math.min(to, first + BATCH); i++) {
                batch.add(CaseDocument.of(sheet(i).toCaseFile()));
            }
            store.importAll(batch, "bench");
        }
        System.out.printf("import of %d cases: %.1f s%n", to - from, millisSince(start) / 1_000);
    }

    private CaseSheet sheet(int number) {
        CaseSheet sheet = new CaseSheet(id(number))
                .text(TextField.TITLE, words(4))
                .text(
                        TextField.COMPLAINT,
                        words(12) + (number % 1_000 == 0 ? " whistling" : "") + (number % 50_000 == 7 ? " qa" : ""))
                .vehicle(Vehicle.named("Tractor " + number % 700));
        for (int i = 0; i < findings; i++) {
            FindingState state = FindingState.values()[random.nextInt(3)];
            // squared, so that some findings are common and some rare
            int finding = (int) (200 * Math.pow(random.nextDouble(), 2));
            sheet.finding(new FindingEntry("finding-" + finding, state));
        }
        return sheet.measurement(new Measurement("range-regulator-pressure", 3 + random.nextDouble(), Unit.BAR));
    }

    private static CaseId id(int number) {
        return new CaseId("case-%06d".formatted(number));
    }

    private String words(int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(WORDS[random.nextInt(WORDS.length)]).append(' ');
        }
        return text.toString().strip();
    }

    private void measure(CaseStore store, int cases) {
        CaseQuery all = CaseQuery.all();
        time("list, first page", i -> store.list(all.withPage(20 + i, 0)));
        time("list from its other end", i -> store.list(all.turnedRound().withPage(20 + i, 0)));
        time("list after a case in its middle", i -> store.list(all.after(id(cases / 2 + i))));
        time("list, as many left out as may be", i -> store.list(all.withPage(20, 10_000L - i)));
        time("count of all", i -> store.count(all));
        time("count of open cases", i -> store.count(all.openOnly()));
        time("list by a common word", i -> store.list(all.withText(WORDS[i % WORDS.length])));
        time("list by a rare word", i -> store.list(all.withText("whistling")));
        time("list by a word that is nowhere", i -> store.list(all.withText("nowhere" + i)));
        time("list by three words", i -> store.list(all.withText("grinds whistling tractor")));
        time(
                "list by a word of two letters that is nowhere",
                i -> store.list(all.withText("q" + (char) ('b' + i % 20))));
        time("list by two letters, rare", i -> store.list(all.withText("qa")));
        time("list by two letters, common", i -> store.list(all.withText(WORDS[i % WORDS.length].substring(0, 2))));
        time("list by one letter", i -> store.list(all.withText(WORDS[i % WORDS.length].substring(0, 1))));
        time(
                "list by one letter that is nowhere",
                i -> store.list(all.withText("zxyjkuvn".substring(i % 8, i % 8 + 1))));
        time("list by two letters and a word", i -> store.list(all.withText("qa grinds")));
        time(
                "list by two letters, open cases",
                i -> store.list(all.withText("qa").openOnly()));
        time(
                "list by two letters that are nowhere, and finding",
                i -> store.list(
                        all.withFinding("finding-" + i, FindingState.PRESENT).withText("qb")));
        time(
                "list by common two letters and finding",
                i -> store.list(
                        all.withFinding("finding-" + i, FindingState.PRESENT).withText("gr")));
        time(
                "list of 1000 by two letters, 9,000 left out",
                i -> store.list(all.withText("gr").withPage(1_000, 9_000 + i)));
        time("list by signs that are nowhere", i -> store.list(all.withText("--" + "+*/".charAt(i % 3))));
        time("count by two letters, nowhere, as lists do", i -> store.countUpTo(1_001, all.withText("qb")));
        time("count by two letters, common, as lists do", i -> store.countUpTo(1_001, all.withText("gr")));
        time(
                "count by common two letters and finding, as lists do",
                i -> store.countUpTo(
                        1_001,
                        all.withFinding("finding-" + i, FindingState.PRESENT).withText("gr")));
        time("count by a common word, as lists do", i -> store.countUpTo(1_001, all.withText(WORDS[i % WORDS.length])));
        time("count of open cases, as lists do", i -> store.countUpTo(1_001, all.openOnly()));
        time(
                "count by finding and word, as lists do",
                i -> store.countUpTo(
                        1_001,
                        all.withFinding("finding-" + i, FindingState.PRESENT).withText("whistling")));
        time("closed cases", i -> store.list(all.closedOnly()));
        time("count by a common word", i -> store.count(all.withText(WORDS[i % WORDS.length])));
        time("count by a rare word", i -> store.count(all.withText("whistling")));
        time("list by a truck", i -> store.list(all.withText("tractor " + i)));
        time("list by a common finding", i -> store.list(all.withFinding("finding-0", FindingState.values()[i % 3])));
        time("list by a rare finding", i -> store.list(all.withFinding("finding-" + (199 - i), FindingState.PRESENT)));
        time(
                "list by two findings",
                i -> store.list(all.withFinding("finding-0", FindingState.PRESENT)
                        .withFinding("finding-" + (1 + i), FindingState.PRESENT)));
        time(
                "list by finding and word",
                i -> store.list(
                        all.withFinding("finding-" + i, FindingState.PRESENT).withText("whistling")));
        time("count by a common finding", i -> store.count(all.withFinding("finding-0", FindingState.values()[i % 3])));
        time(
                "count by a rare finding",
                i -> store.count(all.withFinding("finding-" + (199 - i), FindingState.PRESENT)));
        time("ids for completion", i -> store.ids("case-0" + i, 50));
        time("read one case", i -> store.read(id(random.nextInt(Math.min(cases, 10_000)))));
        time("verify one case", i -> store.verify(id(random.nextInt(Math.min(cases, 10_000)))));
        time(
                "set one finding, synced",
                i -> store.append(
                        id(7), new FindingSet(new FindingEntry("finding-0", FindingState.values()[i % 3])), "bench"));
    }

    /** Wall time, and the processor time of this thread, which a busy machine does not lengthen as much. */
    private static void time(String what, IntConsumer work) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double[] wall = new double[RUNS];
        double[] busy = new double[RUNS];
        for (int i = 0; i < RUNS; i++) {
            long start = System.nanoTime();
            long startBusy = threads.getCurrentThreadCpuTime();
            work.accept(i);
            busy[i] = (threads.getCurrentThreadCpuTime() - startBusy) / 1e6;
            wall[i] = millisSince(start);
        }
        double first = wall[0];
        Arrays.sort(wall);
        Arrays.sort(busy);
        System.out.printf(
                "%-54s first %7.1f   median %7.1f   slowest %7.1f ms   processor: median %7.1f   most %7.1f ms%n",
                what, first, wall[RUNS / 2], wall[RUNS - 1], busy[RUNS / 2], busy[RUNS - 1]);
    }

    private static double millisSince(long start) {
        return (System.nanoTime() - start) / 1e6;
    }
}
