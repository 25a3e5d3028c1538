package witnessmark.casefile.store;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.Entry;
import witnessmark.refusal.Refusal;

/**
 * Histories read from the store. Those used last are remembered, and taken again as long as the head of the case
 * still names their last hash, so that an interview does not read the case anew with every answer.
 */
final class Histories {
    private static final int REMEMBERED = 16;

    private final StoreLocation location;
    private final Map<CaseId, CaseHistory> remembered = new LinkedHashMap<>(REMEMBERED, 0.75f, true);

    Histories(StoreLocation location) {
        this.location = location;
    }

    /** The head, or a refusal if there is no such case. */
    static CaseRows.Head known(CaseId id, Optional<CaseRows.Head> head) {
        return head.orElseThrow(
                () -> new CaseRefused("case '" + id + "' is not in the store", "list the cases to see which are"));
    }

    CaseHistory read(CaseRows rows, CaseId id, CaseRows.Head head) {
        CaseHistory last = remembered.get(id);
        return last != null && last.last().hash().equals(head.lastHash()) ? last : remember(load(rows, id, head));
    }

    CaseHistory remember(CaseHistory history) {
        remembered.put(history.id(), history);
        if (remembered.size() > REMEMBERED) {
            remembered.remove(remembered.keySet().iterator().next());
        }
        return history;
    }

    CaseHistory readAsKept(CaseRows rows, CaseId id, CaseRows.Head head) {
        try {
            return CaseHistory.of(rows.entries(head.caseNo()).stream()
                    .map(CaseRows.Row::entry)
                    .toList());
        } catch (Refusal e) {
            throw unreadable(id, e);
        }
    }

    private CaseHistory load(CaseRows rows, CaseId id, CaseRows.Head head) {
        List<CaseRows.Row> kept = rows.entries(head.caseNo());
        kept.stream().filter(row -> !row.isTrue()).findFirst().ifPresent(row -> {
            throw lost(id, "entry " + row.number() + " is not as it was written");
        });
        CaseHistory loaded;
        try {
            loaded = CaseHistory.of(kept.stream().map(CaseRows.Row::entry).toList());
        } catch (Refusal e) {
            throw unreadable(id, e);
        }
        if (!loaded.last().hash().equals(head.lastHash())) {
            throw lost(
                    id,
                    "it should end with entry " + head.lastNumber() + ", its entries end with "
                            + loaded.last().number());
        }
        // Each entry is as it was written; that one is missing between them shows only from one to the next.
        if (!isLinked(loaded.entries()) && loaded.verify() instanceof ChainCheck.Broken broken) {
            throw lost(id, broken.why());
        }
        return loaded;
    }

    private static boolean isLinked(List<Entry> entries) {
        return IntStream.range(1, entries.size()).allMatch(i -> entries.get(i)
                        .previousHash()
                        .equals(entries.get(i - 1).hash()))
                && entries.get(entries.size() - 1).number() == entries.size();
    }

    /** The refusal of a case whose entries are not all there, or not those that were kept. */
    StoreUnavailable lost(CaseId id, String why) {
        return new StoreUnavailable(
                location.shown(), "case '" + id + "': THE CHAIN OF ENTRIES IS BROKEN: " + why, mend(id));
    }

    private StoreUnavailable unreadable(CaseId id, Refusal e) {
        return new StoreUnavailable(
                location.shown(),
                "case '" + id + "' cannot be read: "
                        + String.valueOf(e.getMessage()).lines().findFirst().orElse(""),
                mend(id),
                e);
    }

    private String mend(CaseId id) {
        return "bring it back from a copy of the store or from an exported case"
                + (location.folder().isPresent()
                        ? ", or make the database anew from its journal with: store rebuild"
                        : "")
                + "; or carry on in a new case with: case fork " + id + " NEW-ID --reason TEXT";
    }
}
