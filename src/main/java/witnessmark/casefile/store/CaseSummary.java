package witnessmark.casefile.store;

import java.time.Instant;
import java.util.Optional;
import witnessmark.casefile.CaseId;

/**
 * One line of a list of cases.
 *
 * @param unit the fleet's own name for the truck, empty where not said
 * @param signedOff when it was closed, empty while it is open
 * @param entries how many entries its history has
 */
public record CaseSummary(
        CaseId id,
        String title,
        String unit,
        Instant opened,
        Instant changed,
        Optional<Instant> signedOff,
        long entries) {}
