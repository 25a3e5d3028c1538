package witnessmark.refusal;

import org.jspecify.annotations.Nullable;

/**
 * What was given or asked for is not done, and nothing was changed by it. People read the message: what was given, where
 * it stands, and what would mend it. Whatever is thrown and is no Refusal is a fault inside the program.
 */
public abstract class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String where;
    private final String what;
    private final String mend;

    /** @param sentence a sentence that holds its own mend, or one such line for each of several faults */
    protected Refusal(String sentence) {
        super(sentence);
        this.where = "";
        this.what = sentence;
        this.mend = "";
    }

    /** @param what what was given and why it is not taken, its place in it */
    protected Refusal(String what, String mend) {
        this("", what, mend, null);
    }

    /** @param where what stands before the rest of the message, or nothing where {@code what} names the place */
    protected Refusal(String where, String what, String mend, @Nullable Throwable cause) {
        super((where.isEmpty() ? "" : where + ": ") + what + "; " + mend, cause);
        this.where = where;
        this.what = what;
        this.mend = mend;
    }

    /** The place of the fault; empty where {@link #what()} names it. */
    public final String where() {
        return where;
    }

    /** What is not taken, and why. */
    public final String what() {
        return what;
    }

    /** What would mend it; empty where {@link #what()} says it. */
    public final String mend() {
        return mend;
    }
}
