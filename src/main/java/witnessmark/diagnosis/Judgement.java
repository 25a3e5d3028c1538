package witnessmark.diagnosis;

import java.util.List;
import witnessmark.diagnosis.fact.HoldReason;

/**
 * What can be said of a case on its evidence.
 *
 * @param causes ranked, most probable first; every cause that could explain something found
 * @param attribution chance that at least one cause of the class is at work, most probable first; classes that no cause carries are
 *     left out; classes can be at
 *     work together, so the chances need not sum to one
 * @param parts the parts seen broken or out of limit, with why and with what they explain
 * @param changes what rules changed for this case, and why
 * @param nextChecks most worth first
 * @param coverage share of the evidence that matters which was looked at, 0 to 1
 * @param remarks what the reader should know about how the evidence was taken
 */
public record Judgement(
        String caseId,
        Verdict verdict,
        List<RankedCause> causes,
        List<ClassShare> attribution,
        List<PartSeen> parts,
        List<Conflict> contradictions,
        List<Change> changes,
        List<NextCheck> nextChecks,
        AdviceGiven advice,
        double coverage,
        List<String> remarks) {

    /** The same with these checks ahead. */
    Judgement withNext(List<NextCheck> checks) {
        return new Judgement(
                caseId,
                verdict,
                causes,
                attribution,
                parts,
                contradictions,
                changes,
                checks,
                advice,
                coverage,
                remarks);
    }

    /** The shares that a reader is told: none while it cannot be told whose it is, since they would rank people. */
    public List<ClassShare> sharesTold() {
        return verdict.standing() == Verdict.Standing.UNDETERMINED ? List.of() : attribution;
    }

    /** The chance that at least one cause of the class is at work. */
    public record ClassShare(String classId, String title, double probability) {}

    /** Evidence that does not fit together. */
    public record Conflict(List<String> findings, String why) {}

    /**
     * What a rule changed for this case.
     *
     * @param subject id of the cause or class it acts on
     * @param finding id of the finding that set it off; empty where the layout did
     * @param sentence what was changed and why
     */
    public record Change(String subject, String finding, String sentence) {}

    /** Whether what leads may not be concluded because evidence it leans on contradicts itself, and nothing else may. */
    public boolean waitsOnContradiction() {
        return causes.stream().noneMatch(c -> c.standing() == RankedCause.Standing.CONCLUDED)
                && causes.stream()
                        .filter(c -> c.standing() == RankedCause.Standing.HELD_BACK)
                        .flatMap(c -> c.reasons().stream())
                        .anyMatch(HoldReason.Contradicted.class::isInstance);
    }

    /** The looks that a verdict which only points somewhere names as missing; none where it does not point. */
    public List<String> demanded() {
        return verdict.standing() != Verdict.Standing.POINTS_TO
                ? List.of()
                : causes.stream()
                        .filter(c -> c.id().equals(verdict.carriedBy().get(0)))
                        .flatMap(c -> c.demands().stream())
                        .toList();
    }

    /** The causes at or above a probability, in rank order. */
    public List<RankedCause> causesFrom(double probability) {
        return causes.stream().filter(c -> c.probability() >= probability).toList();
    }
}
