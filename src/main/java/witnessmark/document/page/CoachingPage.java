package witnessmark.document.page;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.document.Dossier;
import witnessmark.document.Language;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Advice;

/**
 * The driver's card: what to do in this gearbox and why. It names no cause and judges nobody. Points come first from a
 * concluded habit only; without one it is the general card of the truck and says what the case says of the driver.
 *
 * @param note what the case says of the driver
 * @param first points that go with a concluded habit, most worth first
 * @param rest points of good practice that fit the layout, as far as there is room
 */
public record CoachingPage(String unit, String note, List<Point> first, List<Point> rest, List<Field> figures) {
    private static final String DRIVER_HABIT = "driver-habit";
    private static final int MOST_POINTS = 7;
    private static final double WORTH_A_WORD = 0.10;

    /** One thing to do, with its reason; the reason may be empty. */
    public record Point(String text, String why) {}

    /** @param words the words of the card, by name */
    public static CoachingPage of(Dossier dossier, Language language, List<Field> figures, Map<String, String> words) {
        List<Point> first = habit(dossier)
                .map(advice -> point(dossier.knowledge().coaching().get(advice.id()), language))
                .limit(MOST_POINTS)
                .toList();
        Set<String> said = habit(dossier).map(AdviceGiven.Piece::id).collect(Collectors.toSet());
        List<Point> rest = dossier.knowledge().coaching().entrySet().stream()
                .filter(e -> !said.contains(e.getKey()) && fits(e.getKey(), dossier))
                .limit(MOST_POINTS - first.size())
                .map(e -> new Point(text(e.getValue(), language), ""))
                .toList();
        String note = !first.isEmpty() ? "coachingHabit" : mayBeDriver(dossier) ? "coachingOpen" : "coachingNothing";
        return new CoachingPage(dossier.file().vehicle().unit(), words.getOrDefault(note, ""), first, rest, figures);
    }

    /** The points that go with a habit of the driver, if one is concluded, signed and today. */
    static Stream<AdviceGiven.Piece> habit(Dossier dossier) {
        boolean concluded = Judged.of(dossier).classId().equals(DRIVER_HABIT)
                && dossier.judgement().verdict().classId().equals(DRIVER_HABIT);
        return concluded ? dossier.judgement().advice().coaching().stream() : Stream.empty();
    }

    private static boolean mayBeDriver(Dossier dossier) {
        return Judged.of(dossier).classId().equals(DRIVER_HABIT)
                || dossier.judgement().causes().stream()
                        .anyMatch(c -> c.classId().equals(DRIVER_HABIT) && c.probability() >= WORTH_A_WORD);
    }

    /** Points about what this gearbox is said not to have are left out. */
    private static boolean fits(String id, Dossier dossier) {
        Layout layout = dossier.file().gearbox();
        boolean noSplitter =
                layout.splitter().filter(s -> s == Layout.Splitter.NONE).isPresent();
        boolean noRange =
                layout.range().filter(r -> r == Layout.RangeShift.NONE).isPresent();
        boolean noPowerTakeOff =
                layout.powerTakeOff().filter(p -> p == Layout.Fitted.NONE).isPresent();
        return !(noSplitter && id.contains("splitter"))
                && !(noRange && id.contains("range"))
                && !(noPowerTakeOff && id.startsWith("pto"));
    }

    private static Point point(Advice advice, Language language) {
        return new Point(
                text(advice, language),
                switch (language) {
                    case ENGLISH -> advice.whyEnglish();
                    case SPANISH -> advice.whySpanish();
                });
    }

    private static String text(Advice advice, Language language) {
        return switch (language) {
            case ENGLISH -> advice.english();
            case SPANISH -> advice.spanish();
        };
    }
}
