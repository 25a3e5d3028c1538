package witnessmark.diagnosis.fact;

import java.util.List;
import java.util.Map;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.MadeOf;

/**
 * From the knowledge base: the cause belongs to another class where this finding is present; of several the first in order
 * counts, and only what weighs less, or what it was made of, gives way to it.
 *
 * @param madeOf the findings that were weighed in it; empty for a circumstance of its own
 */
public record ClassTurn(String cause, String finding, String classId, int order, Weight weight, List<String> madeOf) {

    /** How much the circumstance says by itself, least first. */
    public enum Weight {
        /** How old the unit is: it explains what nothing else does. */
        AGE,
        /** What is on record, told, or seen round the gearbox. */
        RECORD,
        /** What the parts themselves show. */
        SEEN
    }

    /** @param findings every finding by its id, those it may be made of among them */
    public ClassTurn(String cause, Finding finding, String classId, int order, Map<String, Finding> findings) {
        this(
                cause,
                finding.id(),
                classId,
                order,
                weight(finding, findings),
                finding.madeOf().map(MadeOf::members).orElse(List.of()));
    }

    /** A circumstance of its own. */
    public ClassTurn(String cause, String finding, String classId, int order, Weight weight) {
        this(cause, finding, classId, order, weight, List.of());
    }

    /** Whether both can be known, neither giving way to the other. */
    public boolean standsBeside(ClassTurn first) {
        return weight.compareTo(first.weight) >= 0 && !first.madeOf.contains(finding);
    }

    private static Weight weight(Finding finding, Map<String, Finding> findings) {
        if (finding.age()) {
            return Weight.AGE;
        }
        boolean seen = finding.kind() == Finding.Kind.LOOK
                || finding.kind() == Finding.Kind.MARK
                || finding.madeOf().stream()
                        .flatMap(made -> made.present().stream())
                        .anyMatch(part -> weight(findings.get(part), findings) == Weight.SEEN);
        return seen ? Weight.SEEN : Weight.RECORD;
    }
}
