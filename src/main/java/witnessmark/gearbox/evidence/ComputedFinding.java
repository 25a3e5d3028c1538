package witnessmark.gearbox.evidence;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.gearbox.Figure;

/**
 * A finding that was computed, not seen.
 *
 * @param id finding id, {@code computed-} and what was found
 * @param inputs what it was computed from, by name
 * @param formula how
 * @param result the figure that decides
 * @param limit the bound it is held against; its note says whose bound it is
 * @param summary one sentence for the case
 */
public record ComputedFinding(
        String id,
        State state,
        Map<String, Figure> inputs,
        String formula,
        Figure result,
        Figure limit,
        String summary) {

    public enum State {
        PRESENT,
        ABSENT
    }

    public ComputedFinding {
        if (!id.startsWith("computed-")) {
            throw new IllegalArgumentException(
                    "finding: '" + id + "' is not the id of a computed finding; begin it with computed-");
        }
        inputs = Collections.unmodifiableMap(new LinkedHashMap<>(inputs));
    }

    static State presentIf(boolean condition) {
        return condition ? State.PRESENT : State.ABSENT;
    }
}
