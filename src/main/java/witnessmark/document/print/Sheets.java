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
            return new Extent(1, 0, 0);
        }
        int end = Math.max(box.getAbsY(), box.getAbsY() + box.getHeight() - EDGE);
        int last = sheet(end);
        int first = sheet(box.getAbsY());
        return new Extent(last - first + 1, share(box.getAbsY(), pages.get(first)), share(end, pages.get(last)));
    }

    /** How far down the sheet it is, 0 to 1. */
    private static double share(int y, PageBox sheet) {
        return (double) (y - sheet.getTop()) / (sheet.getBottom() - sheet.getTop());
    }

    private int sheet(int y) {
        int sheet = 0;
        while (sheet < pages.size() - 1 && pages.get(sheet + 1).getTop() <= y) {
            sheet++;
        }
        return sheet;
    }
}
