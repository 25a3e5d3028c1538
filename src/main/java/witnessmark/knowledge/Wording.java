package witnessmark.knowledge;

import java.util.List;

/**
 * How people say a finding or a measure on a job card.
 *
 * @param of what it names
 * @param id id of the finding or measure
 * @param said expressions that say that it is there, or name the measure; any language
 * @param part what is looked at for it; with "ok", "good" or the like behind, the finding is absent; empty for a measure
 * @param sound what is said when the finding is not there, such as "oil full"; empty for a measure
 * @param done what is worked on for it; with "replaced", "adjusted", "cleaned" or the like, the finding is present; empty
 *     for all that is not work done
 */
public record Wording(Of of, String id, List<String> said, List<String> part, List<String> sound, List<String> done) {
    public Wording {
        said = List.copyOf(said);
        part = List.copyOf(part);
        sound = List.copyOf(sound);
        done = List.copyOf(done);
    }

    /** What a wording names. */
    public enum Of {
        FINDING,
        MEASURE
    }
}
