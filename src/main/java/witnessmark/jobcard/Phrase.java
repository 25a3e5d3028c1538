package witnessmark.jobcard;

import java.util.List;
import witnessmark.knowledge.Wording;

/**
 * One way to say something.
 *
 * @param names what of the finding or measure it names
 */
record Phrase(Wording.Of of, String id, Names names, List<Term> terms, double weight) {
    /** What a phrase names. */
    enum Names {
        /** That the finding is there, or the measure. */
        IT,
        /** Words under which it is searched for: they are near it. */
        NEAR,
        /** The part that is looked at, not what is wrong with it. */
        PART,
        /** That the finding is not there. */
        SOUND,
        /** The part that is worked on. */
        WORK
    }

    boolean saysFinding() {
        return of == Wording.Of.FINDING && (names == Names.IT || names == Names.NEAR);
    }
}
