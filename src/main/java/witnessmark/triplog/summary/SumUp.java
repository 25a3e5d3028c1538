package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.event.Chances;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Adds up the tracked rows and the events of one log; sums of several logs of one truck can be joined. */
public final class SumUp implements TrackedRows {
    /** So many of the hardest events are kept. */
    public static final int WORST = 10;

    private static final int OTHER_CODES = -InHand.CANNOT_TELL;
    private static final double LONGEST_ROW_SECONDS = 60;
    /** With fewer rows a second, most of them fall into shifts and starts, and a gear that does not fit tells nothing. */
    private static final double TELLING_HERTZ = 0.8;

    private static final double RUNNING_RPM = 300;

    private final GearTable table;
    private final Timeline timeline;
    private final SpeedMap map = new SpeedMap();
    private final double[] inHandSeconds;
    private final Map<EventKind, Long> counts = new EnumMap<>(EventKind.class);
    private final List<HabitEvent> worst = new ArrayList<>();
    private final EventCoverage coverage = new EventCoverage();
    private final Chances chances = new Chances();

    private double engineSeconds;
    private double tellingSeconds;
    private double fittingSeconds;
    private double highestKmh;
    private double highestRpm;
    private double firstOdometer = Double.NaN;
    private double lastOdometer = Double.NaN;
    private double odometerKm;
    private boolean odometerKnown;
    private long shifts;
    private long leverShifts;
    private long rangeShifts;

    public SumUp(GearTable table) {
        this.table = table;
        this.timeline = new Timeline(table.gears().size());
        this.inHandSeconds = new double[table.gears().size() + OTHER_CODES];
    }

