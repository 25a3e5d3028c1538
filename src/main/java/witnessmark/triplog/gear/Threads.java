package witnessmark.triplog.gear;

/** Who works on the rows while a log is read. */
public enum Threads {
    /** Whoever reads, within his calls. */
    THE_READERS,
    /** Threads of their own for tracking gears and for finding events, while the reader goes on. */
    THEIR_OWN
}
