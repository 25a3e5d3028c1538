package witnessmark.document;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The documents there are, each for its own reader. */
public enum Kind {
    /** What to look at next and what was found: for the technician. */
    BENCH("Bench sheet", Length.AS_IT_COMES),
    /** Complaint, cause and correction in plain words: for the fleet. */
    EXPLANATION("Explanation", Length.AS_IT_COMES),
    /** The evidence with its weights and its record: for the warranty clerk. */
    EVIDENCE("Evidence record", Length.AS_IT_COMES),
    /** The claim on one page: for the warranty clerk. */
    CLAIM("Claim sheet", Length.ONE_PAGE),
    /** Good practice on one page: for the driver. */
    COACHING("Coaching card", Length.ONE_PAGE),
    /** Getting the next tow right, on one page: for the tow operator. */
    TOWING("Towing-prep sheet", Length.ONE_PAGE),
    /** All of them in one. */
    PACKET("Case packet", Length.AS_IT_COMES);

    /** The words for them, for messages. */
    public static final String WORDS = Arrays.stream(values()).map(Kind::word).collect(Collectors.joining(", "));

    private enum Length {
        ONE_PAGE,
        AS_IT_COMES
    }

    private final String title;
    private final Length length;

    Kind(String title, Length length) {
        this.title = title;
        this.length = length;
    }

    /** What it is called, in messages. */
    public String title() {
        return title;
    }

    /** Whether it must fit one sheet of paper. */
    public boolean isOnePage() {
        return length == Length.ONE_PAGE;
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The document so named; empty if there is none. */
    public static Optional<Kind> parse(String word) {
        return Arrays.stream(values()).filter(k -> k.word().equals(word)).findFirst();
    }
}
