package witnessmark.triplog;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
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
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.Threads;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadReport;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.summary.SumUp;
import witnessmark.triplog.summary.TimeSpan;

/** Reads many logs at once, a thread for each core, and sums them up truck by truck. */
public final class ReadTrips {
    /** A mapping file of this name in a folder holds for the CSV logs in it. */
    public static final String MAPPING_FILE = "mapping.yaml";

    /** Results that wait to be joined; more would fill the memory. */
    private static final int MOST_AHEAD = 32;
    /** Events kept of a whole job; the others are counted. */
    private static final int MOST_EVENTS = 50_000;

    private final List<FindLogs.Found> logs;
    private final Shared shared;
    private final Map<String, Joined> trucks = new TreeMap<>();
    private final Map<Rows, Read> firstRead = new HashMap<>();
    private int eventsLeft = MOST_EVENTS;

    private ReadTrips(List<FindLogs.Found> logs, Progress progress) {
        this.logs = logs;
        this.shared = new Shared(progress, logs);
    }

    private record Outcome(FindLogs.Found log, Optional<TripResult> trip, Optional<String> failure) {}

    /**
     * Reads files and folders. In a folder each sub-folder is a truck, and a file in the folder itself belongs to the
     * truck that its name begins with, up to the first underscore; files named themselves belong to {@code truck}.
     * A log that cannot be read is told of in its truck's failures and spoils nothing.
     *
     * @throws UnreadableLog if a folder holds no log, or a mapping file beside the logs is faulty
     */
    public static List<TruckResult> read(List<Path> places, String truck, TripTerms terms, Progress progress) {
        return new ReadTrips(new FindLogs(terms).in(places, truck), progress).read();
    }

    private List<TruckResult> read() {
        int cores = Runtime.getRuntime().availableProcessors();
        int threads = Math.max(1, Math.min(logs.size(), cores));
        boolean coresLeft = threads < cores;
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        Deque<Future<Outcome>> ahead = new ArrayDeque<>();
        try {
            for (FindLogs.Found log : logs) {
                if (ahead.size() == MOST_AHEAD) {
                    join(ahead.remove().get());
                }
                ahead.add(pool.submit(() -> read(log, coresLeft)));
            }
            while (!ahead.isEmpty()) {
                join(ahead.remove().get());
            }
            return trucks.entrySet().stream()
                    .map(e -> e.getValue().result(e.getKey()))
                    .toList();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new UnreadableLog("reading was interrupted");
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } finally {
            shared.stopped.set(true);
            pool.shutdownNow();
        }
    }

    private Outcome read(FindLogs.Found log, boolean coresLeft) {
        if (shared.stopped.get()) {
            return new Outcome(log, Optional.empty(), Optional.of(log.request().file() + ": not read, stopped before"));
        }
        try {
            Threads threads = coresLeft && ReadTrip.isLong(log.request()) ? Threads.THEIR_OWN : Threads.THE_READERS;
            return new Outcome(
                    log, Optional.of(ReadTrip.read(log.request(), shared.ofOneFile(), threads)), Optional.empty());
        } catch (UnreadableLog e) {
            return new Outcome(log, Optional.empty(), Optional.of(e.getMessage()));
        }
    }

    private void join(Outcome outcome) {
        Joined truck = trucks.computeIfAbsent(
                outcome.log().truck(), t -> new Joined(outcome.log().request().table()));
        outcome.failure().ifPresent(truck.failures::add);
        outcome.trip().ifPresent(trip -> {
            Optional<String> again =
                    truck.readBefore(trip).or(() -> ofAnotherTruck(outcome.log().truck(), trip));
            if (again.isPresent()) {
                truck.failures.add(again.get());
                return;
            }
            truck.sums.join(trip.sums());
            TripResult kept = logs.size() == 1 ? trip : trip.slim(eventsLeft);
            eventsLeft -= kept.events().size();
            truck.trips.add(kept);
        });
    }

    /** Why the log would count for two trucks: logs of two trucks never come to the same sums to the last digit. */
    private Optional<String> ofAnotherTruck(String truck, TripResult trip) {
        if (trip.summary().km() == 0) {
            return Optional.empty();
        }
        Read read = new Read(truck, trip.report().file());
        Read first = firstRead.putIfAbsent(Rows.of(trip), read);
        return first == null || first.truck().equals(truck)
                ? Optional.empty()
                : Optional.of(
                        read.file() + ": holds the same rows as " + first.file().getFileName() + " of truck "
                                + first.truck() + "; a log is of one truck, leave it out of the other");
    }

    private record Read(String truck, Path file) {}

    /** What the rows of a log came to. */
    private record Rows(double km, Map<String, Double> hoursInHand, Map<Signal, ReadReport.SignalCounts> signals) {
        static Rows of(TripResult trip) {
            return new Rows(
                    trip.summary().km(),
                    trip.summary().hoursInHand(),
                    trip.report().signals());
        }
    }

    /** The logs of one truck, as they are joined one after the other. */
    private static final class Joined {
        private final GearTable table;
        private final SumUp sums;
        private final List<TripResult> trips = new ArrayList<>();
        private final List<String> failures = new ArrayList<>();

        Joined(GearTable table) {
            this.table = table;
            this.sums = new SumUp(table);
        }

        /** Why the log would count twice; undated logs with the same rows come to the same sums to the last digit. */
        Optional<String> readBefore(TripResult trip) {
            return trips.stream()
                    .filter(held -> isSameDriving(held, trip))
                    .map(held -> trip.report().file() + ": covers the same driving as "
                            + held.report().file().getFileName() + "; it would count twice, leave it out")
                    .findFirst();
        }

        private static boolean isSameDriving(TripResult one, TripResult other) {
            return TimeSpan.isSameDriving(one.times().spans(), other.times().spans())
                    || one.times().marks().isSameDriving(other.times().marks())
                    || one.summary().km() > 0 && Rows.of(one).equals(Rows.of(other));
        }

        TruckResult result(String truck) {
            return new TruckResult(
                    truck, table, sums.summary(), sums.speedMap(), List.copyOf(trips), List.copyOf(failures));
        }
    }

    /** Progress of all files together. */
    private static final class Shared {
        private final Progress progress;
        private final long totalBytes;
        private final AtomicLong doneBytes = new AtomicLong();
        private final AtomicBoolean stopped = new AtomicBoolean();

        Shared(Progress progress, List<FindLogs.Found> logs) {
            this.progress = progress;
            this.totalBytes = logs.stream()
                    .mapToLong(l -> l.request().file().toFile().length())
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
