package witnessmark.document;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.jspecify.annotations.Nullable;

/** The fonts that come with the program, so that a document looks the same wherever it is made. */
public enum ShippedFont {
    REGULAR("DejaVuSans.ttf", 400),
    BOLD("DejaVuSans-Bold.ttf", 700);

    /** The name that style sheets and drawings call them by. */
    public static final String FAMILY = "DejaVu Sans";

    private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

    private final String file;
    private final int weight;
    private @Nullable Font loaded;

    ShippedFont(String file, int weight) {
        this.file = file;
        this.weight = weight;
    }

    public String file() {
        return file;
    }

    /** Weight as style sheets give it. */
    public int weight() {
        return weight;
    }

    public InputStream open() {
        InputStream in = ShippedFont.class.getResourceAsStream("/fonts/" + file);
        if (in == null) {
            throw new IllegalStateException("the font " + file + " is missing from the program");
        }
        return in;
    }

    /** The font for drawing, in the size given. */
    public synchronized Font sized(float size) {
        if (loaded == null) {
            try (InputStream in = open()) {
                loaded = Font.createFont(Font.TRUETYPE_FONT, in);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (FontFormatException e) {
                throw new IllegalStateException("the font " + file + " is damaged", e);
            }
        }
        return loaded.deriveFont(size);
    }

    /** Width of one line of text. */
    public double width(String text, float size) {
        return sized(size).getStringBounds(text, EXACT).getWidth();
    }

    /** Whether it has a picture for the character. */
    public boolean canShow(int codePoint) {
        return sized(12).canDisplay(codePoint);
    }
}
