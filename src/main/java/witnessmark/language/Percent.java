package witnessmark.language;

import java.util.function.UnaryOperator;

/** A chance in whole percent as people read it; never 0 and never 100, since nothing here is as sure. */
public final class Percent {
    private Percent() {}

    /** The shortest form: 42 %, <1 %, >99 %. */
    public static String text(double probability) {
        return text(probability, end -> end.equals("percent-least") ? "<1 %" : ">99 %");
    }

    /** The form for sentences, with the two ends in words. */
    public static String text(double probability, Texts words) {
        return text(probability, words::text);
    }

    private static String text(double probability, UnaryOperator<String> ends) {
        double percent = 100 * probability;
        if (percent < 1) {
            return ends.apply("percent-least");
        }
        return percent > 99 ? ends.apply("percent-most") : Math.round(percent) + " %";
    }
}
