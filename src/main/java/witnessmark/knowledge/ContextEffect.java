package witnessmark.knowledge;

import java.util.Optional;

/** A circumstance that, present, multiplies the prior odds of a class of causes or of one cause. */
public record ContextEffect(
        String finding, Optional<String> classId, Optional<String> cause, double odds, String why) {}
