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
        PRESELECT_RANGE(Way.TO_DO),
        LET_LEVER_PAUSE_IN_NEUTRAL(Way.TO_DO),
        SELECT_SPLIT_THEN_BREAK_TORQUE(Way.TO_DO),
        SPLITTER_DIRECT_BEFORE_LOW_RANGE(Way.TO_DO),
        LOW_RANGE_ONLY_UNDER_CEILING(Way.TO_DO),
        START_IN_LOW_RANGE(Way.TO_DO),
        DOUBLE_CLUTCH(Way.TO_DO),
        SHIFT_PROGRESSIVELY(Way.TO_DO),
        CRUISE_BELOW_GOVERNED(Way.TO_DO),
        WARM_OIL_FIRST(Way.TO_DO),
        MOVE_SPLITTER_IN_NEUTRAL(Way.NOT_TO_DO),
        MOVE_RANGE_ROLLING_BACK(Way.NOT_TO_DO),
        CLUTCH_BRAKE_WHILE_ROLLING(Way.NOT_TO_DO),
        COAST_IN_NEUTRAL(Way.NOT_TO_DO),
        ROLL_FAST_IN_LOW_GEAR_PEDAL_DOWN(Way.NOT_TO_DO);

        private enum Way {
            TO_DO,
            NOT_TO_DO
        }

        private final Way way;

        Topic(Way way) {
            this.way = way;
        }

        /** Whether to do it, or not to. */
        public boolean toDo() {
            return way == Way.TO_DO;
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
