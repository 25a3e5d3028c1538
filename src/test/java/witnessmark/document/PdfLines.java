package witnessmark.document;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** The lines of text on the pages of a PDF file, from top to foot, without the line at the page's foot. */
final class PdfLines extends PDFTextStripper {
    /** The lower margin of a page, 16 mm, in points. */
    private static final double FOOT = 16 * 72 / 25.4;

    private static final Set<String> PAINTING = Set.of("f", "f*", "B", "B*", "b", "b*", "S", "s");

    private final List<Line> lines = new ArrayList<>();
    private final Map<Integer, Integer> painted = new HashMap<>();

    /**
     * One run of letters that stand on one line.
     *
     * @param down how far down the page, from 0 to 1
     */
    record Line(int page, double down, boolean bold, String text) {}

    private PdfLines() {
        setSortByPosition(true);
    }

    static PdfLines of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PdfLines lines = new PdfLines();
            lines.getText(document);
            return lines;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Line> all() {
        return lines;
    }

    /** How many areas and strokes are painted on the page; a drawing has dozens, its letters are painted too. */
    int painted(int page) {
        return painted.getOrDefault(page, 0);
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
        if (PAINTING.contains(operator.getName())) {
            painted.merge(getCurrentPageNo(), 1, Integer::sum);
        }
        super.processOperator(operator, operands);
    }

    @Override
    protected void writeString(String text, List<TextPosition> at) throws IOException {
        TextPosition first = at.get(0);
        double height = first.getPageHeight();
        double down = first.getYDirAdj() / height;
        if (!text.isBlank() && down < 1 - FOOT / height) {
            boolean bold = at.stream().allMatch(p -> p.getFont().getName().contains("Bold"));
            lines.add(new Line(getCurrentPageNo(), down, bold, text));
        }
        super.writeString(text, at);
    }
}
