package witnessmark.gearbox.plan;

import java.util.Map;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Figure;

/**
 * One thing to do or not to do in this truck; the words come from elsewhere, by key.
 *
 * @param figures this truck's numbers for the words and the reason, by name
 */
public record CoachingPoint(Topic topic, Map<String, Figure> figures) {

    /** All of them are common practice. */
    public enum Topic {
        PRESELECT_RANGE(true),
        LET_LEVER_PAUSE_IN_NEUTRAL(true),
        SELECT_SPLIT_THEN_BREAK_TORQUE(true),
        SPLITTER_DIRECT_BEFORE_LOW_RANGE(true),
        LOW_RANGE_ONLY_UNDER_CEILING(true),
        START_IN_LOW_RANGE(true),
        DOUBLE_CLUTCH(true),
        SHIFT_PROGRESSIVELY(true),
        CRUISE_BELOW_GOVERNED(true),
        WARM_OIL_FIRST(true),
        MOVE_SPLITTER_IN_NEUTRAL(false),
        MOVE_RANGE_ROLLING_BACK(false),
        CLUTCH_BRAKE_WHILE_ROLLING(false),
        COAST_IN_NEUTRAL(false),
        ROLL_FAST_IN_LOW_GEAR_PEDAL_DOWN(false);

        private final boolean toDo;

        Topic(boolean toDo) {
            this.toDo = toDo;
        }

        /** Whether to do it, or not to. */
        public boolean toDo() {
            return toDo;
        }

        /** Key of its words. */
        public String key() {
            return EnumWord.of(this);
        }

        /** Key of its reason's words. */
        public String reasonKey() {
            return key() + "-why";
        }
    }

    public CoachingPoint {
        figures = Map.copyOf(figures);
    }
}
