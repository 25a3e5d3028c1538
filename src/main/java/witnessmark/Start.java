package witnessmark;

import witnessmark.shell.run.ExitCode;
import witnessmark.shell.run.FaultLog;

/**
 * Where the packaged program begins. It needs nothing but the JDK, so that a library without which the program cannot even
 * be loaded is told of like any other fault.
 */
public final class Start {
    private Start() {}

    public static void main(String[] args) {
        try {
            Witnessmark.main(args);
        } catch (LinkageError e) {
            System.err.println("the program cannot start: " + e + "; install it anew, files of it are missing. "
                    + FaultLog.write(e));
            System.exit(ExitCode.INSIDE_FAULT.number());
        }
    }
}
