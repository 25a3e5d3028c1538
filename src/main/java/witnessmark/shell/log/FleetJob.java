package witnessmark.shell.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.fleet.FleetFile;
import witnessmark.fleet.FleetFolder;
import witnessmark.fleet.FleetResult;
import witnessmark.fleet.FleetTerms;
import witnessmark.fleet.ReadFleetLog;
import witnessmark.fleet.ReadOutcome;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.Refused;
import witnessmark.shell.truck.Trucks;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.WhyUnreadable;
import witnessmark.truck.TruckFolder;

/** Reads the logs of a fleet in one folder, over all cores of this machine. */
@Component
class FleetJob {
    private final ObjectProvider<Trucks> trucks;

    FleetJob(ObjectProvider<Trucks> trucks) {
        this.trucks = trucks;
    }

    /**
     * What to read.
     *
     * @param folder of the fleet: a sub-folder for each truck, or files named by truck
     * @param truck profile of the trucks that have none of their own; empty for none
     * @param profiles folder of the trucks' own profiles; empty for those kept beside the cases
     * @param mapping file for all CSV logs; empty for those beside the logs, or to guess
     */
    record Order(Path folder, String truck, GivenPath profiles, GivenPath mapping, HabitLimits.Load load) {}

    /** Reads it all; throws {@link Refused} if there is no log, or if it was stopped. */
    FleetResult run(Order order) {
        if (!Files.isDirectory(order.folder())) {
            throw new Refused("'" + order.folder() + "' is no folder", "give that of the fleet's logs");
        }
        FleetFolder there = listed(order.folder());
        if (there.logs().isEmpty() && there.unlisted().isEmpty()) {
            throw new Refused(
                    "'" + order.folder() + "' holds no log files",
                    "looked for were .csv .log .txt .candump .asc, also .gz");
        }
        FleetTerms terms = terms(order, there);
        try (WatchReading watch = WatchReading.onTerminal()) {
            List<ReadOutcome> outcomes = new ArrayList<>(there.unlisted());
            outcomes.addAll(read(order.folder(), there.logs(), terms, watch));
            if (watch.isStopped()) {
                throw new Refused("stopped before the end", "nothing was written");
            }
            return FleetResult.of(outcomes);
        }
    }

    private static FleetFolder listed(Path folder) {
        try {
            return FleetFolder.of(folder);
        } catch (IOException e) {
            throw new Refused(
                    "'" + folder + "' cannot be listed (" + WhyUnreadable.of(e) + ")", "check that you may read it");
        }
    }

    private FleetTerms terms(Order order, FleetFolder there) {
        TruckFolder own = order.profiles().isEmpty()
                ? trucks.getObject().kept()
                : new TruckFolder(existing(order.profiles().path()));
        return new FleetTerms(
                there.profiles(own),
                order.truck().isEmpty() ? null : trucks.getObject().yaml(checked(order.truck())),
                there.mappingsIn(order.folder()),
                order.mapping().isEmpty() ? null : text(order.mapping().path()),
                order.load());
    }

    private String checked(String truck) {
        trucks.getObject().find(truck);
        return truck;
    }

    private static Path existing(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new Refused("--profiles '" + folder + "' is no folder", "give that of the trucks' profiles");
        }
        return folder;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new Refused("'" + file + "' cannot be read", "check that it is there and is UTF-8 text");
        }
    }

    /** The largest first, so that none is left to run alone at the end. */
    private static List<ReadOutcome> read(Path folder, List<FleetFile> files, FleetTerms terms, Progress watch) {
        int threads = Math.max(1, Math.min(files.size(), Runtime.getRuntime().availableProcessors()));
        ThreadLocal<ReadFleetLog> reader = ThreadLocal.withInitial(() -> new ReadFleetLog(terms));
        Together progress =
                new Together(watch, files.stream().mapToLong(FleetFile::bytes).sum());
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<ReadOutcome>> running = files.stream()
                    .sorted(Comparator.comparingLong(FleetFile::bytes).reversed())
                    .map(f ->
                            pool.submit(() -> reader.get().read(f, FleetFolder.bytes(folder, f), progress.ofOneFile())))
                    .toList();
            List<ReadOutcome> outcomes = new ArrayList<>();
            for (Future<ReadOutcome> one : running) {
                outcomes.add(one.get());
            }
            return outcomes;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Refused("reading was interrupted", "nothing was written");
        } catch (ExecutionException e) {
            throw new IllegalStateException(Optional.ofNullable(e.getCause()).orElse(e));
        } finally {
            pool.shutdownNow();
        }
    }

    /** Progress of all files together. */
    private record Together(Progress progress, long totalBytes, AtomicLong doneBytes) {
        Together(Progress progress, long totalBytes) {
            this(progress, totalBytes, new AtomicLong());
        }

        Progress ofOneFile() {
            long[] before = new long[1];
            return (done, total) -> {
                long all = doneBytes.addAndGet(done - before[0]);
                before[0] = done;
                synchronized (progress) {
                    return progress.goOn(all, totalBytes);
                }
            };
        }
    }
}
