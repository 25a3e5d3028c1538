package witnessmark.document.print;

import witnessmark.document.ShippedFont;
import witnessmark.document.VisibleText;

/** Signs the shipped fonts have no picture for, such as many emoji, are printed as their code points. */
final class UnshownSigns {
    private static final int FIRST_IN_QUESTION = 0x250;

    private UnshownSigns() {}

    static String named(String html) {
        return VisibleText.replaced(html, c -> c >= FIRST_IN_QUESTION && !ShippedFont.REGULAR.canShow(c));
    }
}
