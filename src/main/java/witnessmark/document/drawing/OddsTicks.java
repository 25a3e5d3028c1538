package witnessmark.document.drawing;

import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import witnessmark.document.OddsFactor;

/** Labels of an axis of weights, as factors of the odds. */
final class OddsTicks extends NumberFormat {
    private static final long serialVersionUID = 1L;

    @Override
    public StringBuffer format(double decibans, StringBuffer to, FieldPosition at) {
        return to.append(decibans == 0 ? "1" : OddsFactor.text(decibans));
    }

    @Override
    public StringBuffer format(long decibans, StringBuffer to, FieldPosition at) {
        return format((double) decibans, to, at);
    }

    @Override
    public Number parse(String text, ParsePosition at) {
        throw new UnsupportedOperationException("labels are only written");
    }
}
