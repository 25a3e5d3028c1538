package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;

/**
 * A part that findings name, and where a drawing of the gearbox shows it.
 *
 * @param drawn where it lies; empty where the layout moves it, or where it is not drawn at all
 * @param of the parts whose place is its own; empty for a part with a place of its own
 * @param with what the gearbox must have for it to be there; empty for a part of every gearbox
 * @param whenMarked whether it is drawn only when marked, since it is a piece or a sum of others
 */
public record Part(
        String id,
        String english,
        String spanish,
        List<Place> drawn,
        List<String> of,
        Optional<With> with,
        boolean whenMarked)
        implements BothLanguages {

    /** A rectangle of the drawing; x to the right, y downwards. */
    public record Place(double x, double y, double width, double height) {}

    /** What a gearbox may have; what a case does not say of it counts as usual: a range by air, nothing else. */
    public enum With {
        AUXILIARY,
        SPLITTER,
        RANGE,
        RANGE_BY_AIR,
        AIR,
        OIL_PUMP,
        OIL_COOLER,
        PTO
    }
}
