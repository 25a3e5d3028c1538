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
    private static final String YIELDS = "yields";

    enum Length {
        /** Belongs on one sheet, and is refused where it does not fit. */
        ONE_SHEET,
        /** Belongs on one sheet as far as readable letters allow. */
        ONE_SHEET_IF_IT_FITS,
        /** A drawing that gets a little smaller where it would leave the rest of a sheet empty and begin the next. */
        BESIDE_WHAT_IS_BEFORE,
        AS_IT_COMES
    }

    /** The articles of a page, and what its classes say belongs on one sheet; those without an id are left alone. */
    static List<Piece> of(Document page) {
        List<Piece> pieces = new ArrayList<>();
        NodeList all = page.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            List<String> classes = Arrays.asList(element.getAttribute("class").split("\\s+"));
            Length length = length(classes);
            boolean apart = length != Length.AS_IT_COMES || element.getTagName().equals("article");
            if (apart && element.getAttribute("id").matches("[a-z][a-z0-9-]*")) {
                pieces.add(new Piece(element.getAttribute("id"), length));
            }
        }
        return pieces;
    }

    /** Whether it stands in another piece, whose sheets follow from its size. */
    boolean isWithinAnother() {
        return length == Length.BESIDE_WHAT_IS_BEFORE;
    }

    private static Length length(List<String> classes) {
        if (classes.contains(MUST)) {
            return Length.ONE_SHEET;
        }
        if (classes.contains(MAY)) {
            return Length.ONE_SHEET_IF_IT_FITS;
        }
        return classes.contains(YIELDS) ? Length.BESIDE_WHAT_IS_BEFORE : Length.AS_IT_COMES;
    }
}
