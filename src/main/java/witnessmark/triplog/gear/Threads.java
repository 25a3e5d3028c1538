package witnessmark.triplog.gear;

/** Who works on the rows while a log is read. */
public enum Threads {
    /** Whoever reads, within his calls. */
    THE_READERS,
    /** The reader with further threads that track gears and find events while he goes on. */
    THEIR_OWN
}
