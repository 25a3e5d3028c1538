package witnessmark.shell.run;

/** The exit codes of the program. */
public enum ExitCode {
    DONE(0),
    REFUSED_INPUT(1),
    WRONG_USAGE(2),
    INSIDE_FAULT(3);

    private final int number;

    ExitCode(int number) {
        this.number = number;
    }

    public int number() {
        return number;
    }
}
