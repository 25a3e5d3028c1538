package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.NextCheck;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.DrawGearbox;
import witnessmark.document.drawing.Mark;
import witnessmark.knowledge.Caution;

/**
 * The technician's sheet.
 *
 * @param cautions first of all, each once
 * @param places what to look at next, by the place where the hands must be, most worth first
 * @param moreChecks how many checks of less worth are left out
 */
public record BenchPage(
        List<String> cautions,
        List<Place> places,
        int moreChecks,
        List<FoundRow> found,
        List<MeasuredRow> measured,
        List<AdviceGiven.Piece> repair,
        List<String> contradictions,
        List<String> remarks,
        String drawing,
        List<Mark> marks) {
    private static final int MOST_CHECKS = 12;

    /**
     * Checks made in one place.
     *
     * @param effort what must be opened for it and how long that takes
     */
    public record Place(String title, String effort, List<Check> checks) {}

    /** One check with room to tick. */
    public record Check(String id, String ask, String look, String minutes, String why) {}

    public static BenchPage of(Dossier dossier) {
        List<NextCheck> all = dossier.judgement().nextChecks();
        List<NextCheck> shown = all.subList(0, Math.min(MOST_CHECKS, all.size()));
        PageWords words = new PageWords(dossier);
        ChooseMarks choose = new ChooseMarks(dossier);
        List<Mark> marks = new ArrayList<>(choose.found());
        marks.addAll(choose.next(shown, marks));
        return new BenchPage(
                cautions(dossier, shown),
                places(shown, words),
                all.size() - shown.size(),
                FoundRow.of(dossier),
                MeasuredRow.of(dossier),
                dossier.judgement().advice().repair(),
                dossier.judgement().contradictions().stream().map(c -> c.why()).toList(),
                dossier.judgement().remarks(),
                DrawGearbox.draw(dossier.file().gearbox(), marks, dossier.texts()),
                marks);
    }

    private static List<String> cautions(Dossier dossier, List<NextCheck> shown) {
        Map<String, Caution> known = dossier.knowledge().cautions();
        Set<String> texts = new LinkedHashSet<>();
        shown.forEach(check -> check.cautions()
                .forEach(id -> texts.add(known.get(id).in(dossier.knowledge().language()))));
        dossier.judgement().advice().cautions().forEach(piece -> texts.add(piece.text()));
        return List.copyOf(texts);
    }

    private static List<Place> places(List<NextCheck> checks, PageWords words) {
        Map<String, List<NextCheck>> byPlace = new LinkedHashMap<>();
        checks.stream().sorted(Comparator.comparing(NextCheck::teardown)).forEach(c -> byPlace.computeIfAbsent(
                        c.access(), a -> new ArrayList<>())
                .add(c));
        return byPlace.values().stream()
                .map(here -> new Place(
                        here.get(0).accessTitle(),
                        effort(here.get(0), words),
                        here.stream().map(c -> check(c, words)).toList()))
                .toList();
    }

    private static String effort(NextCheck first, PageWords words) {
        if (first.openMinutes() == 0) {
            return words.say("effort-none");
        }
        return words.say(first.teardown() ? "effort-teardown" : "effort", words.minutes(first.openMinutes()));
    }

    private static Check check(NextCheck check, PageWords words) {
        return new Check(check.finding(), check.ask(), check.look(), words.minutes(check.checkMinutes()), check.why());
    }
}
