package witnessmark.casefile.history;

/** Whether a history is as it was written. */
public sealed interface ChainCheck {

    /** Every entry follows from the one before it. */
    record Intact(long entries) implements ChainCheck {}

    /** The first entry at which it does not, and how it shows. */
    record Broken(long number, String why) implements ChainCheck {}
}
