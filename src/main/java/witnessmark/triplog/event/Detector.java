package witnessmark.triplog.event;

/** Looks at the rows one after the other for some kinds of events. */
interface Detector {
    void row(Moment moment);

    /** Whether something is begun that further rows may go on with or end. */
    default boolean isOpen() {
        return false;
    }

    /** The record was interrupted: whatever was begun ends here. */
    void interrupted();
}
