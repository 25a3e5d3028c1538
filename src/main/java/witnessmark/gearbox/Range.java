package witnessmark.gearbox;

/** The range a gear lies in; a gearbox without a range has all its gears in {@link #HIGH}. */
public enum Range {
    LOW,
    HIGH
}
