package witnessmark.casefile.history;

/**
 * One entry of a case's history, chained to the entry before it.
 *
 * @param number 1 for the first
 * @param previousHash hash of the entry before it, {@link CanonicalText#NO_HASH} for the first
 * @param hash what is written as this entry's own hash; {@link #isTrue} says whether it is
 */
public record Entry(long number, Stamp stamp, Change change, String previousHash, String hash) {

    /** A new entry after one with the given number and hash. */
    static Entry after(long number, String hash, Stamp stamp, Change change) {
        String own = CanonicalText.hash(number + 1, stamp.time(), stamp.who(), CanonicalText.of(change), hash);
        return new Entry(number + 1, stamp, change, hash, own);
    }

    /** Whether the hash written is the hash of what is written. */
    public boolean isTrue() {
        return hash.equals(
                CanonicalText.hash(number, stamp.time(), stamp.who(), CanonicalText.of(change), previousHash));
    }
}
