package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.document.Dossier;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.knowledge.CoachingAdvice;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;

/**
 * The driver's card: what to do in this gearbox and why, with the figure of this truck beside the rule it belongs to. It
 * names no cause and judges nobody. Points come first from a concluded habit only; without one it is the general card of
 * the truck and says what the case says of the driver.
 *
 * @param note what the case says of the driver; empty for a card without a case
 * @param first points that go with a concluded habit, most worth first
 * @param rest points of good practice that fit the gearbox, in the order in which a trainer goes through them
 * @param figures figures of this truck that belong to none of these points
 */
public record CoachingPage(String unit, String note, List<Point> first, List<Point> rest, List<Field> figures) {
    private static final String DRIVER_HABIT = "driver-habit";
    private static final int MOST_POINTS = 7;
    private static final double WORTH_A_WORD = 0.10;

    /** One thing to do, with the figures of this truck for it and its reason; both may be empty. */
    public record Point(String text, String figure, String why) {}

    /** What a truck's card is drawn up for. */
    private record Cab(
            KnowledgeBase knowledge, Optional<Layout> layout, Optional<TruckProfile> truck, SpeedUnits units) {}

    /** @param words the words of the card, by name */
    public static CoachingPage of(Dossier dossier, Language language, Map<String, String> words) {
        List<String> habit = habit(dossier).map(AdviceGiven.Piece::id).toList();
        String note = note(dossier, habit);
        Cab cab = new Cab(
                dossier.knowledge(),
                Optional.of(dossier.file().gearbox()),
                dossier.truck(),
                SpeedUnits.of(dossier.shop().units()));
        return page(dossier.file().vehicle().unit(), words.getOrDefault(note, ""), habit, cab, language);
    }

    private static String note(Dossier dossier, List<String> habit) {
        if (isBroken(dossier)) {
            return "coachingBroken";
        }
        return !habit.isEmpty() ? "coachingHabit" : mayBeDriver(dossier) ? "coachingOpen" : "coachingNothing";
    }

    /** Nobody is talked to about a habit on a case that cannot be relied on. */
    private static boolean isBroken(Dossier dossier) {
        return !Judged.of(dossier).alarm().isEmpty();
    }

    /** The card of a truck alone. */
    public static CoachingPage of(TruckProfile truck, KnowledgeBase knowledge, SpeedUnits units, Language language) {
        return page(
                truck.titleIn(language.tag()),
                "",
                List.of(),
                new Cab(knowledge, Optional.empty(), Optional.of(truck), units),
                language);
    }

    private static CoachingPage page(String unit, String note, List<String> habit, Cab cab, Language language) {
        Map<String, Field> figures = new java.util.LinkedHashMap<>(cab.truck()
                .map(t -> TruckFigures.forDriver(t, language, cab.units()))
                .orElse(Map.of()));
        Set<String> shown = new LinkedHashSet<>();
        List<Point> first = habit.stream()
                .limit(MOST_POINTS)
                .map(id -> point(id, cab, language, figures, shown))
                .toList();
        List<Point> rest = ids(habit, cab)
                .limit(MOST_POINTS - first.size())
                .map(id -> point(id, cab, language, figures, shown))
                .toList();
        figures.keySet().removeAll(shown);
        return new CoachingPage(unit, note, first, rest, List.copyOf(figures.values()));
    }

    /** The general points in a trainer's order, then all others; what is said already is left out. */
    private static Stream<String> ids(List<String> said, Cab cab) {
        return cab.knowledge().coaching().values().stream()
                .sorted(Comparator.comparingInt(point -> point.turn().orElse(Integer.MAX_VALUE)))
                .filter(point -> !said.contains(point.id()) && fits(point, cab))
                .map(CoachingAdvice::id);
    }

    private static Point point(String id, Cab cab, Language language, Map<String, Field> figures, Set<String> shown) {
        CoachingAdvice advice = cab.knowledge().coaching().get(id);
        List<String> beside = new ArrayList<>();
        for (CoachingAdvice.Figure figure : advice.figures()) {
            String key = EnumWord.of(figure);
            if (figures.containsKey(key) && shown.add(key)) {
                String label = figures.get(key).label();
                beside.add((beside.isEmpty() ? label : inSentence(label)) + ": "
                        + figures.get(key).value());
            }
        }
        return new Point(advice.in(language), SayOnPaper.list(beside), advice.why(language));
    }

    /** A label behind a semicolon. */
    private static String inSentence(String label) {
        return label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1);
    }

    /** The points that go with a habit of the driver, if one is concluded, signed and today. */
    static Stream<AdviceGiven.Piece> habit(Dossier dossier) {
        boolean concluded = Judged.of(dossier).classId().equals(DRIVER_HABIT)
                && dossier.judgement().verdict().classId().equals(DRIVER_HABIT)
                && !isBroken(dossier);
        return concluded ? dossier.judgement().advice().coaching().stream() : Stream.empty();
    }

    private static boolean mayBeDriver(Dossier dossier) {
        return Judged.of(dossier).classId().equals(DRIVER_HABIT)
                || dossier.judgement().causes().stream()
                        .anyMatch(c -> c.classId().equals(DRIVER_HABIT) && c.probability() >= WORTH_A_WORD);
    }

    /** Points about what this gearbox is said not to have are left out. */
    private static boolean fits(CoachingAdvice point, Cab cab) {
        return point.about().stream().noneMatch(what -> lacks(cab, what));
    }

    private static boolean lacks(Cab cab, CoachingAdvice.About what) {
        return switch (what) {
            case SPLITTER -> cab.layout()
                            .flatMap(Layout::splitter)
                            .filter(s -> s == Layout.Splitter.NONE)
                            .isPresent()
                    || cab.truck().filter(t -> t.splitter().isEmpty()).isPresent();
            case RANGE -> cab.layout()
                            .flatMap(Layout::range)
                            .filter(r -> r == Layout.RangeShift.NONE)
                            .isPresent()
                    || cab.truck().filter(t -> !t.hasRange()).isPresent();
            case POWER_TAKE_OFF -> cab.layout()
                    .flatMap(Layout::powerTakeOff)
                    .filter(p -> p == Layout.Fitted.NONE)
                    .isPresent();
        };
    }
}
