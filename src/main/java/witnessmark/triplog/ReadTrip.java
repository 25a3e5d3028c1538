package witnessmark.triplog;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.triplog.event.FindEvents;
import witnessmark.triplog.event.GroupActs;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.evidence.TakeRecord;
import witnessmark.triplog.gear.Threads;
import witnessmark.triplog.gear.TrackGears;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.read.BrokenLines;
import witnessmark.triplog.read.ClockFaults;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.GuessMapping;
import witnessmark.triplog.read.LogBytes;
import witnessmark.triplog.read.LogFormat;
import witnessmark.triplog.read.LogHead;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadLog;
import witnessmark.triplog.read.ReadReport;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.summary.SumUp;
import witnessmark.triplog.summary.TakeTimes;
import witnessmark.triplog.summary.TripSummary;

/** Reads one log to its result in one pass and in memory that does not grow with the file. */
public final class ReadTrip implements TrackedRows {
    /** More events than this are counted but not kept. */
    public static final int MOST_EVENTS = 20_000;

    /** A shorter file is read before other threads are under way. */
    private static final long SHORT_BYTES = 2_000_000;

    /** Share of rows at which the time goes far back from which on they stand in no order. */
    private static final double NO_ORDER = 0.1;

    /** The same of rows that go back by however little: such a log runs backwards. */
    private static final double BACKWARDS = 0.9;

    private final TripRequest request;
    private final TrackGears tracker;
    private final FindEvents finder;
    private final SumUp sums;
    private final TakeTimes times = new TakeTimes();
    private final Optional<GearSeconds> seconds;
    private final List<HabitEvent> events = new ArrayList<>();
    private long leftOut;

    private ReadTrip(TripRequest request, Threads threads) {
        this.request = request;
        this.tracker = new TrackGears(request.table(), this, threads);
        this.finder = new FindEvents(request.table(), request.limits(), tracker::outputRpmPerKmh, this::found);
        this.sums = new SumUp(request.table());
        this.seconds = request.seconds().map(s -> new GearSeconds(request.table(), tracker::outputRpmPerKmh, s));
    }

    /**
     * @throws witnessmark.triplog.read.UnreadableLog if the file is no log, or its mapping does not fit; a broken or
     *     truncated log is read as far as it goes
     */
    public static TripResult read(TripRequest request, Progress progress) {
        boolean worthIt = Runtime.getRuntime().availableProcessors() > 1 && isLong(request);
        return read(request, progress, worthIt ? Threads.THEIR_OWN : Threads.THE_READERS);
    }

    /** Whether the file is so long that it is worth other threads. */
    static boolean isLong(TripRequest request) {
        return request.file().toFile().length() > SHORT_BYTES;
    }

    static TripResult read(TripRequest request, Progress progress, Threads threads) {
        return read(request, LogHead.of(request.file()), progress, threads);
    }

    /** The same, on the caller's thread, of bytes that need not be a file of this machine; the request's file names them. */
    public static TripResult read(TripRequest request, LogBytes bytes, Progress progress) {
        return read(request, LogHead.of(request.file(), bytes), progress, Threads.THE_READERS);
    }

    private static TripResult read(TripRequest request, LogHead head, Progress progress, Threads threads) {
        ReadTrip trip = new ReadTrip(request, threads);
        try {
            return trip.read(head, progress);
        } finally {
            trip.tracker.close();
        }
    }

    private TripResult read(LogHead head, Progress progress) {
        boolean guess = head.format() == LogFormat.CSV && request.mapping().isEmpty();
        Optional<GuessMapping.Guess> guessed = guess ? Optional.of(head.guess()) : Optional.empty();
        Optional<ColumnMapping> mapping =
                guessed.map(GuessMapping.Guess::mapping).or(request::mapping);
        ReadReport report = ReadLog.read(head, mapping, request.hash(), progress, tracker);
        tracker.end();
        refuseEmpty(report);
        refuseMixedOrder(report);
        if (tracker.speedFactor().misfit()) {
            finder.doubtGears(String.format(
                    Locale.ROOT,
                    "the gears fit poorly (%.0f %% of the steady driving) and would fit better if road speed were far off:"
                            + " check ratios, axle, tyre and the unit of speed",
                    100 * tracker.speedFactor().share()));
        }
        finder.end();
        events.sort(Comparator.comparingLong(e -> report.newestFirst() ? -e.firstLine() : e.firstLine()));
        seconds.ifPresent(GearSeconds::end);
        Map<Signal, Long> valid = new EnumMap<>(Signal.class);
        report.signals().forEach((signal, counts) -> valid.put(signal, counts.valid()));
        sums.end(valid, finder.chances(), finder.shifts(), finder.leverShifts(), finder.rangeShifts());
        TripSummary summary = sums.summary();
        List<HabitEvent> acts =
                GroupActs.of(events).stream().map(HabitEvent::withLinesInOrder).toList();
        return new TripResult(
                report,
                tracker.clockFaults(),
                tracker.speedFactor(),
                tracker.factorDrift(),
                guessed.map(GuessMapping.Guess::notes).orElse(List.of()),
                tracker.frozen(),
                times.times(),
                summary,
                acts,
                leftOut,
                TakeRecord.of(summary, acts, request.table(), times.times()),
                sums.timeline().bins(),
                sums.speedMap(),
                sums,
                request.table());
    }

    private static void refuseEmpty(ReadReport report) {
        if (report.rows() > 0 || report.partial()) {
            return;
        }
        String why = report.broken().isEmpty()
                ? report.format() == LogFormat.CANDUMP
                        ? "no frame of the groups that are read"
                        : "nothing stands below its header"
                : report.broken().stream().map(BrokenLines.Tally::sentence).collect(Collectors.joining("; "));
        throw new UnreadableLog(
                report.file() + ": no row of it can be used: " + why,
                "look at its beginning with log look, and give a mapping if its columns are misread");
    }

    /** Rows a little late, as where two sources write one log, are left out; only those that go far back tell of no order. */
    private void refuseMixedOrder(ReadReport report) {
        ClockFaults clock = tracker.clockFaults();
        long back = clock.setBack() + clock.backward();
        boolean mixed = clock.setBack() > NO_ORDER * report.rows() || back > BACKWARDS * report.rows();
        if (report.rows() > 20 && mixed) {
            throw new UnreadableLog(
                    String.format(
                            Locale.ROOT,
                            "%s: its rows stand in no order of time: it goes back at %d of %d",
                            report.file(),
                            back,
                            report.rows()),
                    "sort the rows by time and read it again");
        }
    }

    private void found(HabitEvent event) {
        sums.event(event);
        if (events.size() < MOST_EVENTS) {
            events.add(event);
        } else {
            leftOut++;
        }
    }

    @Override
    public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
        finder.rows(block, inHand, scatter, from, to);
        sums.rows(block, inHand, scatter, from, to);
        times.rows(block, from, to);
        seconds.ifPresent(s -> s.rows(block, inHand, scatter, from, to));
    }

    @Override
    public void speedJump(long timeMicros, long line, double fromKmh, double toKmh, double jumpSeconds) {
        finder.speedJump(timeMicros, line, fromKmh, toKmh, jumpSeconds);
    }
}
