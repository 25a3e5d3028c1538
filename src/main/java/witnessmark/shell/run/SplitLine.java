package witnessmark.shell.run;

import java.util.ArrayList;
import java.util.List;
import witnessmark.shell.print.WrongUsage;

/** Splits a typed line into words: blanks part words, either kind of quotes keeps them, a backslash keeps one sign. */
public final class SplitLine {
    private SplitLine() {}

    /** The words; throws {@link WrongUsage} where a quote is left open. */
    public static List<String> of(String line) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean inWord = false;
        char quote = 0;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '\\' && quote != '\'' && i + 1 < line.length()) {
                word.append(line.charAt(++i));
                inWord = true;
            } else if (quote != 0) {
                quote = keepOrClose(c, quote, word);
            } else if (c == '"' || c == '\'') {
                quote = c;
                inWord = true;
            } else if (!Character.isWhitespace(c)) {
                word.append(c);
                inWord = true;
            } else if (inWord) {
                words.add(word.toString());
                word.setLength(0);
                inWord = false;
            }
        }
        if (quote != 0) {
            throw new WrongUsage("a quote " + quote + " is left open", "close it");
        }
        if (inWord) {
            words.add(word.toString());
        }
        return words;
    }

    private static char keepOrClose(char c, char quote, StringBuilder word) {
        if (c == quote) {
            return 0;
        }
        word.append(c);
        return quote;
    }
}
