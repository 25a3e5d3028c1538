package witnessmark.knowledge;

import java.util.List;

/**
 * A caution in both languages.
 *
 * @param ofTruck whether it is about the truck and not said of a gearbox that is out of it
 * @param covers weaker cautions that it says too, left out beside it
 */
public record Caution(String id, String english, String spanish, boolean ofTruck, List<String> covers)
        implements BothLanguages {}
