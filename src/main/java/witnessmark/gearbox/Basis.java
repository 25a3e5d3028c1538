package witnessmark.gearbox;

/** Where a figure comes from, and so how far to trust it. */
public enum Basis {
    /** Stated by the user, from a plate, a manual or a measurement. */
    GIVEN,
    /** Not stated: a declared default, whose note says how sure it is. */
    ASSUMED,
    /** Worked out from other figures; its note is the formula. */
    COMPUTED
}
