package witnessmark.shell.run;

import java.lang.reflect.InvocationTargetException;
import java.nio.file.InvalidPathException;
import java.util.Optional;
import org.springframework.shell.core.command.ExitStatus;
import org.springframework.shell.core.command.exit.ExitStatusExceptionMapper;
import witnessmark.refusal.Refusal;
import witnessmark.shell.print.WrongUsage;

/** Turns what went wrong in a command into its message and exit code; the stack trace of a fault inside goes to a file. */
public final class Refusals implements ExitStatusExceptionMapper {
    @Override
    public ExitStatus apply(Exception thrown) {
        Optional<Refusal> refusal = refusal(thrown);
        if (refusal.isPresent()) {
            ExitCode code = refusal.get() instanceof WrongUsage ? ExitCode.WRONG_USAGE : ExitCode.REFUSED_INPUT;
            return new ExitStatus(code.number(), String.valueOf(refusal.get().getMessage()));
        }
        Throwable root = root(thrown);
        if (root instanceof InvalidPathException path) {
            return new ExitStatus(
                    ExitCode.REFUSED_INPUT.number(),
                    "'" + path.getInput() + "' cannot be a path here: " + path.getReason()
                            + "; check its letters, and if they are right set LC_ALL=C.UTF-8");
        }
        if (root instanceof IllegalArgumentException && isFromFramework(root)) {
            return new ExitStatus(ExitCode.WRONG_USAGE.number(), String.valueOf(root.getMessage()));
        }
        return new ExitStatus(
                ExitCode.INSIDE_FAULT.number(),
                "fault inside the program: " + root.getClass().getSimpleName() + ": " + root.getMessage()
                        + "; what was stored before is safe. " + FaultLog.write(thrown));
    }

    private static Optional<Refusal> refusal(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof Refusal refusal) {
                return Optional.of(refusal);
            }
        }
        return Optional.empty();
    }

    /** The framework refuses missing and ill-typed options with a plain IllegalArgumentException. */
    private static boolean isFromFramework(Throwable root) {
        StackTraceElement[] trace = root.getStackTrace();
        return trace.length > 0 && trace[0].getClassName().startsWith("org.springframework.");
    }

    private static Throwable root(Throwable thrown) {
        Throwable t = thrown;
        while ((t instanceof InvocationTargetException || t.getCause() != null) && t.getCause() != t) {
            if (t.getCause() == null) {
                return t;
            }
            t = t.getCause();
        }
        return t;
    }
}
