package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The sentences of a card, and the clauses of a sentence. */
final class Pieces {
    private static final Pattern SENTENCE_END = Pattern.compile(
            "\\r?\\n|(?<!\\b(?:reg|press|trans|temp|approx|eng|hyd|no|max|min|aux)|(?<=\\d) ?in)[.!](?=\\s|$)|;");
    /** "All gears but direct" takes one out of all; any other "but" begins anew, and so does what stands behind a value. */
    private static final Pattern CLAUSE_END = Pattern.compile(
            ",(?!\\d)|:(?=\\s)|\\s[-\u2013\u2014]+\\s|[()]|(?<!\\b(?:(?:all|every|any)(?: the)?(?: gears?)?|nothing left) )\\bbut\\b|\\b(?:however|although|pero|aunque|while|mientras)\\b"
                    + "|(?<=\\d ?(?:psi|bar|mm|lbs|libras|seconds|secs?|s|segundos|qts|quarts|liters|litros)\\s)(?:and|y)\\b"
                    + "(?=(?:[^\\d,;]|\\d(?:st|nd|rd|th))*(?:[,;]|$))");

    /** Words of a heading at most. */
    private static final int HEADING = 3;

    private Pieces() {}

    static List<String> sentences(String text) {
        return split(text, SENTENCE_END);
    }

    /** A heading such as "magnet:" stays with what is said of it. */
    static List<String> clauses(String sentence) {
        return split(sentence, CLAUSE_END);
    }

    private static List<String> split(String text, Pattern end) {
        List<String> pieces = new ArrayList<>();
        Matcher at = end.matcher(text);
        int from = 0;
        while (at.find()) {
            if (at.group().equals(":")
                    && text.substring(from, at.start()).strip().split("\\s+").length <= HEADING) {
                continue;
            }
            add(pieces, text.substring(from, at.start()) + (at.group().startsWith("?") ? "?" : ""));
            from = at.end();
        }
        add(pieces, text.substring(from));
        return pieces;
    }

    private static void add(List<String> pieces, String piece) {
        if (!piece.isBlank()) {
            pieces.add(piece.strip());
        }
    }
}
