package witnessmark.knowledge;

import java.util.List;

/**
 * A caution in both languages.
 *
 * @param briefly the same in a few words, for a screen on which all that applies now must stand
 * @param ofTruck whether it is about the truck and not said of a gearbox that is out of it
 * @param covers weaker cautions that it says too, left out beside it
 */
public record Caution(String id, String english, String spanish, Brief briefly, boolean ofTruck, List<String> covers)
        implements BothLanguages {

    /** The few words of a caution. */
    public record Brief(String english, String spanish) implements BothLanguages {}
}
