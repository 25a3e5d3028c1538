package witnessmark.document.template;

import com.samskivert.mustache.Mustache;
import java.util.regex.Pattern;
import witnessmark.document.VisibleText;

/** Makes text from outside harmless in each form. */
final class Escape {
    private static final Pattern MARKDOWN_SIGNS = Pattern.compile("[\\\\`*_{}\\[\\]<>#|~&@$]|://");
    private static final Pattern WEB_NAME = Pattern.compile("(?i)\\b(www)\\.");
    private static final Pattern LIST_START = Pattern.compile("^(\\s*)([-+=]|\\d+[.)])", Pattern.MULTILINE);

    private Escape() {}

    static final Mustache.Escaper HTML = Escape::html;
    static final Mustache.Escaper MARKDOWN = Escape::markdown;

    private static String html(String raw) {
        String text = VisibleText.of(raw);
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
        return out.toString();
    }

    /** A backslash before each sign that Markdown (CommonMark 0.31, with tables) could take for its own. */
    private static String markdown(String raw) {
        String text = VisibleText.of(raw).replace('\t', ' ');
        text = MARKDOWN_SIGNS.matcher(text).replaceAll("\\\\$0");
        text = WEB_NAME.matcher(text).replaceAll("$1\\\\.");
        text = LIST_START
                .matcher(text)
                .replaceAll(m -> java.util.regex.Matcher.quoteReplacement(listStart(m.group(1), m.group(2))));
        return text.replace("\n", "<br>");
    }

    private static String listStart(String blanks, String mark) {
        int last = mark.length() - 1;
        return blanks + mark.substring(0, last) + "\\" + mark.charAt(last);
    }
}
