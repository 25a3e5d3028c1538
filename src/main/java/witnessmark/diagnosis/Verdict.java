package witnessmark.diagnosis;

import java.util.List;

/**
 * The class the evidence points to, or that it cannot be told yet.
 *
 * @param classId id of the class, or {@link #UNDETERMINED}
 * @param carriedBy ids of the causes that carry it; empty if undetermined
 * @param sentence the verdict in plain words, no more certain than the evidence
 * @param open why no more can be said; for a determined verdict what else stays open
 */
public record Verdict(String classId, List<String> carriedBy, String sentence, List<String> open) {
    public static final String UNDETERMINED = "undetermined";

    public boolean isDetermined() {
        return !classId.equals(UNDETERMINED);
    }
}
