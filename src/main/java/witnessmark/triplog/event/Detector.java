package witnessmark.triplog.event;

/** Looks at the rows one after the other for some kinds of events. */
interface Detector {
    void row(Moment moment);

    /** The record was interrupted: whatever was begun ends here. */
    void interrupted();
}
