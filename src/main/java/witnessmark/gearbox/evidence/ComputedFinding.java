package witnessmark.gearbox.evidence;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import witnessmark.gearbox.Figure;

/**
 * A finding that was computed, not seen.
 *
 * @param inputs what it was computed from, by name
 * @param formula how
 * @param result the figure that decides
 * @param limit the bound it is held against; its note says whose bound it is
 * @param summary one sentence for the case
 */
public record ComputedFinding(
        Kind kind,
        State state,
        Map<String, Figure> inputs,
        String formula,
        Figure result,
        Figure limit,
        String summary) {

    /** All that can be found by computing; the knowledge base says what each of them speaks for. */
    public enum Kind {
        LOW_RANGE_ABOVE_CEILING,
        CONE_ENERGY_HIGH,
        ENGINE_OVERSPEED_IN_LOW,
        DISC_OVERSPEED,
        START_GEAR_TOO_HIGH,
        MAINSHAFT_TORQUE_OVER_YIELD,
        GRADEABILITY_SHORT,
        COAST_RUB_LONG,
        TOW_RUB_LONG,
        DRIVELINE_ANGLE_RIPPLE_HIGH;

        /** Finding id of the knowledge base. */
        public String id() {
            return "computed-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public enum State {
        PRESENT,
        ABSENT,
        /** Told and kept, but weighs nothing: it settles nothing, or repeats what another finding already says. */
        NOT_COUNTED
    }

    public ComputedFinding {
        inputs = Collections.unmodifiableMap(new LinkedHashMap<>(inputs));
    }

    public String id() {
        return kind.id();
    }

    static State presentIf(boolean condition) {
        return condition ? State.PRESENT : State.ABSENT;
    }
}
