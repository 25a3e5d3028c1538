package witnessmark.casefile.store;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;

/**
 * What one look at a case in the store comes to.
 *
 * @param history the case; empty where the chain is broken
 */
public record KeptCase(ChainCheck chain, Optional<CaseHistory> history) {
    /** The files of a whole case that were found damaged. */
    public List<DamagedFile> damagedFiles() {
        return history.map(CaseHistory::damagedFiles).orElse(List.of());
    }

    static KeptCase whole(CaseHistory history) {
        return new KeptCase(new ChainCheck.Intact(history.entries().size()), Optional.of(history));
    }

    static KeptCase broken(ChainCheck.Broken at) {
        return new KeptCase(at, Optional.empty());
    }
}
