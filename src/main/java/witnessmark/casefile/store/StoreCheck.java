package witnessmark.casefile.store;

import java.util.List;
import java.util.Map;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.ChainCheck;

/**
 * What a look over the whole store found.
 *
 * @param cases how many cases there are
 * @param head where the chain over all entries ends
 * @param attachments how many files belong to cases
 * @param broken cases that do not lie in the store as they were written
 * @param files for each case the files that are missing or not as they were put in, a sentence each
 * @param lines what is amiss with the entries of the store as a whole, as when a case was taken out, a sentence each
 */
public record StoreCheck(
        long cases,
        StoreHead head,
        long attachments,
        Map<CaseId, ChainCheck.Broken> broken,
        Map<CaseId, List<String>> files,
        List<String> lines) {

    /** Whether nothing is amiss. */
    public boolean isWhole() {
        return broken.isEmpty() && files.isEmpty() && lines.isEmpty();
    }
}
