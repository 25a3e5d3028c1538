package witnessmark.triplog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.stream.Stream;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadMapping;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.summary.SumUp;

/** Reads many logs at once, a thread for each core, and sums them up truck by truck. */
public final class ReadTrips {
    /** A mapping file of this name in a folder holds for the CSV logs in it. */
    public static final String MAPPING_FILE = "mapping.yaml";

    private static final int MOST_FILES = 100_000;

    private ReadTrips() {}

    /** One file of a job and the truck it belongs to. */
    private record Job(String truck, TripRequest request) {}

    private record Outcome(Job job, Optional<TripResult> trip, Optional<String> failure) {}

    /**
     * Reads a folder: each sub-folder is a truck; files in the folder itself belong to the truck that their name begins
     * with, up to the first underscore.
     *
     * @param tableOf the numbers of each truck, by name
     * @param hash whether to take the files' SHA-256
     * @throws UnreadableLog if there is no such folder, it holds no file, or a mapping file in it is faulty
     */
    public static List<TruckResult> folder(
            Path folder, Function<String, GearTable> tableOf, boolean hash, Progress progress) {
        List<Path> files = files(folder);
        if (files.isEmpty()) {
            throw new UnreadableLog(
                    folder + ": no log files in this folder (looked for .csv .log .txt .candump, also .gz)");
        }
        List<Job> jobs = new ArrayList<>();
        for (Path file : files) {
            String truck = truck(folder, file);
            TripRequest plain = TripRequest.of(file, tableOf.apply(truck));
            jobs.add(new Job(
                    truck,
                    new TripRequest(
                            file, plain.table(), plain.limits(), mapping(folder, file), hash, Optional.empty())));
        }
        return read(jobs, progress);
    }

    /** Reads given logs of one truck. */
    public static TruckResult truck(String truck, List<TripRequest> requests, Progress progress) {
        List<Job> jobs = requests.stream().map(r -> new Job(truck, r)).toList();
        return read(jobs, progress).get(0);
    }

    private static List<Path> files(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new UnreadableLog(folder + ": no such folder");
        }
        try (Stream<Path> walk = Files.walk(folder, 2)) {
            return walk.filter(Files::isRegularFile)
                    .filter(f -> f.getFileName().toString().matches("(?i)[^.].*\\.(csv|log|txt|candump|asc)(\\.gz)?"))
                    .sorted()
                    .limit(MOST_FILES)
                    .toList();
        } catch (IOException e) {
            throw new UnreadableLog(folder + ": cannot be listed (" + e.getMessage() + ")");
        }
    }

    private static String truck(Path folder, Path file) {
        Path inside = folder.relativize(file);
        if (inside.getNameCount() > 1) {
            return inside.getName(0).toString();
        }
        return file.getFileName().toString().replaceFirst("[_.].*", "");
    }

    private static Optional<ColumnMapping> mapping(Path folder, Path file) {
        for (Path place : List.of(file.resolveSibling(MAPPING_FILE), folder.resolve(MAPPING_FILE))) {
            if (Files.isRegularFile(place)) {
                try {
                    return Optional.of(ReadMapping.from(place.toString(), Files.readString(place)));
                } catch (IOException e) {
                    throw new UnreadableLog(place + ": cannot be read (" + e.getMessage() + ")");
                }
            }
        }
        return Optional.empty();
    }

    private static List<TruckResult> read(List<Job> jobs, Progress progress) {
        Shared shared = new Shared(progress, jobs);
        int threads = Math.max(1, Math.min(jobs.size(), Runtime.getRuntime().availableProcessors()));
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Outcome>> futures = jobs.stream()
                    .map(job -> pool.submit(() -> read(job, shared)))
                    .toList();
            Map<String, List<Outcome>> byTruck = new TreeMap<>();
            for (Future<Outcome> future : futures) {
                Outcome outcome = future.get();
                byTruck.computeIfAbsent(outcome.job().truck(), t -> new ArrayList<>())
                        .add(outcome);
            }
            return byTruck.entrySet().stream()
                    .map(e -> join(e.getKey(), e.getValue()))
                    .toList();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new UnreadableLog("reading was interrupted");
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private static Outcome read(Job job, Shared shared) {
        if (shared.stopped.get()) {
            return new Outcome(job, Optional.empty(), Optional.of(job.request().file() + ": not read, stopped before"));
        }
        try {
            return new Outcome(job, Optional.of(ReadTrip.read(job.request(), shared.ofOneFile())), Optional.empty());
        } catch (UnreadableLog e) {
            return new Outcome(job, Optional.empty(), Optional.of(e.getMessage()));
        }
    }

    private static TruckResult join(String truck, List<Outcome> outcomes) {
        List<TripResult> trips = outcomes.stream()
                .flatMap(o -> o.trip().stream())
                .sorted(Comparator.comparing(t -> t.report().file()))
                .toList();
        List<String> failures =
                outcomes.stream().flatMap(o -> o.failure().stream()).toList();
        SumUp sums = new SumUp(outcomes.get(0).job().request().table());
        trips.forEach(t -> sums.join(t.sums()));
        return new TruckResult(truck, sums.summary(), sums.speedMap(), trips, failures);
    }

    /** Progress of all files together. */
    private static final class Shared {
        private final Progress progress;
        private final long totalBytes;
        private final AtomicLong doneBytes = new AtomicLong();
        private final AtomicBoolean stopped = new AtomicBoolean();

        Shared(Progress progress, List<Job> jobs) {
            this.progress = progress;
            this.totalBytes = jobs.stream()
                    .mapToLong(j -> j.request().file().toFile().length())
                    .sum();
        }

        Progress ofOneFile() {
            long[] before = new long[1];
            return (done, total) -> {
                long all = doneBytes.addAndGet(done - before[0]);
                before[0] = done;
                synchronized (progress) {
                    if (!stopped.get() && !progress.goOn(all, totalBytes)) {
                        stopped.set(true);
                    }
                }
                return !stopped.get();
            };
        }
    }
}
