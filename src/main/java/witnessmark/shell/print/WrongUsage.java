package witnessmark.shell.print;

/** A command was typed wrongly; the message says what and what is allowed. */
public final class WrongUsage extends RuntimeException {
    public WrongUsage(String message) {
        super(message);
    }
}
