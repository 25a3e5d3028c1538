package witnessmark.casefile.history;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.casefile.CaseId;

/**
 * The end of a case's chain as it is noted outside the store: printed, scanned, or copied by hand. A chain that no
 * longer holds this entry with this hash was cut or replaced, even where it is whole in itself.
 *
 * @param entry number of the entry, from one
 * @param hash of that entry
 */
public record HeadMark(CaseId id, long entry, String hash) {
    private static final Pattern TEXT = Pattern.compile("witnessmark:([a-z0-9-]{1,60}):([0-9]{1,9}):([0-9a-f]{64})");

    public static HeadMark of(CaseHistory history) {
        return new HeadMark(
                history.id(), history.last().number(), history.last().hash());
    }

    /** As it is printed, one word without blanks. */
    public String text() {
        return "witnessmark:" + id + ":" + entry + ":" + hash;
    }

    /** The mark that the text states, line breaks and blanks of a copy left out; empty if it is none. */
    public static Optional<HeadMark> parse(String text) {
        Matcher matcher = TEXT.matcher(text.replaceAll("\\s", ""));
        return matcher.matches()
                ? Optional.of(
                        new HeadMark(new CaseId(matcher.group(1)), Long.parseLong(matcher.group(2)), matcher.group(3)))
                : Optional.empty();
    }

    /** Whether the history still holds the entry with this hash. */
    public boolean isIn(CaseHistory history) {
        return history.id().equals(id)
                && entry >= 1
                && entry <= history.entries().size()
                && history.entries().get((int) entry - 1).hash().equals(hash);
    }
}
