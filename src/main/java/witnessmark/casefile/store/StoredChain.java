package witnessmark.casefile.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck.Broken;
import witnessmark.casefile.history.Entry;
import witnessmark.refusal.Refusal;

/** Compares a case in the store with itself: rows with their hashes, the chain with its head, the state with the fold. */
final class StoredChain {
    static final String TABLES_DIFFER = "the tables that are searched do not say what the entries say";

    private StoredChain() {}

    static KeptCase look(CaseRows rows, CaseId id) {
        CaseRows.Head head = Histories.known(id, rows.head(id));
        List<Entry> entries = new ArrayList<>();
        String before = CanonicalText.NO_HASH;
        for (CaseRows.Row row : rows.entries(head.caseNo())) {
            long expected = entries.size() + 1L;
            Optional<Broken> broken = broken(row, expected, before);
            if (broken.isPresent()) {
                return KeptCase.broken(broken.get());
            }
            try {
                entries.add(row.entry());
            } catch (Refusal e) {
                return KeptCase.broken(new Broken(expected, "entry " + expected + " cannot be read"));
            }
            before = row.hash();
        }
        return compared(rows, head, entries, before);
    }

    private static Optional<Broken> broken(CaseRows.Row row, long expected, String before) {
        if (row.number() != expected) {
            return Optional.of(new Broken(
                    expected, "entry " + expected + " is missing; entry " + row.number() + " stands in its place"));
        }
        if (!row.previousHash().equals(before)) {
            return Optional.of(new Broken(expected, "entry " + expected + " does not follow from the one before it"));
        }
        return row.isTrue()
                ? Optional.empty()
                : Optional.of(new Broken(expected, "entry " + expected + " is not as it was written"));
    }

    private static KeptCase compared(CaseRows rows, CaseRows.Head head, List<Entry> entries, String lastHash) {
        long last = entries.size();
        if (head.lastNumber() != last || !head.lastHash().equals(lastHash)) {
            return KeptCase.broken(new Broken(
                    Math.min(last, head.lastNumber()) + 1,
                    "the case should end with entry " + head.lastNumber() + ", the entries end with " + last));
        }
        try {
            CaseHistory history = CaseHistory.of(entries);
            return rows.saysTheSame(head.caseNo(), history)
                    ? KeptCase.whole(history)
                    : KeptCase.broken(new Broken(last, TABLES_DIFFER));
        } catch (CaseRefused e) {
            return KeptCase.broken(new Broken(last, "the entries do not come to a case: " + e.what()));
        }
    }
}
