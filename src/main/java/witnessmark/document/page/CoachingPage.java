package witnessmark.document.page;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.document.Dossier;
import witnessmark.document.Language;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Advice;

/**
 * The driver's card: what to do in this gearbox and why. It names no cause and judges nobody.
 *
 * @param first points that go with this truck's case, most worth first
 * @param rest the other points of good practice that fit the layout
 */
public record CoachingPage(String unit, List<Point> first, List<Point> rest, List<Field> figures) {
    private static final String DRIVER_HABIT = "driver-habit";

    /** One thing to do, with its reason; the reason may be empty. */
    public record Point(String text, String why) {}

    public static CoachingPage of(Dossier dossier, Language language, List<Field> figures) {
        Set<String> first = new LinkedHashSet<>(dossier.judgement().advice().coaching().stream()
                .map(AdviceGiven.Piece::id)
                .toList());
        List<Point> rest = new ArrayList<>();
        dossier.knowledge().coaching().forEach((id, advice) -> {
            if (!first.contains(id) && fits(id, dossier)) {
                rest.add(new Point(text(advice, language), ""));
            }
        });
        return new CoachingPage(
                dossier.file().vehicle().unit(),
                first.stream()
                        .map(id -> point(dossier.knowledge().coaching().get(id), language))
                        .toList(),
                rest,
                figures);
    }

    /** What coaching points say of the driver. */
    static String note(Judgement judgement) {
        return judgement.verdict().classId().equals(DRIVER_HABIT)
                ? "These points go with the evidence above. They are to be talked through, not charged."
                : "General good practice. Nothing is said about this truck's driver.";
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
