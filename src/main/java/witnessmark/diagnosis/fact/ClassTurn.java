package witnessmark.diagnosis.fact;

import witnessmark.knowledge.Finding;

/**
 * From the knowledge base: the cause belongs to another class where this finding is present; of several the first in order
 * counts, and only what weighs less gives way to it.
 */
public record ClassTurn(String cause, String finding, String classId, int order, Weight weight) {

    /** How much the circumstance says by itself, least first. */
    public enum Weight {
        /** How old the unit is: it explains what nothing else does. */
        AGE,
        /** What is on record, told, or seen round the gearbox. */
        RECORD,
        /** What the parts themselves show. */
        SEEN
    }

    public ClassTurn(String cause, Finding finding, String classId, int order) {
        this(cause, finding.id(), classId, order, weight(finding));
    }

    /** Whether both can be known, neither giving way to the other. */
    public boolean standsBeside(ClassTurn first) {
        return weight.compareTo(first.weight) >= 0;
    }

    private static Weight weight(Finding finding) {
        if (finding.age()) {
            return Weight.AGE;
        }
        return finding.kind() == Finding.Kind.LOOK || finding.kind() == Finding.Kind.MARK ? Weight.SEEN : Weight.RECORD;
    }
}