    @Override
    public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
        double[] seconds = block.secondsBefore();
        int row = from;
        while (row < to) {
            int code = inHand[row];
            double inThisHand = inHandSeconds[code + OTHER_CODES];
            for (; row < to && inHand[row] == code; row++) {
                inThisHand += lasting(seconds[row]);
            }
            inHandSeconds[code + OTHER_CODES] = inThisHand;
        }
        timeline.add(block, inHand, from, to);
        map.add(block, from, to);
        addEngine(block, from, to);
        if (block.gives(Signal.DISTANCE)) {
            addOdometer(block.column(Signal.DISTANCE), from, to);
        }
    }

    /** How long a row counts that came so many seconds after the one before. */
    static double lasting(double seconds) {
        return seconds > LONGEST_ROW_SECONDS ? LONGEST_ROW_SECONDS : seconds;
    }

    private void addEngine(RowBlock block, int from, int to) {
        double[] seconds = block.secondsBefore();
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] engine = block.column(Signal.ENGINE_SPEED);
        double running = engineSeconds;
        double kmh = highestKmh;
        double rpm = highestRpm;
        for (int i = from; i < to; i++) {
            running += engine[i] > RUNNING_RPM ? lasting(seconds[i]) : 0;
            kmh = road[i] > kmh ? road[i] : kmh;
            rpm = engine[i] > rpm ? engine[i] : rpm;
        }
        engineSeconds = running;
        highestKmh = kmh;
        highestRpm = rpm;
    }

    private void addOdometer(double[] odometer, int from, int to) {
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(odometer[i])) {
                firstOdometer = Double.isNaN(firstOdometer) ? odometer[i] : firstOdometer;
                lastOdometer = odometer[i];
            }
        }
    }

    @Override
    public void speedJump(long timeMicros, long line, double fromKmh, double toKmh, double seconds) {
        // An event like the others; it comes by event().
    }

    /** Counts an event and keeps it if it is among the worst. */
    public void event(HabitEvent event) {
        counts.merge(event.kind(), 1L, Long::sum);
        worst.add(event);
        if (worst.size() > 4 * WORST) {
            keepWorst();
        }
    }

    private void keepWorst() {
        worst.sort(Comparator.comparingDouble((HabitEvent e) -> -e.severity() * e.confidence())
                .thenComparingLong(HabitEvent::startMicros));
        if (worst.size() > WORST) {
            worst.subList(WORST, worst.size()).clear();
        }
    }

    /** To be called once after the last row of a log, with what the reading and the detectors counted. */
    public void end(Map<Signal, Long> valid, Chances held, long allShifts, long lever, long range) {
        coverage.add(new JudgeCoverage(table, valid, held), held);
        chances.add(held);
        if (valid.getOrDefault(Signal.ENGINE_SPEED, 0L) >= TELLING_HERTZ * held.coveredSeconds()) {
            tellingSeconds += held.pullingSeconds();
            fittingSeconds += held.pullingSeconds() * held.gearKnownShare();
        }
        shifts += allShifts;
        leverShifts += lever;
        rangeShifts += range;
        endOdometer();
    }

    private void endOdometer() {
        double driven = lastOdometer - firstOdometer;
        if (driven >= 0) {
            odometerKm += driven;
            odometerKnown = true;
        }
        firstOdometer = Double.NaN;
        lastOdometer = Double.NaN;
    }

    /** Joins the ended sums of another log of the same truck; its timeline stays its own. */
    public void join(SumUp other) {
        for (int i = 0; i < inHandSeconds.length; i++) {
            inHandSeconds[i] += other.inHandSeconds[i];
        }
        map.add(other.map);
        other.counts.forEach((kind, count) -> counts.merge(kind, count, Long::sum));
        worst.addAll(other.worst);
        keepWorst();
        coverage.add(other.coverage);
        chances.add(other.chances);
        engineSeconds += other.engineSeconds;
        tellingSeconds += other.tellingSeconds;
        fittingSeconds += other.fittingSeconds;
        highestKmh = Math.max(highestKmh, other.highestKmh);
        highestRpm = Math.max(highestRpm, other.highestRpm);
        odometerKm += other.odometerKm;
        odometerKnown |= other.odometerKnown;
        shifts += other.shifts;
        leverShifts += other.leverShifts;
        rangeShifts += other.rangeShifts;
    }

    public TripSummary summary() {
        keepWorst();
        double km = chances.km();
        Map<EventKind, CountInterval> rates = new EnumMap<>(EventKind.class);
        if (km > 0) {
            counts.forEach((kind, count) -> rates.put(kind, CountInterval.of(count, exposureKm(kind) / 100)));
        }
        return new TripSummary(
                km,
                odometerKnown ? Optional.of(odometerKm) : Optional.empty(),
                chances.coveredSeconds() / 3600,
                chances.movingSeconds() / 3600,
                tellingSeconds / 3600,
                fittingSeconds / 3600,
                engineSeconds / 3600,
                highestKmh,
                highestRpm,
                hoursInHand(),
                shifts,
                leverShifts,
                rangeShifts,
                chances.gearKnownShare(),
                counts.isEmpty() ? Map.of() : new EnumMap<>(counts),
                rates,
                List.copyOf(worst),
                coverage.judge(counts));
    }

    /** Distance of the logs that could show the kind; of all of them where it showed against expectation. */
    private double exposureKm(EventKind kind) {
        return coverage.km(kind) > 0 ? coverage.km(kind) : chances.km();
    }

    private Map<String, Double> hoursInHand() {
        Map<String, Double> hours = new LinkedHashMap<>();
        for (int gear = 0; gear < table.gears().size(); gear++) {
            hours.put(table.gear(gear).name(), inHandSeconds[gear + OTHER_CODES] / 3600);
        }
        for (int code = InHand.NEUTRAL; code >= InHand.CANNOT_TELL; code--) {
            hours.put(InHand.word(table, code), inHandSeconds[code + OTHER_CODES] / 3600);
        }
        return hours;
    }

    public Timeline timeline() {
        return timeline;
    }

    public SpeedMap speedMap() {
        return map;
    }

    public Chances chances() {
        return chances;
    }
}
