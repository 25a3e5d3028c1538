package witnessmark.triplog.evidence;

import java.util.Optional;
import witnessmark.triplog.event.EventFigure;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;

/** What rows of {@code log-findings.yaml} may ask of an event, beyond its kind. */
enum EventCondition {
    /** The splitter came back by itself, and the gear was above its ceiling. */
    ABOVE_CEILING_BOTH_WAYS,
    /** A stalled truck that rolls out goes metres; one that is towed goes kilometres, and the output shaft shows it. */
    FAR_BY_OUTPUT_SHAFT,
    LEVER_OUT,
    IN_ONE_GEAR,
    AFTER_DOWNSHIFT,
    /** A shift down by the lever alone. */
    AFTER_DOWNSHIFT_IN_RANGE,
    SHORT_AND_UNMATCHED;

    private static final double SHORT_GAP_SECONDS = 0.5;
    private static final double UNMATCHED_RPM = 200;
    private static final double TOWED_KM = 1;

    boolean passes(HabitEvent event, GearTable table) {
        return switch (this) {
            case ABOVE_CEILING_BOTH_WAYS -> event.figures().is(EventFigure.SPLITTER_RETURNS)
                    && event.figures().get(EventFigure.CEILING_MULTIPLE) > 1;
            case FAR_BY_OUTPUT_SHAFT -> event.figures().is(EventFigure.BY_OUTPUT_SHAFT)
                    && event.figures().get(EventFigure.DISTANCE_KM) >= TOWED_KM;
            case LEVER_OUT -> event.figures().is(EventFigure.LEVER_OUT);
            case IN_ONE_GEAR -> event.figures().is(EventFigure.IN_ONE_GEAR);
            case AFTER_DOWNSHIFT -> isAfterDownshift(event, table);
            case AFTER_DOWNSHIFT_IN_RANGE -> isAfterDownshift(event, table) && isSameRange(event, table);
            case SHORT_AND_UNMATCHED -> event.seconds() < SHORT_GAP_SECONDS
                    && event.figures().get(EventFigure.MISMATCH_RPM) > UNMATCHED_RPM;
        };
    }

    private static boolean isAfterDownshift(HabitEvent event, GearTable table) {
        Optional<KnobGear> before = gear(event.gearBefore(), table);
        Optional<KnobGear> after = gear(event.gearAfter(), table);
        return !event.figures().is(EventFigure.IN_ONE_GEAR)
                && before.isPresent()
                && after.isPresent()
                && after.get().ratio() > before.get().ratio() * 1.01;
    }

    private static boolean isSameRange(HabitEvent event, GearTable table) {
        return gear(event.gearBefore(), table)
                .map(KnobGear::range)
                .equals(gear(event.gearAfter(), table).map(KnobGear::range));
    }

    private static Optional<KnobGear> gear(Optional<String> name, GearTable table) {
        return name.flatMap(
                n -> table.gears().stream().filter(g -> g.name().equals(n)).findFirst());
    }
}
