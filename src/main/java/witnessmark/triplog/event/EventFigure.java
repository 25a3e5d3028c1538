package witnessmark.triplog.event;

import java.util.Locale;

/** What is measured of an event besides its speeds; the unit stands in the name. */
public enum EventFigure {
    CEILING_KMH("ceiling-km-h"),
    CEILING_MULTIPLE("ceiling-multiple"),
    RANGE_MOVED_KMH("range-moved-km-h"),
    ENERGY_MULTIPLE,
    SLIP_MULTIPLE,
    /** 1 if the splitter went back to direct on the way. */
    SPLITTER_RETURNS,
    MISMATCH_RPM,
    SLIP_SECONDS,
    GROSS_MASS_KG,
    DISTANCE_KM,
    SLIDING_TURNS,
    SLIDING_M("sliding-m-at-40-mm"),
    MAINSHAFT_TURNS,
    /** 1 if an output shaft speed shows it, and not only that of the wheels. */
    BY_OUTPUT_SHAFT,
    GOVERNED_MULTIPLE,
    /** 1 if it came in one unchanged ratio. */
    IN_ONE_GEAR,
    LOWEST_RPM,
    HIGHEST_SLIP_PERCENT,
    HIGHEST_CELSIUS,
    /** 1 if the knob went to high. */
    KNOB_TO_HIGH,
    /** 1 if the lever was out, the truck still rolling, so that the range could follow its knob. */
    LEVER_OUT,
    INTO_REVERSE,
    FALL_RPM,
    FALL_RPM_PER_SECOND,
    INERTIA_TORQUE_NM("inertia-torque-nm-at-3.5-kg-m2"),
    DISC_RPM,
    DOG_SPEED_DIFFERENCE_RPM,
    MEAN_RPM,
    FROM_KMH("from-km-h"),
    TO_KMH("to-km-h");

    private final String id;

    EventFigure() {
        this.id = name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    EventFigure(String id) {
        this.id = id;
    }

    public String id() {
        return id;
    }
}
