package witnessmark.knowledge;

import java.util.List;
import java.util.stream.Stream;

/**
 * How people say a finding or a measure on a job card, or what else a card may be about.
 *
 * @param of what it names
 * @param id id of the finding or measure; empty for another thing
 * @param said expressions that say that it is there, or name the measure; any language
 * @param part what is looked at for it; with "ok", "good" or the like behind, the finding is absent; empty for a measure;
 *     of another thing its names
 * @param sound what is said when the finding is not there, such as "oil full"; empty for a measure
 * @param done what is worked on for it; with "replaced", "adjusted", "cleaned" or the like, the finding is present; empty
 *     for all that is not work done
 * @param needs without one of these beside it, it is only one of several things that may be meant; empty where it needs none
 * @param notWith beside one of these something else may be meant
 */
public record Wording(
        Of of,
        String id,
        List<String> said,
        List<String> part,
        List<String> sound,
        List<String> done,
        List<String> needs,
        List<String> notWith) {
    public Wording {
        said = List.copyOf(said);
        part = List.copyOf(part);
        sound = List.copyOf(sound);
        done = List.copyOf(done);
        needs = List.copyOf(needs);
        notWith = List.copyOf(notWith);
    }

    /** Things of which nothing is to be learned about the gearbox. */
    static Wording ofOther(List<String> names) {
        return new Wording(Of.OTHER, "", List.of(), names, List.of(), List.of(), List.of(), List.of());
    }

    boolean isEmpty() {
        return Stream.of(said, part, sound, done, needs, notWith).allMatch(List::isEmpty);
    }

    /** What a wording names. */
    public enum Of {
        FINDING,
        MEASURE,
        /** Another thing of the truck, of which nothing is said about the gearbox. */
        OTHER
    }
}
