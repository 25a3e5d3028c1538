package witnessmark.shell;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.springframework.shell.core.InputReader;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandExecutor;
import org.springframework.shell.core.command.CommandNotFoundException;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.ExitStatus;
import witnessmark.yaml.Nearest;

/** Runs one command, the same way from arguments, a script and a typed line; answers to one side, messages to the other. */
final class RunCommand {
    private final LineParser parser;
    private final CommandRegistry registry;
    private final Refusals refusals;

    RunCommand(LineParser parser, CommandRegistry registry, Refusals refusals) {
        this.parser = parser;
        this.registry = registry;
        this.refusals = refusals;
    }

    /** Runs a typed line; returns the exit code. */
    int run(String line, PrintWriter out, PrintWriter messages) {
        try {
            return run(WordsOnLine.of(line), out, messages);
        } catch (WrongUsage e) {
            return tell(new ExitStatus(ExitCode.WRONG_USAGE.number(), e.getMessage()), messages);
        }
    }

    /** Runs a command given as words; returns the exit code. */
    int run(List<String> words, PrintWriter out, PrintWriter messages) {
        try {
            ExitStatus status = new CommandExecutor(registry)
                    .execute(new CommandContext(parser.parse(words), registry, out, new InputReader() {}));
            out.flush();
            return status.code() == 0 ? 0 : tell(status, messages);
        } catch (CommandNotFoundException e) {
            return tell(new ExitStatus(ExitCode.WRONG_USAGE.number(), unknown(words)), messages);
        } catch (RuntimeException e) {
            out.flush();
            return tell(refusals.apply(e), messages);
        }
    }

    private String unknown(List<String> words) {
        List<String> names =
                registry.getCommands().stream().map(c -> c.getName()).toList();
        List<String> near = new ArrayList<>();
        for (int length = Math.min(2, words.size()); length > 0 && near.isEmpty(); length--) {
            near.addAll(Nearest.some(String.join(" ", words.subList(0, length)), names, 3));
        }
        String typed = String.join(" ", words);
        return "no command '" + Terminal.harmless(typed.length() > 40 ? words.get(0) : typed) + "'; "
                + (near.isEmpty() ? "see: help" : "did you mean: " + String.join(", ", near) + "? See also: help");
    }

    private static int tell(ExitStatus status, PrintWriter messages) {
        messages.println(Terminal.harmless(status.description()));
        messages.flush();
        return status.code();
    }
}
