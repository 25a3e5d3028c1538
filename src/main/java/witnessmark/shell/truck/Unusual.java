package witnessmark.shell.truck;

import java.util.List;
import java.util.stream.Stream;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.shell.print.Page;

/**
 * Asks about figures typed with a question that can be but are out of the ordinary for a heavy truck; they are reckoned
 * with all the same. Bounds are judgement, common practice.
 */
final class Unusual {
    private Unusual() {}

    /** What is to be asked of these figures, each judged by its unit; nothing of what the profile gave. */
    static List<String> of(Figure... typed) {
        return Stream.of(typed)
                .filter(figure -> figure.basis() == Basis.GIVEN)
                .flatMap(Unusual::question)
                .distinct()
                .toList();
    }

    private static Stream<String> question(Figure figure) {
        return switch (figure.unit()) {
            case KILOMETRE_PER_HOUR -> outside(figure, 0, 130, "a truck's road speed");
            case KILOGRAM -> outside(figure, 4_000, 150_000, "truck and trailer");
            case PERCENT -> outside(figure, -20, 20, "a road's grade");
            case RPM -> outside(figure, 200, 4_000, "a driveline's speed");
            case DEGREE -> outside(figure, 0, 15, "a joint's working angle");
            default -> Stream.empty();
        };
    }

    private static Stream<String> outside(Figure figure, double least, double most, String what) {
        boolean usual = figure.value() >= least && figure.value() <= most;
        return usual
                ? Stream.empty()
                : Stream.of(figure.text() + " is unusual for " + what + ", which is mostly "
                        + bound(least, figure.unit()) + " to " + bound(most, figure.unit())
                        + "; is it right, and in the right unit?");
    }

    private static String bound(double value, Unit unit) {
        return Figure.given(value, unit).text();
    }

    static void print(Page page, List<String> questions) {
        questions.forEach(question -> page.strong("Check what was typed: " + question));
        if (!questions.isEmpty()) {
            page.blank();
        }
    }
}
