package witnessmark.document;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** What can be read out of a PDF file. */
record PdfText(String text, int pages) {
    static PdfText of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PdfText(new PDFTextStripper().getText(document), document.getNumberOfPages());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The text with no blanks, line ends or page feet, since paper breaks text anywhere. */
    String unbroken() {
        return text.replaceAll("\\s+", "").replaceAll("decisionsupport,notaninspectionorlegalfinding\\d+/\\d+", "");
    }
}
