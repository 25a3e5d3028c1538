package witnessmark.triplog.read;

/** The forms of log files that can be read. */
public enum LogFormat {
    CSV,
    CANDUMP
}
