package witnessmark.knowledge;

import java.util.List;

/**
 * A caution in both languages.
 *
 * @param covers weaker cautions that it says too, left out beside it
 */
public record Caution(String id, String english, String spanish, List<String> covers) implements BothLanguages {}
