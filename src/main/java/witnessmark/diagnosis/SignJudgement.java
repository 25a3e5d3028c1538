package witnessmark.diagnosis;

import java.util.List;
import java.util.stream.Stream;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;

/** Takes from a judgement what is kept when a case is signed off. */
public final class SignJudgement {
    private static final int MOST_CAUSES = 5;
    private static final int MOST_CARRYING = 5;

    private SignJudgement() {}

    public static SignedJudgement of(Judgement judgement, MadeWith made) {
        Verdict verdict = judgement.verdict();
        return new SignedJudgement(
                verdict.classId(),
                verdict.standing().word(),
                verdict.pointsTo(),
                verdict.sentence(),
                judgement.causesFrom(Thresholds.WORTH_A_WORD).stream()
                        .limit(MOST_CAUSES)
                        .map(c -> new SignedCause(c.id(), c.title(), c.classId(), rounded(c.probability())))
                        .toList(),
                carrying(judgement),
                made);
    }

    private static List<String> carrying(Judgement judgement) {
        Stream<RankedCause> causes = judgement.causes().stream()
                .filter(c -> judgement.verdict().carriedBy().contains(c.id()));
        return causes.flatMap(c -> c.evidenceFor().stream())
                .map(RankedCause.Weight::title)
                .distinct()
                .limit(MOST_CARRYING)
                .toList();
    }

    /** To the tenth of a per cent: no more is known. */
    private static double rounded(double probability) {
        return Math.round(1000 * probability) / 1000.0;
    }
}
