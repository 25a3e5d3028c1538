package witnessmark.document;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The sheets a PDF is laid out for; sizes by ISO 216 and ANSI/ASME Y14.1 (from memory). */
public enum Paper {
    A4(210, 297),
    LETTER(215.9, 279.4);

    private final double widthMm;
    private final double heightMm;

    Paper(double widthMm, double heightMm) {
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    public double widthMm() {
        return widthMm;
    }

    public double heightMm() {
        return heightMm;
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The paper so named; empty if it is none of them. */
    public static Optional<Paper> parse(String word) {
        return Arrays.stream(values()).filter(p -> p.word().equals(word)).findFirst();
    }
}
