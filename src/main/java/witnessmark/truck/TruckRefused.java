package witnessmark.truck;

import witnessmark.refusal.Refusal;

/** A truck profile that cannot be found, read or kept. */
public final class TruckRefused extends Refusal {
    private static final long serialVersionUID = 1L;

    public TruckRefused(String what, String mend) {
        super(what, mend);
    }
}
