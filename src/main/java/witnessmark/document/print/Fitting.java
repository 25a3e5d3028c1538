package witnessmark.document.print;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * Looks for the size of letters with which one piece of a page lies well on its sheets: one that belongs on one sheet
 * gets smaller until it does; a drawing that would begin the next sheet gets smaller until it does not; one that ends on a nearly empty sheet gets a little smaller, to spare that sheet, and where
 * this does not help a little larger, to fill it.
 */
final class Fitting {
    private static final double[] ON_ONE_SHEET = {0.94, 0.88, 0.82, 0.76, 0.7};
    private static final double[] SMALLER_DRAWING = {0.94, 0.88, 0.82, 0.76, 0.7};
    private static final double[] FEWER_SHEETS = {0.97, 0.94, 0.91};
    private static final double[] FULLER_SHEET = {1.04, 1.08, 1.12, 1.16};

    /** Part of a sheet that a legal line takes with its code and the words used, which stay with it. */
    private static final double FEW_LINES = 0.45;

    /** Part of a sheet that is its top. */
    private static final double TOP = 0.04;

    /** Part of a sheet below which it looks empty. */
    private static final double NEARLY_NOTHING = 0.3;

    private final Piece piece;
    private final double[] sizes;
    private final Extent full;
    private int tried = -1;
    private boolean ended;

    /** @param full how the piece lies in letters of full size */
    Fitting(Piece piece, Extent full) {
        this.piece = piece;
        this.full = full;
        this.sizes = switch (piece.length()) {
            case ONE_SHEET, ONE_SHEET_IF_IT_FITS -> ON_ONE_SHEET;
            case BESIDE_WHAT_IS_BEFORE -> SMALLER_DRAWING;
            case AS_IT_COMES -> DoubleStream.concat(Arrays.stream(FEWER_SHEETS), Arrays.stream(FULLER_SHEET))
                    .toArray();};
        this.ended = isGood(full) || isNotWorth(full);
        if (!ended) {
            tried = 0;
        }
    }

    /** Hears how the piece lies in letters of the size that is tried; says whether another size is to be tried. */
    boolean goesOn(Extent extent) {
        if (ended) {
            return false;
        }
        if (isGood(extent)) {
            ended = true;
            return false;
        }
        next();
        return true;
    }

    private void next() {
        tried++;
        boolean growing = piece.length() == Piece.Length.AS_IT_COMES && tried == FEWER_SHEETS.length;
        if (growing && full.onLast() >= NEARLY_NOTHING || tried == sizes.length) {
            ended = true;
            // One that does not fit stays as small as it may get; one that cannot be helped is as large as all others.
            tried = belongsOnOneSheet() ? sizes.length - 1 : -1;
        }
    }

    private boolean isGood(Extent extent) {
        if (belongsOnOneSheet()) {
            return extent.sheets() == 1;
        }
        if (piece.length() == Piece.Length.BESIDE_WHAT_IS_BEFORE) {
            return extent.onFirst() > TOP;
        }
        if (tried < 0) {
            return false;
        }
        return tried < FEWER_SHEETS.length
                ? extent.sheets() < full.sheets()
                : extent.sheets() == full.sheets() && extent.onLast() >= NEARLY_NOTHING;
    }

    private boolean belongsOnOneSheet() {
        return piece.length() == Piece.Length.ONE_SHEET || piece.length() == Piece.Length.ONE_SHEET_IF_IT_FITS;
    }

    private boolean isNotWorth(Extent extent) {
        return piece.length() == Piece.Length.AS_IT_COMES && (extent.sheets() == 1 || extent.onLast() >= FEW_LINES);
    }

    /** Whether the piece must be refused: it does not fit one sheet in readable letters. */
    boolean isRefused(Extent extent) {
        return ended && piece.length() == Piece.Length.ONE_SHEET && extent.sheets() > 1;
    }

    /** The rule of the style sheet for the size. */
    String rule() {
        return tried < 0 ? "" : String.format(Locale.ROOT, "#%s{font-size:%.2fem}", piece.id(), sizes[tried]);
    }
}
