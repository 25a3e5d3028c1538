package witnessmark.truck;

/** A truck profile that cannot be found, read or kept; the message says which, where and the mend. */
public final class TruckRefused extends RuntimeException {

    public TruckRefused(String message) {
        super(message);
    }
}
