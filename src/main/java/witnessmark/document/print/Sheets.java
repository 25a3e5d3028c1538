package witnessmark.document.print;

import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.List;

/**
 * How a page was laid out on sheets of paper.
 *
 * @param claimFits whether what follows a claim begins on the sheet after the one on which the claim begins; so too
 *     where there is no claim within
 * @param endsNearlyEmpty whether the last of several sheets bears a few lines alone
 */
record Sheets(int count, boolean claimFits, boolean endsNearlyEmpty) {
    private static final String CLAIM = "claim-within";
    private static final String AFTER_CLAIM = "after-claim";

    /** Part of a sheet that a legal line takes with its code and the words used, which stay with it. */
    private static final double FEW_LINES = 0.45;

    static Sheets of(PdfBoxRenderer renderer) {
        List<PageBox> pages = renderer.getRootBox().getLayer().getPages();
        Box claim = renderer.getSharedContext().getBoxById(CLAIM);
        Box after = renderer.getSharedContext().getBoxById(AFTER_CLAIM);
        PageBox last = pages.get(pages.size() - 1);
        double filled = renderer.getRootBox().getAbsY() + renderer.getRootBox().getHeight() - last.getTop();
        return new Sheets(
                pages.size(),
                claim == null || after == null || sheet(pages, after) - sheet(pages, claim) <= 1,
                pages.size() > 1 && filled < FEW_LINES * (last.getBottom() - last.getTop()));
    }

    private static int sheet(List<PageBox> pages, Box box) {
        int sheet = 0;
        while (sheet < pages.size() - 1 && pages.get(sheet + 1).getTop() <= box.getAbsY()) {
            sheet++;
        }
        return sheet;
    }
}
