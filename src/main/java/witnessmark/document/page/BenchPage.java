package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.Mark;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.Caution;

/**
 * The technician's sheet.
 *
 * @param cautions first of all, each once
 * @param places what to look at next, by the place where the hands must be, most worth first
 * @param moreChecks how many checks of less worth, or of causes that hardly count, are left out
 * @param found what was found, is unsure, or was told
 * @param notFound what was looked for and was not there, in one line
 * @param repair each with its reason where that is another than before
 */
public record BenchPage(
        List<String> cautions,
        List<Place> places,
        int moreChecks,
        List<FoundRow> found,
        String notFound,
        List<MeasuredRow> measured,
        List<AdviceGiven.Piece> repair,
        List<String> contradictions,
        List<String> remarks,
        String drawing,
        List<Mark> marks) {
    private static final int MOST_CHECKS = 7;

    /**
     * Checks made in one place.
     *
     * @param effort what must be opened for it and how long that takes
     */
    public record Place(String title, String effort, List<Check> checks) {}

    /**
     * One check with room to tick.
     *
     * @param place where it is made and what must be opened for it; empty where that is said at the check before
     * @param why what it is made for, without figures: whoever looks should not know what is hoped for
     */
    public record Check(String place, String id, String ask, String look, String minutes, String why) {}

    public static BenchPage of(Dossier dossier) {
        List<NextCheck> all = dossier.judgement().nextChecks();
        List<NextCheck> shown = shown(dossier.judgement());
        ChooseMarks choose = new ChooseMarks(dossier);
        List<Mark> marks = new ArrayList<>(choose.found());
        marks.addAll(choose.next(shown, marks));
        return new BenchPage(
                cautions(dossier, shown),
                places(dossier, shown),
                all.size() - shown.size(),
                rows(dossier, e -> !isAbsent(e)),
                SayOnPaper.list(rows(dossier, BenchPage::isAbsent).stream()
                        .map(r -> r.title() + (r.note().isEmpty() ? "" : " (" + r.note() + ")"))
                        .toList()),
                MeasuredRow.of(dossier),
                repair(dossier.judgement(), new SayOnPaper(dossier)),
                dossier.judgement().contradictions().stream().map(c -> c.why()).toList(),
                dossier.judgement().remarks(),
                choose.drawn(marks),
                marks);
    }

    /** The checks worth most that are made for a conclusion or for a cause that the papers tell of; where they tell of none, of any. */
    private static List<NextCheck> shown(Judgement judgement) {
        Set<String> told =
                ExplanationPage.toldOf(judgement).stream().map(RankedCause::id).collect(Collectors.toSet());
        return judgement.nextChecks().stream()
                .filter(c -> told.isEmpty() || c.bearing() != NextCheck.Bearing.CAUSE || told.contains(c.cause()))
                .limit(MOST_CHECKS)
                .toList();
    }

    private static boolean isAbsent(FindingEntry entry) {
        return entry.state() == FindingState.ABSENT && entry.toldBy().isEmpty();
    }

    private static List<FoundRow> rows(Dossier dossier, Predicate<FindingEntry> which) {
        return dossier.file().findings().values().stream()
                .filter(which)
                .map(e -> FoundRow.of(dossier, e))
                .toList();
    }

    private static List<AdviceGiven.Piece> repair(Judgement judgement, SayOnPaper words) {
        boolean open = judgement.verdict().standing() == Verdict.Standing.UNDETERMINED;
        List<AdviceGiven.Piece> pieces = new ArrayList<>();
        String before = "";
        for (AdviceGiven.Piece piece : judgement.advice().repair()) {
            String why = open ? words.say("repair-open") : piece.why();
            pieces.add(new AdviceGiven.Piece(piece.id(), piece.text(), why.equals(before) ? "" : why));
            before = why;
        }
        return pieces;
    }

    private static List<String> cautions(Dossier dossier, List<NextCheck> shown) {
        Map<String, Caution> known = dossier.knowledge().cautions();
        Set<String> texts = new LinkedHashSet<>();
        shown.forEach(check -> check.cautions()
                .forEach(id -> texts.add(known.get(id).in(dossier.knowledge().language()))));
        dossier.judgement().advice().cautions().forEach(piece -> texts.add(piece.text()));
        return List.copyOf(texts);
    }

    private static List<Place> places(Dossier dossier, List<NextCheck> checks) {
        SayOnPaper words = new SayOnPaper(dossier);
        Map<String, List<NextCheck>> byPlace = new LinkedHashMap<>();
        checks.stream().sorted(Comparator.comparing(NextCheck::teardown)).forEach(c -> byPlace.computeIfAbsent(
                        c.access(), a -> new ArrayList<>())
                .add(c));
        return byPlace.values().stream()
                .map(here -> place(dossier, here, words))
                .toList();
    }

    private static Place place(Dossier dossier, List<NextCheck> here, SayOnPaper words) {
        NextCheck first = here.get(0);
        String effort = effort(first, words);
        return new Place(
                first.accessTitle(),
                effort,
                here.stream()
                        .map(c -> new Check(
                                c == first ? first.accessTitle() + " (" + effort + ")" : "",
                                c.finding(),
                                c.ask(),
                                c.look(),
                                words.minutes(c.checkMinutes()),
                                words.say(
                                        "bench-for-" + EnumWord.of(c.bearing()),
                                        dossier.knowledge()
                                                .causes()
                                                .get(c.cause())
                                                .title())))
                        .toList());
    }

    private static String effort(NextCheck first, SayOnPaper words) {
        if (first.openMinutes() == 0) {
            return words.say("effort-none");
        }
        return words.say(first.teardown() ? "effort-teardown" : "effort", words.minutes(first.openMinutes()));
    }
}
