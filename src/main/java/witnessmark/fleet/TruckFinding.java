package witnessmark.fleet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.Thin;

/**
 * What all counted logs of a truck say of one finding. A log names a truck, not who drove it; a worn part can look like
 * a habit.
 *
 * @param logs how many logs it rests on
 */
public record TruckFinding(String truck, LogEvidence said, long logs) {
    private static final MathContext FIGURES = new MathContext(6);

    /** Its row in {@link FleetTable#FINDINGS}; likelier below 1 speaks against. */
    public List<Object> cells() {
        String speaks = said.speaksFor() ? "for" : said.speaksAgainst() ? "against" : "open";
        return List.of(
                truck,
                said.finding(),
                said.state().name().toLowerCase(Locale.ROOT),
                speaks,
                said.count(),
                FleetColumn.rounded(said.chances(), 6),
                BigDecimal.valueOf(said.factor()).round(FIGURES).doubleValue(),
                logs,
                said.sentence(),
                said.thin().map(Thin::words).orElse(""));
    }
}
