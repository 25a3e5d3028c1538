package witnessmark.diagnosis.score;

import java.util.List;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.knowledge.KnowledgeBase;

/**
 * A judgement beside what the case should come to.
 *
 * @param firstRight whether the cause ranked first is one of those expected; true where none is named
 * @param withinThree whether all causes expected within three are there, and one of those expected first
 * @param verdictRight whether the class, or "undetermined", is the expected one
 * @param wrongBlame whether a person's doing was concluded that is not the expected outcome
 * @param contradictionRight whether a contradiction was seen exactly where one was expected
 */
public record Scored(
        String caseId,
        ExpectedOutcome expected,
        Judgement judgement,
        boolean firstRight,
        boolean withinThree,
        boolean verdictRight,
        boolean wrongBlame,
        boolean contradictionRight) {

    static Scored of(ExpectedOutcome expected, Judgement judgement, KnowledgeBase knowledge) {
        List<String> three =
                judgement.causes().stream().limit(3).map(RankedCause::id).toList();
        boolean none = expected.first().isEmpty();
        Verdict verdict = judgement.verdict();
        boolean verdictRight = verdict.classId().equals(expected.verdict()) || isEitherOfTwo(expected, judgement);
        boolean blames =
                verdict.isDetermined() && knowledge.classOf(verdict.classId()).blames();
        return new Scored(
                judgement.caseId(),
                expected,
                judgement,
                none || (!three.isEmpty() && expected.first().contains(three.get(0))),
                three.containsAll(expected.withinThree())
                        && (none || expected.first().stream().anyMatch(three::contains)),
                verdictRight,
                blames && !verdictRight,
                judgement.contradictions().isEmpty() != expected.contradiction());
    }

    /** Where two causes of different classes are expected and both are concluded, the class of either is right. */
    private static boolean isEitherOfTwo(ExpectedOutcome expected, Judgement judgement) {
        List<RankedCause> concluded = judgement.causes().stream()
                .filter(c -> c.standing() == RankedCause.Standing.CONCLUDED)
                .filter(c -> expected.withinThree().contains(c.id()))
                .toList();
        return expected.withinThree().size() > 1
                && concluded.size() == expected.withinThree().size()
                && concluded.stream().anyMatch(c -> c.classId().equals(expected.verdict()))
                && concluded.stream()
                        .anyMatch(c -> c.classId().equals(judgement.verdict().classId()));
    }

    /** Whether the case came out in every respect as expected. */
    public boolean isRight() {
        return firstRight && withinThree && verdictRight && contradictionRight;
    }

    /** Whether the cause is one the case names as its truth. */
    boolean isTrue(String cause) {
        return expected.first().contains(cause) || expected.withinThree().contains(cause);
    }
}
