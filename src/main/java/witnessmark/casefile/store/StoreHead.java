package witnessmark.casefile.store;

import witnessmark.casefile.history.CanonicalText;

/**
 * Where the chain over all entries of a store ends. Told to somebody outside, it lets a later loss be seen that the
 * store itself cannot show.
 *
 * @param lines how many entries the store has kept, 0 for none
 * @param hash of the last
 */
public record StoreHead(long lines, String hash) {
    static final StoreHead NONE = new StoreHead(0, CanonicalText.NO_HASH);
}
