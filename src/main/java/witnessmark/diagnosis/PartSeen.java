package witnessmark.diagnosis;

import java.util.List;

/**
 * A part whose state was seen or measured. That it is so is settled; why it is so, and whether it explains what the
 * truck does, are further questions.
 *
 * @param finding id of the finding that says what was seen
 * @param reasons what can have made it so, most probable first
 * @param explains the symptoms on record with the chance that they come from it, most probable first; empty where none
 *     is on record
 */
public record PartSeen(String finding, String title, List<Reason> reasons, List<Explained> explains) {

    /** What can have brought a part to the state it is in. */
    public record Reason(String cause, String title, String classId, double probability) {}

    /** A symptom and the chance that it comes from the part. */
    public record Explained(String symptom, String title, double probability) {}

    /** Whether no symptom is on record, or one of them is explained. */
    public boolean fitsComplaint() {
        return explains.isEmpty() || explains.get(0).probability() >= Thresholds.EXPLAINS;
    }
}
