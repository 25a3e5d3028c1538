package witnessmark.knowledge;

import java.util.List;
import java.util.OptionalInt;

/**
 * A coaching point.
 *
 * @param turn place on the general card, from 1 on; a point without one comes after those that have one
 * @param about what a gearbox must have for the point to be said
 * @param figures of the truck, that stand beside it
 */
public record CoachingAdvice(
        String id,
        String english,
        String spanish,
        String whyEnglish,
        String whySpanish,
        OptionalInt turn,
        List<About> about,
        List<Figure> figures)
        implements Advice {

    /** What not every gearbox has. */
    public enum About {
        SPLITTER,
        RANGE,
        POWER_TAKE_OFF
    }

    /** Figures of a truck's coaching card that belong to one of its points. */
    public enum Figure {
        CEILING,
        LOADED,
        EMPTY,
        DROP_LEVER,
        DROP_LEVER_AND_RANGE,
        DROP_SPLIT,
        SHIFTS
    }

    public CoachingAdvice {
        about = List.copyOf(about);
        figures = List.copyOf(figures);
    }
}
