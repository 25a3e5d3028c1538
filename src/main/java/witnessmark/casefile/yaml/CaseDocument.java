package witnessmark.casefile.yaml;

import java.util.Optional;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.history.CaseHistory;

/**
 * What one case file holds.
 *
 * @param present the case as it stands
 * @param expected what it should come to; empty except in sample cases
 * @param history how it came to stand so; empty if it was written by hand. It leads to {@code present}
 */
public record CaseDocument(CaseFile present, Optional<ExpectedOutcome> expected, Optional<CaseHistory> history) {
    public CaseDocument {
        if (history.isEmpty() && present.isSignedOff()) {
            throw new CaseRefused(
                    "signed-off: a case without its history cannot be signed off",
                    "take the line out and sign off after the import");
        }
        if (history.isPresent() && !history.get().present().equals(present)) {
            throw new CaseRefused(
                    "history: it does not lead to the case as written above it",
                    "undo the change made by hand, or take the history out to import it as a new case");
        }
    }

    /** A case without history or expectation. */
    public static CaseDocument of(CaseFile present) {
        return new CaseDocument(present, Optional.empty(), Optional.empty());
    }

    /** A case with its history. */
    public static CaseDocument of(CaseHistory history) {
        return new CaseDocument(history.present(), Optional.empty(), Optional.of(history));
    }
}
