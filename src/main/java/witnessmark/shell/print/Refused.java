package witnessmark.shell.print;

/** An input was refused; the message says what, where and the mend. */
public final class Refused extends RuntimeException {
    public Refused(String message) {
        super(message);
    }
}
