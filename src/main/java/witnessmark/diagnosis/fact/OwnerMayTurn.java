package witnessmark.diagnosis.fact;

import java.util.List;

/**
 * From the knowledge base: the cause is of a class that somebody answers for, and of another where the finding is present.
 *
 * @param onlyIf findings that the circumstance takes with it, so that it cannot be where one of them is absent
 */
public record OwnerMayTurn(String cause, String finding, String classId, List<String> onlyIf) {}
