package witnessmark.document.print;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.layout.UrlAwareLineBreakIterator;
import java.text.BreakIterator;
import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import witnessmark.gearbox.Unit;

/**
 * Breaks lines where Java does, but never within a number, which Java would part as "×4." from "2", nor between a number
 * and its unit, the ends of a range of numbers, or the short name of a gear and its figure.
 */
final class UnbrokenNumbers implements FSTextBreaker {
    private static final String WITHIN_NUMBERS = ".,×÷";

    private static final String GEAR = "(?:\\d{1,2}|\\p{Lu})\\p{Ll}?";

    /** Java would break a line behind each of these; what follows belongs with it. */
    private static final Pattern BELONGING = Pattern.compile("(?<=\\d) (?=(?:" + units() + "|%)(?![\\p{L}\\d]))"
            + "|(?<=\\d )\\p{L}+(?=/\\p{L})"
            + "|(?<=\\d) (?=- \\d)|(?<=\\d )- (?=\\d)"
            + "|(?<![\\p{L}\\d])(?:" + GEAR + ": (?=\\d)|" + GEAR + "-(?=" + GEAR + " \\d))"
            + "|(?<=[\\p{L}\\d]-)" + GEAR + " (?=\\d)");

    private final FSTextBreaker lines = new UrlAwareLineBreakIterator(BreakIterator.getLineInstance(Locale.US));
    private String text = "";
    private Set<Integer> unbroken = Set.of();

    @Override
    public void setText(String newText) {
        text = newText;
        lines.setText(newText);
        unbroken = BELONGING.matcher(newText).results().map(MatchResult::end).collect(Collectors.toSet());
    }

    @Override
    public int next() {
        int at = lines.next();
        while (at != BreakIterator.DONE && (isWithinNumber(at) || unbroken.contains(at))) {
            at = lines.next();
        }
        return at;
    }

    private static String units() {
        return Arrays.stream(Unit.values())
                .map(Unit::symbol)
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
    }

    private boolean isWithinNumber(int at) {
        return at > 0
                && at < text.length()
                && Character.isDigit(text.charAt(at))
                && WITHIN_NUMBERS.indexOf(text.charAt(at - 1)) >= 0;
    }
}
