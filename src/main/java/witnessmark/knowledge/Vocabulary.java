package witnessmark.knowledge;

import java.util.List;
import java.util.Map;

/**
 * The words for chances and their numbers, and the classes of causes.
 *
 * @param strengths chance that a cause at work produces the finding, by word
 * @param priors chance of the cause in a gearbox that comes in with a complaint, by word
 * @param backgrounds chance of the finding without any known cause, by word
 * @param against factor on the odds of a cause, by word
 * @param seenIfThere chance that the look at a cause itself shows it where it is
 * @param seenWithoutCause chance that a part is seen so although no known cause made it so
 * @param greatestRatio how many times likelier a finding may be with its cause than without, and its absence the other
 *     way round, unless it is a look or says why it is conclusive
 * @param toldIfSo chance that somebody says so where it is so
 * @param toldIfNot chance that somebody says so where it is not
 * @param notOnPaperIfSo chance, against that where it is not so, that no paper shows it although it is so
 * @param unsureIfPresent chance of the answer "unsure" on a part that has the finding
 * @param unsureIfAbsent chance of the answer "unsure" on a part that has it not
 */
public record Vocabulary(
        Map<String, Double> strengths,
        Map<String, Double> priors,
        Map<String, Double> backgrounds,
        Map<String, Double> against,
        double seenIfThere,
        double seenWithoutCause,
        double greatestRatio,
        double toldIfSo,
        double toldIfNot,
        double notOnPaperIfSo,
        double unsureIfPresent,
        double unsureIfAbsent,
        List<CauseClass> classes) {

    static final Vocabulary EMPTY =
            new Vocabulary(Map.of(), Map.of(), Map.of(), Map.of(), 0.5, 0.5, 30, 0.5, 0.5, 0.5, 0.5, 0.5, List.of());

    public Vocabulary {
        strengths = Map.copyOf(strengths);
        priors = Map.copyOf(priors);
        backgrounds = Map.copyOf(backgrounds);
        against = Map.copyOf(against);
        classes = List.copyOf(classes);
    }

    /**
     * A class of causes: whose hands could have prevented it.
     *
     * @param blames whether naming it is a statement about a person, so that the blame guard watches it
     * @param names whether somebody answers for it, so that each circumstance that would make it another's is asked before it stands
     */
    public record CauseClass(String id, String title, boolean blames, boolean names, String plain) {}

    /** The same words with other classes. */
    Vocabulary withClasses(List<CauseClass> classes) {
        return new Vocabulary(
                strengths,
                priors,
                backgrounds,
                against,
                seenIfThere,
                seenWithoutCause,
                greatestRatio,
                toldIfSo,
                toldIfNot,
                notOnPaperIfSo,
                unsureIfPresent,
                unsureIfAbsent,
                classes);
    }
}
