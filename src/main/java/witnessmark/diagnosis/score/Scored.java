package witnessmark.diagnosis.score;

import java.util.List;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;

/**
 * A judgement beside what the case should come to.
 *
 * @param firstRight whether the cause ranked first is one of those expected; true where none is named
 * @param withinThree whether all causes expected within three are there, and one of those expected first
 * @param answer what was said of the class, beside what was expected
 * @param contradictionRight whether a contradiction was seen exactly where one was expected
 */
public record Scored(
        String caseId,
        ExpectedOutcome expected,
        Judgement judgement,
        boolean firstRight,
        boolean withinThree,
        Answer answer,
        boolean contradictionRight) {

    /** What was said of the class, beside what was expected. */
    public enum Answer {
        /** The expected class was concluded. */
        RIGHT,
        /** The expected class was pointed to, not concluded. */
        POINTED_RIGHT,
        /** It cannot be told, and that was expected. */
        OPEN_RIGHT,
        /** It was pointed to a class where none can be told. */
        POINTED_WHERE_NONE,
        /** It was said that it cannot be told where it can. */
        WITHHELD,
        /** Another class than the expected one was pointed to. */
        POINTED_WRONG,
        /** A class was concluded where none can be told. */
        GIVEN_WHERE_NONE,
        /** Another class than the expected one was concluded: a wrong blame, whoever is named. */
        WRONG
    }

    static Scored of(ExpectedOutcome expected, Judgement judgement) {
        List<String> three =
                judgement.causes().stream().limit(3).map(RankedCause::id).toList();
        boolean none = expected.first().isEmpty();
        return new Scored(
                judgement.caseId(),
                expected,
                judgement,
                none || (!three.isEmpty() && expected.first().contains(three.get(0))),
                three.containsAll(expected.withinThree())
                        && (none || expected.first().stream().anyMatch(three::contains)),
                answer(expected, judgement),
                judgement.contradictions().isEmpty() != expected.contradiction());
    }

    private static Answer answer(ExpectedOutcome expected, Judgement judgement) {
        Verdict verdict = judgement.verdict();
        boolean noneExpected = expected.verdict().equals(Verdict.UNDETERMINED);
        return switch (verdict.standing()) {
            case CONCLUDED -> verdict.classId().equals(expected.verdict()) || isEitherOfTwo(expected, judgement)
                    ? Answer.RIGHT
                    : noneExpected ? Answer.GIVEN_WHERE_NONE : Answer.WRONG;
            case POINTS_TO -> noneExpected
                    ? Answer.POINTED_WHERE_NONE
                    : verdict.pointsTo().filter(expected.verdict()::equals).isPresent()
                            ? Answer.POINTED_RIGHT
                            : Answer.POINTED_WRONG;
            case UNDETERMINED -> noneExpected ? Answer.OPEN_RIGHT : Answer.WITHHELD;
        };
    }

    /** Where several causes are expected and may come first, the class of the one that was concluded is right. */
    private static boolean isEitherOfTwo(ExpectedOutcome expected, Judgement judgement) {
        return expected.first().size() > 1
                && judgement.verdict().carriedBy().stream()
                        .findFirst()
                        .filter(expected.first()::contains)
                        .isPresent();
    }

    /** Whether the case came out in every respect as expected; pointing the right way counts. */
    public boolean isRight() {
        return firstRight && withinThree && verdictRight() && contradictionRight;
    }

    /** Whether what was said of the class is right, though it may be more careful than it need be. */
    public boolean verdictRight() {
        return answer == Answer.RIGHT
                || answer == Answer.POINTED_RIGHT
                || answer == Answer.OPEN_RIGHT
                || answer == Answer.POINTED_WHERE_NONE;
    }

    /** Whether a class was concluded that is not the expected outcome. */
    public boolean wrongBlame() {
        return answer == Answer.WRONG || answer == Answer.GIVEN_WHERE_NONE;
    }

    /** Whether the cause is one the case names as its truth. */
    boolean isTrue(String cause) {
        return expected.first().contains(cause) || expected.withinThree().contains(cause);
    }
}
