package witnessmark.casefile.store;

import java.util.Optional;
import java.util.function.BiConsumer;
import witnessmark.casefile.CaseId;

/**
 * Where interrupted interviews go on, a short text a case whose form is the interview's own. It is no part of the case:
 * beside its entries, in no chain and no export, and its loss loses no answer.
 */
sealed interface InterviewPlaces permits InterviewFolder, InterviewRows {
    /** The longest text kept; the interview's own stays far under it. */
    int LONGEST = 4_000;

    /** The place last kept; empty if there is none. */
    Optional<String> read(CaseId id);

    /** Keeps the place, on the disk when this returns; the one before is replaced. */
    void keep(CaseId id, String place);

    /** All places kept, case by case. */
    void each(BiConsumer<CaseId, String> use);
}
