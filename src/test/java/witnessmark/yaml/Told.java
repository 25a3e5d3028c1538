package witnessmark.yaml;

import java.util.List;

/** What a reader is told of the faults of an input. */
final class Told {
    private Told() {}

    static List<String> by(Faults faults) {
        try {
            faults.throwIfAny();
            return List.of();
        } catch (FaultyInput e) {
            return e.getMessage().lines().toList();
        }
    }
}
