package witnessmark.casefile.store;

import java.nio.charset.StandardCharsets;
import witnessmark.casefile.history.CanonicalText;

/**
 * An entry in the order in which the whole store kept it, chained to the entry kept before it, of whatever case.
 *
 * @param number 1 for the first entry of the store
 * @param before hash of the line before, {@link CanonicalText#NO_HASH} for the first
 * @param caseId whose entry it is
 * @param row the entry as it is kept
 * @param hash what is written as this line's own hash
 */
record StoreLine(long number, String before, String caseId, CaseRows.Row row, String hash) {

    /** The line after the one with this number and hash. */
    static StoreLine after(long number, String hash, String caseId, CaseRows.Row row) {
        return new StoreLine(number + 1, hash, caseId, row, hash(number + 1, hash, caseId, row.number(), row.hash()));
    }

    /** SHA-256 over three lines of text: number, hash before, then case, number and hash of the entry. */
    static String hash(long number, String before, String caseId, long entry, String entryHash) {
        String text = "line " + number + "\n" + before + "\n" + caseId + " " + entry + " " + entryHash + "\n";
        return CanonicalText.sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Whether both hashes are those of what is written. */
    boolean isTrue() {
        return row.isTrue() && hash.equals(hash(number, before, caseId, row.number(), row.hash()));
    }

    boolean follows(long lastNumber, String lastHash) {
        return number == lastNumber + 1 && before.equals(lastHash);
    }
}
