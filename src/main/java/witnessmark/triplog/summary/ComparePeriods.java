package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.triplog.event.EventKind;

/**
 * Compares two periods of one truck, say before and after coaching, kind by kind. A kind that one of the periods cannot
 * show is not compared.
 */
public final class ComparePeriods {
    /** To be read with every comparison (common practice). */
    public static final String CAUTION =
            "The test takes events as independent and evenly spread; habit events come in clusters by trip, so p is"
                    + " smaller and the interval narrower than they should be. p is twice the smaller tail, so that it"
                    + " always agrees with the interval.";

    private static final double SIGNIFICANT = 0.05;

    private ComparePeriods() {}

    /** What the comparison of one kind says. */
    public enum Outcome {
        FELL("fell"),
        ROSE("rose"),
        NO_CHANGE_SHOWN("no change that chance would not explain"),
        NOT_COMPARED("not compared");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One kind compared.
     *
     * @param rates per chance (100 km for distance); empty if one period cannot show the kind
     * @param obstacle why it is not compared; empty if it is
     */
    public record Change(EventKind kind, Outcome outcome, Optional<TwoRates> rates, String obstacle) {}

    public static List<Change> compare(TripSummary before, TripSummary after) {
        List<Change> changes = new ArrayList<>();
        for (EventKind kind : EventKind.values()) {
            changes.add(compare(kind, before.verdict(kind), after.verdict(kind)));
        }
        return changes;
    }

    private static Change compare(EventKind kind, LogVerdict before, LogVerdict after) {
        Optional<String> obstacle = obstacle("before", before).or(() -> obstacle("after", after));
        if (obstacle.isPresent()) {
            return new Change(kind, Outcome.NOT_COMPARED, Optional.empty(), obstacle.get());
        }
        TwoRates rates = TwoRates.compare(before.count(), before.chances(), after.count(), after.chances());
        return new Change(kind, outcome(rates), Optional.of(rates), "");
    }

    private static Optional<String> obstacle(String period, LogVerdict verdict) {
        boolean blind = verdict.state() == LogVerdict.State.CANNOT_BE_SEEN || !(verdict.chances() > 0);
        return blind ? Optional.of("the period " + period + " cannot show it: " + verdict.reason()) : Optional.empty();
    }

    private static Outcome outcome(TwoRates rates) {
        if (rates.countBefore() + rates.countAfter() == 0 || rates.pTwoSided() >= SIGNIFICANT) {
            return Outcome.NO_CHANGE_SHOWN;
        }
        return rates.ratio() < 1 ? Outcome.FELL : Outcome.ROSE;
    }
}
