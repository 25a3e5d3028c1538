package witnessmark.document.print;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import witnessmark.document.ShippedFont;

/** Gives the shipped font for every other one, so that the fonts of the machine are neither searched nor used. */
final class ShippedFontsOnly implements FontMapper {
    private final TrueTypeFont regular;

    private ShippedFontsOnly(TrueTypeFont regular) {
        this.regular = regular;
    }

    /** Makes it hold for the whole program. */
    static synchronized void use() {
        if (FontMappers.instance() instanceof ShippedFontsOnly) {
            return;
        }
        try (var in = ShippedFont.REGULAR.open()) {
            FontMappers.set(new ShippedFontsOnly(new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, PDFontDescriptor descriptor) {
        return new FontMapping<>(regular, true);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, PDFontDescriptor descriptor) {
        return new FontMapping<>(regular, true);
    }

    @Override
    public CIDFontMapping getCIDFont(String name, PDFontDescriptor descriptor, PDCIDSystemInfo info) {
        return new CIDFontMapping(null, regular, true);
    }
}
