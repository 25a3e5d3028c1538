package witnessmark.shell.run;

import java.util.List;

/** The value of an option that takes all words up to the next option, such as {@code --before a.csv b.csv}. */
public record ValueList(List<String> words) {
    private static final String BETWEEN = "\n";

    /** The words as one text, for the framework, which knows one value for each option. */
    static String joined(List<String> words) {
        return String.join(BETWEEN, words);
    }

    /** The words of a joined text; the framework calls this to make the option's value. */
    public static ValueList valueOf(String joined) {
        return new ValueList(joined.isEmpty() ? List.of() : List.of(joined.split(BETWEEN, -1)));
    }
}
