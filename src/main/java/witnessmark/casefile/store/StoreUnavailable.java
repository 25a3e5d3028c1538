package witnessmark.casefile.store;

import org.jspecify.annotations.Nullable;
import witnessmark.refusal.Refusal;

/** The store, or something kept in it, cannot be used. */
public final class StoreUnavailable extends Refusal {
    private static final long serialVersionUID = 1L;

    public StoreUnavailable(String where, String what, String mend) {
        this(where, what, mend, null);
    }

    StoreUnavailable(String where, String what, String mend, @Nullable Throwable cause) {
        super("case store " + where, what, mend, cause);
    }
}
