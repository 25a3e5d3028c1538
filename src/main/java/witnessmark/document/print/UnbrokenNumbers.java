package witnessmark.document.print;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.layout.UrlAwareLineBreakIterator;
import java.text.BreakIterator;
import java.util.Locale;

/** Breaks lines where Java does, but never within a number: Java would part "×4." from "2" after the sign. */
final class UnbrokenNumbers implements FSTextBreaker {
    private static final String WITHIN_NUMBERS = ".,×÷";

    private final FSTextBreaker lines = new UrlAwareLineBreakIterator(BreakIterator.getLineInstance(Locale.US));
    private String text = "";

    @Override
    public void setText(String newText) {
        text = newText;
        lines.setText(newText);
    }

    @Override
    public int next() {
        int at = lines.next();
        while (at != BreakIterator.DONE && isWithinNumber(at)) {
            at = lines.next();
        }
        return at;
    }

    private boolean isWithinNumber(int at) {
        return at > 0
                && at < text.length()
                && Character.isDigit(text.charAt(at))
                && WITHIN_NUMBERS.indexOf(text.charAt(at - 1)) >= 0;
    }
}
