package witnessmark.diagnosis;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.EnumWord;

/**
 * What may be said of the class: concluded, pointed to, or that it cannot be told yet.
 *
 * @param classId id of the class where it is concluded, else {@link #UNDETERMINED}
 * @param standing how far the evidence carries
 * @param pointsTo id of the class where the evidence points to one without carrying it
 * @param carriedBy ids of the causes that carry it, or that it points to; empty if undetermined
 * @param sentence the verdict in plain words, no more certain than the evidence
 * @param open why no more can be said; for a determined verdict what else stays open
 */
public record Verdict(
        String classId,
        Standing standing,
        Optional<String> pointsTo,
        List<String> carriedBy,
        String sentence,
        List<String> open) {
    public static final String UNDETERMINED = "undetermined";

    /** How far the evidence carries. */
    public enum Standing {
        /** The cause or its own mark was looked at, and what looks like it was. */
        CONCLUDED,
        /** It is the likeliest by far, but looks are missing that would settle it. */
        POINTS_TO,
        /** It cannot be told. */
        UNDETERMINED;

        /** The word as it is written. */
        public String word() {
            return EnumWord.of(this);
        }
    }

    public boolean isDetermined() {
        return standing == Standing.CONCLUDED;
    }
}
