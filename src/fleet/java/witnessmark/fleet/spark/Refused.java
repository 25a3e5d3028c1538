package witnessmark.fleet.spark;

/** A job that cannot be begun; the message says what, where and the mend. */
public final class Refused extends RuntimeException {
    public Refused(String message) {
        super(message);
    }
}
