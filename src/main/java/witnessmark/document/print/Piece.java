package witnessmark.document.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** A part of a page that begins on a sheet of its own, or must stay on one, so that its letters can be sized alone. */
record Piece(String id, Length length) {
    private static final String MUST = "one-sheet";
    private static final String MAY = "fitted";

    enum Length {
        /** Belongs on one sheet, and is refused where it does not fit. */
        ONE_SHEET,
        /** Belongs on one sheet as far as readable letters allow. */
        ONE_SHEET_IF_IT_FITS,
        AS_IT_COMES
    }

    /** The articles of a page, and what its classes say belongs on one sheet; those without an id are left alone. */
    static List<Piece> of(Document page) {
        List<Piece> pieces = new ArrayList<>();
        NodeList all = page.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            List<String> classes = Arrays.asList(element.getAttribute("class").split("\\s+"));
            Length length = classes.contains(MUST)
                    ? Length.ONE_SHEET
                    : classes.contains(MAY) ? Length.ONE_SHEET_IF_IT_FITS : Length.AS_IT_COMES;
            boolean apart = length != Length.AS_IT_COMES || element.getTagName().equals("article");
            if (apart && element.getAttribute("id").matches("[a-z][a-z0-9-]*")) {
                pieces.add(new Piece(element.getAttribute("id"), length));
            }
        }
        return pieces;
    }
}
