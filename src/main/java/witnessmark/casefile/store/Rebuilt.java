package witnessmark.casefile.store;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A database made anew from its journal.
 *
 * @param cases how many cases it holds
 * @param head the last line taken over
 * @param setAside where the database that was there before lies now, if there was one
 * @param tornAfter whether something that is no whole change followed in the journal and was left out
 */
public record Rebuilt(long cases, StoreHead head, Optional<Path> setAside, boolean tornAfter) {}
