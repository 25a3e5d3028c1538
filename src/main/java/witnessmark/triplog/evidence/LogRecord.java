package witnessmark.triplog.evidence;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.RowMarks;
import witnessmark.triplog.summary.TimeSpan;

/**
 * What logs of one truck held, as far as their weight needs it: a small number of counts that can be kept, and added to
 * those of further logs, without the files. Several logs of one truck are one witness; only their sum is weighed.
 *
 * @param spans the times they cover, log after log; empty where not known
 * @param odometer readings of the odometer, where the logs have it
 * @param km distance by road speed
 * @param coveredHours time that the rows cover
 * @param movingHours of it on the move
 * @param tellingHours of it driving above idle with the pedal up, in logs quick enough that a gear should show
 * @param fittingHours of those the hours in which one did
 * @param coastKm distance of the long rolls out of gear
 * @param tallies by finding; none for a finding that no log could show
 * @param doubts why a log may not be this truck's, one sentence each; empty where nothing speaks against it
 * @param marks by what its rows are known again in another file
 */
public record LogRecord(
        List<TimeSpan> spans,
        Optional<Odometer> odometer,
        double km,
        double coveredHours,
        double movingHours,
        double tellingHours,
        double fittingHours,
        double coastKm,
        Map<String, Tally> tallies,
        List<String> doubts,
        RowMarks marks) {
    private static final double FINEST = 1e6;

    /**
     * How often something was found, and how often it could have been.
     *
     * @param count events
     * @param weight the sum of their confidences
     * @param chances occasions (100 km for distance) in the logs that could show it
     * @param open events that may be the thing, but that something else explains
     */
    public record Tally(long count, double weight, double chances, long open) {
        public Tally {
            if (!(count >= 0 && weight >= 0 && chances >= 0 && open >= 0)
                    || Double.isInfinite(weight)
                    || Double.isInfinite(chances)) {
                throw new IllegalArgumentException("count " + count + ", weight " + weight + ", chances " + chances
                        + ", open " + open + ": below zero or no number");
            }
        }

        /** Without open events. */
        public Tally(long count, double weight, double chances) {
            this(count, weight, chances, 0);
        }

        Tally plus(Tally other) {
            return new Tally(
                    count + other.count,
                    rounded(weight + other.weight),
                    rounded(chances + other.chances),
                    open + other.open);
        }
    }

    public LogRecord {
        for (double amount : new double[] {km, coveredHours, movingHours, tellingHours, fittingHours, coastKm}) {
            if (!(amount >= 0) || Double.isInfinite(amount)) {
                throw new IllegalArgumentException("amount " + amount + " of a log record is below zero or no number");
            }
        }
        spans = List.copyOf(spans);
        tallies = Collections.unmodifiableMap(new LinkedHashMap<>(tallies));
        doubts = List.copyOf(doubts);
    }

    /** Without marks of the rows. */
    public LogRecord(
            List<TimeSpan> spans,
            Optional<Odometer> odometer,
            double km,
            double coveredHours,
            double movingHours,
            double tellingHours,
            double fittingHours,
            double coastKm,
            Map<String, Tally> tallies,
            List<String> doubts) {
        this(
                spans,
                odometer,
                km,
                coveredHours,
                movingHours,
                tellingHours,
                fittingHours,
                coastKm,
                tallies,
                doubts,
                RowMarks.NONE);
    }

    /** The same logs with what speaks against their being this truck's. */
    public LogRecord with(List<String> newDoubts) {
        return new LogRecord(
                spans,
                odometer,
                km,
                coveredHours,
                movingHours,
                tellingHours,
                fittingHours,
                coastKm,
                tallies,
                newDoubts,
                marks);
    }

    /**
     * These logs and the others as one record; no log may be in both. Sums are rounded as their parts are, so that they
     * are the same to the last digit in whatever order logs are added.
     */
    public LogRecord plus(LogRecord other) {
        Map<String, Tally> sums = new LinkedHashMap<>(tallies);
        other.tallies.forEach((finding, tally) -> sums.merge(finding, tally, Tally::plus));
        return new LogRecord(
                joined(spans, other.spans),
                odometer.isPresent() && other.odometer.isPresent()
                        ? Optional.of(odometer.get().spanning(other.odometer.get()))
                        : odometer.or(other::odometer),
                rounded(km + other.km),
                rounded(coveredHours + other.coveredHours),
                rounded(movingHours + other.movingHours),
                rounded(tellingHours + other.tellingHours),
                rounded(fittingHours + other.fittingHours),
                rounded(coastKm + other.coastKm),
                sums,
                joined(doubts, other.doubts),
                marks.plus(other.marks));
    }

    /** To a millionth: a case keeps no more figures than mean anything. */
    static double rounded(double value) {
        return Math.round(value * FINEST) / FINEST;
    }

    private static <T> List<T> joined(List<T> one, List<T> other) {
        List<T> both = new ArrayList<>(one);
        both.addAll(other);
        return both;
    }

    /** Share of the telling hours in which a gear of this truck fitted; 0 without such time. */
    public double gearShare() {
        return tellingHours > 0 ? Math.min(1, fittingHours / tellingHours) : 0;
    }
}
