package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.triplog.event.EventKind;

/**
 * Compares two periods of one truck, say before and after coaching, kind by kind. A kind that one of the periods cannot
 * show is not compared.
 */
public final class ComparePeriods {
    /** To be read with every comparison (common practice). */
    public static final String CAUTION =
            "The test takes events as independent and evenly spread; habit events come in clusters by trip, so the true"
                    + " uncertainty is larger than the figures say.";

    private ComparePeriods() {}

    /**
     * One kind compared.
     *
     * @param rates per 100 km, or per chance; empty if one period cannot show the kind
     * @param sentence for a person
     */
    public record Change(EventKind kind, Optional<TwoRates> rates, String sentence) {}

    public static List<Change> compare(TripSummary before, TripSummary after) {
        List<Change> changes = new ArrayList<>();
        for (EventKind kind : EventKind.values()) {
            changes.add(compare(kind, before.verdict(kind), after.verdict(kind)));
        }
        return changes;
    }

    private static Change compare(EventKind kind, Verdict before, Verdict after) {
        for (Verdict verdict : List.of(before, after)) {
            boolean blind = verdict.state() == Verdict.State.CANNOT_BE_SEEN || !(verdict.chances() > 0);
            if (blind) {
                String period = verdict == before ? "before" : "after";
                return new Change(
                        kind,
                        Optional.empty(),
                        kind.words() + ": not compared, the period " + period + " cannot show it (" + verdict.reason()
                                + ")");
            }
        }
        TwoRates rates = TwoRates.compare(before.count(), before.chances(), after.count(), after.chances());
        return new Change(kind, Optional.of(rates), sentence(kind, rates));
    }

    private static String sentence(EventKind kind, TwoRates rates) {
        String unit = kind.chance() == EventKind.Chance.DISTANCE
                ? "100 km"
                : kind.chance().words();
        String counts = String.format(
                Locale.ROOT,
                "%s: %d in %.3g before, %d in %.3g after (x %s)",
                kind.words(),
                rates.countBefore(),
                rates.exposureBefore(),
                rates.countAfter(),
                rates.exposureAfter(),
                unit);
        if (rates.countBefore() + rates.countAfter() == 0) {
            return counts + "; none in either";
        }
        String verdict = rates.pTwoSided() >= 0.05
                ? "no change that chance would not explain"
                : rates.ratio() < 1 ? "fell" : "rose";
        return counts
                + String.format(
                        Locale.ROOT,
                        "; ratio %.2f (95 %% from %.2f to %s), p = %.2g: %s",
                        rates.ratio(),
                        rates.lower(),
                        Double.isInfinite(rates.upper()) ? "any" : String.format(Locale.ROOT, "%.2f", rates.upper()),
                        rates.pTwoSided(),
                        verdict);
    }
}
