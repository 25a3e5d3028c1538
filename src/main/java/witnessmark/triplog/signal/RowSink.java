package witnessmark.triplog.signal;

/** Takes the rows of a log one after the other; the row is refilled after the call returns. */
@FunctionalInterface
public interface RowSink {
    void row(SignalRow row);
}
