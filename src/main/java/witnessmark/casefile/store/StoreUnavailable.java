package witnessmark.casefile.store;

import org.jspecify.annotations.Nullable;

/** The store, or something kept in it, cannot be used; the message is one line: where, what, the mend. */
public final class StoreUnavailable extends RuntimeException {
    private final String where;
    private final String what;
    private final String mend;

    public StoreUnavailable(String where, String what, String mend) {
        this(where, what, mend, null);
    }

    StoreUnavailable(String where, String what, String mend, @Nullable Throwable cause) {
        super("case store " + where + ": " + what + "; " + mend, cause);
        this.where = where;
        this.what = what;
        this.mend = mend;
    }

    public String where() {
        return where;
    }

    public String what() {
        return what;
    }

    public String mend() {
        return mend;
    }
}
