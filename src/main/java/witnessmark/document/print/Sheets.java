package witnessmark.document.print;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.List;

/** The sheets of paper on which a page was laid out. */
record Sheets(PdfBoxRenderer renderer, List<PageBox> pages) {

    /** What ends on the very edge of a sheet does not reach the next; less than a point in the units of the layout. */
    private static final int EDGE = 20;

    static Sheets of(PdfBoxRenderer renderer) {
        return new Sheets(renderer, renderer.getRootBox().getLayer().getPages());
    }

    /** How the piece lies on them; one that is not shown takes no room on one sheet. */
    Extent extent(Piece piece) {
        Box box = renderer.getSharedContext().getBoxById(piece.id());
        if (box == null) {
            return new Extent(1, 0);
        }
        int end = Math.max(box.getAbsY(), box.getAbsY() + box.getHeight() - EDGE);
        int last = sheet(end);
        PageBox sheet = pages.get(last);
        double onLast = (double) (end - sheet.getTop()) / (sheet.getBottom() - sheet.getTop());
        return new Extent(last - sheet(box.getAbsY()) + 1, onLast);
    }

    private int sheet(int y) {
        int sheet = 0;
        while (sheet < pages.size() - 1 && pages.get(sheet + 1).getTop() <= y) {
            sheet++;
        }
        return sheet;
    }
}
