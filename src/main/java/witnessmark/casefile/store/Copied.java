package witnessmark.casefile.store;

import java.util.List;
import java.util.Map;
import witnessmark.casefile.CaseId;

/**
 * What a copy of a store came to.
 *
 * @param entries how many entries were copied now, 0 if the other store held them all
 * @param files how many files were copied now
 * @param check what a look over the store that was copied to found; whole but for missing files
 * @param missing for each case the files that the store copied from has lost itself, a sentence each
 */
public record Copied(long entries, long files, StoreCheck check, Map<CaseId, List<String>> missing) {}
