package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.Mark;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.Vocabulary.CauseClass;

/**
 * What the service writer explains to the fleet.
 *
 * @param stories the causes that carry the verdict, or, where it cannot be told yet, those still possible
 * @param signedApart whether the causes are told as they were signed, since today's judgement is another
 * @param open what stays open beside a concluded cause
 * @param coaching points that go with a concluded habit; none without
 * @param wouldTell what to look at to know more
 * @param damage how each cause brings the damage about
 */
public record ExplanationPage(
        List<Story> stories,
        boolean signedApart,
        List<String> open,
        List<String> contradictions,
        List<String> wouldTell,
        List<String> repair,
        List<String> coaching,
        List<String> towing,
        List<String> otherSteps,
        List<Damage> damage,
        String drawing,
        List<Mark> marks,
        List<Field> glossary) {
    private static final String TOWING = "towing-transport";
    private static final int MOST_STORIES = 3;
    private static final double WORTH_A_WORD = 0.10;
    private static final double WORTH_A_WORD_BESIDE_A_VERDICT = 0.30;
    private static final int MOST_HELD = 2;
    private static final int MOST_TELLING = 4;
    private static final int MOST_REASONS = 4;
    private static final int MOST_MARKS = 6;

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

    /**
     * How one cause brings the damage about: what acts, what it does, and what was found of it.
     *
     * @param marks what was found that it explains; says so where nothing was
     */
    public record Damage(String cause, String standing, String mechanism, List<String> marks) {}

    public static ExplanationPage of(Dossier dossier, Glossary glossary) {
        Judgement judgement = dossier.judgement();
        Optional<SignedJudgement> signed = signedApart(dossier);
        List<RankedCause> causes = signed.map(s -> signedCauses(s, judgement)).orElseGet(() -> toldOf(judgement));
        ChooseMarks choose = new ChooseMarks(dossier);
        List<Mark> marks = choose.found();
        SayOnPaper words = new SayOnPaper(dossier);
        List<Story> stories = causes.stream()
                .map(c -> signed.map(s -> signedStory(dossier, s, c, words)).orElseGet(() -> story(dossier, c, words)))
                .toList();
        AdviceGiven advice = judgement.advice();
        List<String> wouldTell = telling(judgement).stream()
                .map(c -> c.ask() + " (" + c.accessTitle() + ", " + words.minutes(c.minutes()) + ")")
                .toList();
        List<String> repair = signed.isPresent()
                ? causes.stream()
                        .flatMap(c -> dossier.knowledge().causes().get(c.id()).repair().stream())
                        .toList()
                : texts(advice.repair());
        List<String> coaching =
                CoachingPage.habit(dossier).map(AdviceGiven.Piece::text).toList();
        List<String> towing = Judged.of(dossier).classId().equals(TOWING) ? texts(advice.towing()) : List.of();
        List<String> otherSteps = dossier.knowledge().prevention().stream()
                .filter(step -> step.classId().equals(Judged.of(dossier).classId()))
                .map(step -> step.in(dossier.language()))
                .toList();
        String work = dossier.file().workDone();
        String printed = stories
                + dossier.file().complaint()
                + (Judged.of(dossier).concluded() ? "" : wouldTell)
                + (work.isEmpty() ? repair : work)
                + coaching
                + towing
                + otherSteps;
        return new ExplanationPage(
                stories,
                signed.isPresent(),
                signed.isPresent() ? List.of() : judgement.verdict().open(),
                judgement.contradictions().stream().map(Judgement.Conflict::why).toList(),
                wouldTell,
                repair,
                coaching,
                towing,
                otherSteps,
                damage(dossier, causes, stories, signed, words),
                choose.drawn(marks),
                marks,
                glossary.wordsIn(printed));
    }

    /** What the verdict names as missing and the checks that tell most, in the order in which they are made. */
    private static List<NextCheck> telling(Judgement judgement) {
        List<String> demanded = judgement.demanded();
        List<NextCheck> most = judgement.nextChecks().stream()
                .sorted(Comparator.comparing((NextCheck c) -> !demanded.contains(c.finding()))
                        .thenComparing(
                                Comparator.comparingDouble(NextCheck::gainBits).reversed()))
                .limit(MOST_TELLING)
                .toList();
        return judgement.nextChecks().stream().filter(most::contains).toList();
    }

    /** What was signed, where today's judgement is another one. */
    private static Optional<SignedJudgement> signedApart(Dossier dossier) {
        return Judged.of(dossier).today().isEmpty()
                ? Optional.empty()
                : dossier.file().signedOff().flatMap(SignOff::judgement).filter(j -> !j.carrying()
                        .isEmpty());
    }

    private static List<RankedCause> signedCauses(SignedJudgement signed, Judgement judgement) {
        List<String> ids = signed.carrying().stream().map(SignedCause::id).toList();
        return judgement.causes().stream().filter(c -> ids.contains(c.id())).toList();
    }

    private static List<Damage> damage(
            Dossier dossier,
            List<RankedCause> causes,
            List<Story> stories,
            Optional<SignedJudgement> signed,
            SayOnPaper words) {
        Set<String> present = dossier.file().findings().values().stream()
                .filter(f -> f.state() == FindingState.PRESENT)
                .map(f -> FoundRow.title(dossier, f.finding()))
                .collect(Collectors.toSet());
        return IntStream.range(0, causes.size())
                .mapToObj(i -> {
                    Story story = stories.get(i);
                    List<String> marks = signed.isPresent()
                            ? story.speaksFor().stream()
                                    .filter(present::contains)
                                    .toList()
                            : titles(causes.get(i).evidenceFor(), FindingState.PRESENT);
                    return new Damage(story.title(), story.standing(), story.mechanism(), shown(marks, words));
                })
                .toList();
    }

    private static List<String> shown(List<String> marks, SayOnPaper words) {
        if (marks.isEmpty()) {
            return List.of(words.say("damage-none-found"));
        }
        Stream<String> more = marks.size() > MOST_MARKS
                ? Stream.of(words.say("damage-more", marks.size() - MOST_MARKS))
                : Stream.of();
        return Stream.concat(marks.stream().limit(MOST_MARKS), more).toList();
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

    private static Story story(Dossier dossier, RankedCause cause, SayOnPaper words) {
        return new Story(
                cause.title(),
                told(dossier, cause, words),
                weight(dossier, cause, words),
                mechanism(dossier, cause, words),
                reasons(cause.evidenceFor(), words),
                reasonsAgainst(cause, cause.evidenceAgainst(), words),
                unchecked(dossier, cause),
                cause.heldBack().stream().limit(MOST_HELD).toList());
    }

    /** A cause as it was signed; what speaks against it and what is open are weighed today. */
    private static Story signedStory(Dossier dossier, SignedJudgement signed, RankedCause cause, SayOnPaper words) {
        SignedCause then = signed.carrying().stream()
                .filter(c -> c.id().equals(cause.id()))
                .findFirst()
                .orElseThrow();
        List<String> carried =
                signed.carriedBy().stream().map(dossier.knowledge()::text).toList();
        boolean concluded = signed.pointsTo().isEmpty();
        String told = dossier.knowledge().causes().get(cause.id()).mechanism();
        return new Story(
                cause.title(),
                words.say("story-signed", words.say("standing-" + signed.standing())),
                concluded
                        ? words.say(
                                "story-signed-weight",
                                words.percent(then.probability()),
                                words.chance(then.probability()),
                                classWhenSigned(dossier, then))
                        : "",
                concluded ? told : words.say("if-at-work", told),
                SignedGrounds.of(signed, dossier, words),
                reasonsAgainst(
                        cause,
                        cause.evidenceAgainst().stream()
                                .filter(w -> !carried.contains(w.title()))
                                .toList(),
                        words),
                unchecked(dossier, cause),
                List.of());
    }

    /** The class as it was signed, which may be another today, or not known here. */
    private static String classWhenSigned(Dossier dossier, SignedCause then) {
        return dossier.knowledge().vocabulary().classes().stream()
                .filter(c -> c.id().equals(then.classId()))
                .findFirst()
                .map(CauseClass::title)
                .orElse(then.classId());
    }

    private static List<String> unchecked(Dossier dossier, RankedCause cause) {
        return FoundRow.unchecked(dossier, cause).stream().limit(MOST_REASONS).toList();
    }

    private static String weight(Dossier dossier, RankedCause cause, SayOnPaper words) {
        return cause.standing() == RankedCause.Standing.CONCLUDED
                ? words.say(
                        "story-weight",
                        words.percent(cause.probability()),
                        words.chance(cause.probability()),
                        dossier.knowledge().classOf(cause.classId()).title())
                : "";
    }

    /** Where nothing can be told yet, every cause is possible and no more is said of its chance. */
    static String told(Dossier dossier, RankedCause cause, SayOnPaper words) {
        return dossier.judgement().verdict().standing() == Verdict.Standing.UNDETERMINED
                ? words.say("cause-possible")
                : standing(dossier, cause, words);
    }

    /** As the verdict says it: of a class that could name people, what the evidence is consistent with. */
    private static String standing(Dossier dossier, RankedCause cause, SayOnPaper words) {
        boolean ofPeople = cause.standing() == RankedCause.Standing.CONCLUDED
                && dossier.knowledge().classOf(cause.classId()).blames();
        return words.say("cause-" + EnumWord.of(cause.standing()) + (ofPeople ? "-of-people" : ""));
    }

    /** What the cause does; told as a condition while it is not concluded. */
    private static String mechanism(Dossier dossier, RankedCause cause, SayOnPaper words) {
        String told = dossier.knowledge().causes().get(cause.id()).mechanism();
        return cause.standing() == RankedCause.Standing.CONCLUDED ? told : words.say("if-at-work", told);
    }

    private static List<String> reasons(List<RankedCause.Weight> weights, SayOnPaper words) {
        return weights.stream()
                .limit(MOST_REASONS)
                .map(w -> w.title() + words.say("reason-" + w.state().word()) + ": " + words.strength(w.decibans()))
                .toList();
    }

    private static List<String> reasonsAgainst(RankedCause cause, List<RankedCause.Weight> weights, SayOnPaper words) {
        return weights.stream()
                .filter(w -> -w.decibans() >= SayOnPaper.WORTH_SAYING_AGAINST)
                .limit(MOST_REASONS)
                .map(w -> words.against(cause, w) + ": " + words.strength(w.decibans()))
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
}
