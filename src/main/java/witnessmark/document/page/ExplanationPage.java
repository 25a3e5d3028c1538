package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.DamageStory;
import witnessmark.document.drawing.DrawDamage;
import witnessmark.document.drawing.DrawGearbox;
import witnessmark.document.drawing.Mark;
import witnessmark.gearbox.Word;

/**
 * What the service writer explains to the fleet.
 *
 * @param stories the causes that carry the verdict, or, where it cannot be told yet, those still possible
 * @param coaching points that go with a concluded habit; none without
 * @param wouldTell what to look at to know more
 * @param damage drawing of how the damage comes about
 */
public record ExplanationPage(
        List<Story> stories,
        List<String> contradictions,
        List<String> wouldTell,
        List<String> repair,
        List<String> coaching,
        List<String> towing,
        List<String> otherSteps,
        String damage,
        String drawing,
        List<Mark> marks,
        List<Field> glossary) {
    private static final int MOST_STORIES = 3;
    private static final double WORTH_A_WORD = 0.10;
    private static final double WORTH_A_WORD_BESIDE_A_VERDICT = 0.30;
    private static final int MOST_REASONS = 6;

    /**
     * One cause in plain words.
     *
     * @param weight class and chance; empty while the cause is not concluded, for a class names people
     */
    public record Story(
            String title,
            String standing,
            String weight,
            String mechanism,
            List<String> speaksFor,
            List<String> speaksAgainst,
            List<String> notLookedAt,
            List<String> heldBack) {}

    public static ExplanationPage of(Dossier dossier, Glossary glossary) {
        Judgement judgement = dossier.judgement();
        List<RankedCause> causes = toldOf(judgement);
        List<Mark> marks = new ChooseMarks(dossier).found();
        PageWords words = new PageWords(dossier);
        List<Story> stories = causes.stream().map(c -> story(dossier, c, words)).toList();
        AdviceGiven advice = judgement.advice();
        return new ExplanationPage(
                stories,
                judgement.contradictions().stream().map(Judgement.Conflict::why).toList(),
                judgement.nextChecks().stream()
                        .limit(4)
                        .map(c -> c.ask() + " (" + c.accessTitle() + ", " + words.minutes(c.minutes()) + ")")
                        .toList(),
                texts(advice.repair()),
                CoachingPage.habit(dossier).map(AdviceGiven.Piece::text).toList(),
                texts(advice.towing()),
                Prevention.of(judgement.verdict().classId(), words),
                DrawDamage.draw(
                        causes.stream()
                                .map(c -> new DamageStory(
                                        told(c, judgement.verdict(), words),
                                        c.title(),
                                        mechanism(dossier, c, words),
                                        titles(c.evidenceFor(), FindingState.PRESENT)))
                                .toList(),
                        dossier.texts()),
                DrawGearbox.draw(dossier.file().gearbox(), marks, dossier.texts()),
                marks,
                glossary.wordsIn(spoken(dossier, stories)));
    }

    /** The causes that carry the verdict first, then those that are still worth a word. */
    static List<RankedCause> toldOf(Judgement judgement) {
        List<RankedCause> told = new ArrayList<>();
        judgement.causes().stream()
                .filter(c -> judgement.verdict().carriedBy().contains(c.id()))
                .forEach(told::add);
        double worthAWord = told.isEmpty() ? WORTH_A_WORD : WORTH_A_WORD_BESIDE_A_VERDICT;
        judgement.causes().stream()
                .filter(c -> !told.contains(c) && c.probability() >= worthAWord)
                .limit(Math.max(0, MOST_STORIES - told.size()))
                .forEach(told::add);
        return told;
    }

    private static Story story(Dossier dossier, RankedCause cause, PageWords words) {
        return new Story(
                cause.title(),
                told(cause, dossier.judgement().verdict(), words),
                weight(dossier, cause, words),
                mechanism(dossier, cause, words),
                reasons(cause.evidenceFor(), words),
                reasons(cause.evidenceAgainst(), words),
                cause.unchecked().stream()
                        .limit(MOST_REASONS)
                        .map(id -> FoundRow.title(dossier, id))
                        .toList(),
                cause.heldBack());
    }

    private static String weight(Dossier dossier, RankedCause cause, PageWords words) {
        return cause.standing() == RankedCause.Standing.CONCLUDED
                ? words.say(
                        "story-weight",
                        words.percent(cause.probability()),
                        words.chance(cause.probability()),
                        dossier.knowledge().classOf(cause.classId()).title())
                : "";
    }

    /** Where nothing can be told yet, every cause is possible and no more is said of its chance. */
    private static String told(RankedCause cause, Verdict verdict, PageWords words) {
        return verdict.standing() == Verdict.Standing.UNDETERMINED
                ? words.say("cause-possible")
                : standing(cause, words);
    }

    static String standing(RankedCause cause, PageWords words) {
        return words.say("cause-" + Word.of(cause.standing()));
    }

    /** What the cause does; told as a condition while it is not concluded. */
    private static String mechanism(Dossier dossier, RankedCause cause, PageWords words) {
        String told = dossier.knowledge().causes().get(cause.id()).mechanism();
        return cause.standing() == RankedCause.Standing.CONCLUDED ? told : words.say("if-at-work", told);
    }

    private static List<String> reasons(List<RankedCause.Weight> weights, PageWords words) {
        return weights.stream()
                .limit(MOST_REASONS)
                .map(w -> w.title() + words.say("reason-" + w.state().word()) + ": " + words.strength(w.decibans()))
                .toList();
    }

    private static List<String> titles(List<RankedCause.Weight> weights, FindingState state) {
        return weights.stream()
                .filter(w -> w.state() == state)
                .map(RankedCause.Weight::title)
                .toList();
    }

    private static List<String> texts(List<AdviceGiven.Piece> pieces) {
        return pieces.stream().map(AdviceGiven.Piece::text).toList();
    }

    private static String spoken(Dossier dossier, List<Story> stories) {
        return stories + " " + dossier.file().complaint() + dossier.judgement().advice()
                + dossier.judgement().nextChecks().stream()
                        .limit(4)
                        .map(NextCheck::ask)
                        .toList();
    }
}
