package witnessmark.document;

import java.util.function.IntPredicate;

/**
 * Text with nothing hidden in it: control characters and the marks that turn the direction of writing, with which a
 * text could show other than it is, stand as their code points. Line ends and the joiners of emoji stay.
 */
public final class VisibleText {
    private static final int JOINER = 0x200D;
    private static final int NON_JOINER = 0x200C;

    private VisibleText() {}

    public static String of(String text) {
        return replaced(text, VisibleText::isHidden);
    }

    /** The text with these characters written as their code points. */
    public static String replaced(String text, IntPredicate unwanted) {
        if (text.codePoints().noneMatch(unwanted)) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            if (unwanted.test(c)) {
                out.append(String.format("[U+%04X]", c));
            } else {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    private static boolean isHidden(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL -> c != '\n' && c != '\t';
            case Character.FORMAT -> c != JOINER && c != NON_JOINER;
            case Character.SURROGATE, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> true;
            default -> (c & 0xFFFE) == 0xFFFE;
        };
    }
}
