package witnessmark.shell;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.springframework.boot.ExitCodeGenerator;
import org.springframework.shell.core.InputReader;
import org.springframework.shell.core.ShellRunner;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandExecutor;
import org.springframework.shell.core.command.CommandNotFoundException;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.ExitStatus;
import witnessmark.yaml.Nearest;

/**
 * Runs one command from the program's arguments, or the lines of {@code @file} or {@code @-}, and keeps the exit code.
 */
final class OneShot implements ShellRunner, ExitCodeGenerator {
    private final LineParser parser;
    private final CommandRegistry registry;
    private final Refusals refusals;
    private final PrintWriter out;
    private final PrintWriter messages;
    private int exitCode;

    OneShot(LineParser parser, CommandRegistry registry, Refusals refusals, PrintWriter out, PrintWriter messages) {
        this.parser = parser;
        this.registry = registry;
        this.refusals = refusals;
        this.out = out;
        this.messages = messages;
    }

    @Override
    public void run(String[] args) {
        List<String> words = StartOptions.of(args).words();
        exitCode = words.size() == 1 && words.get(0).startsWith("@")
                ? script(words.get(0).substring(1))
                : one(words);
        out.flush();
        messages.flush();
    }

    @Override
    public int getExitCode() {
        return exitCode;
    }

    private int script(String name) {
        List<String> lines;
        try {
            lines = name.equals("-")
                    ? new String(System.in.readAllBytes(), StandardCharsets.UTF_8)
                            .lines()
                            .toList()
                    : Files.readAllLines(Path.of(name));
        } catch (NoSuchFileException e) {
            return tell(
                    "no script '" + name + "'; give the path of a file with one command a line",
                    ExitCode.REFUSED_INPUT);
        } catch (IOException e) {
            return tell("script '" + name + "' cannot be read: " + e.getMessage(), ExitCode.REFUSED_INPUT);
        }
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            int code = one(line);
            if (code != 0) {
                messages.println("stopped at line " + (i + 1) + ": " + Terminal.harmless(line));
                return code;
            }
        }
        return ExitCode.DONE.number();
    }

    private int one(String line) {
        try {
            return one(WordsOnLine.of(line));
        } catch (WrongUsage e) {
            return tell(e.getMessage(), ExitCode.WRONG_USAGE);
        }
    }

    private int one(List<String> words) {
        try {
            ExitStatus status = new CommandExecutor(registry)
                    .execute(new CommandContext(parser.parse(words), registry, out, new InputReader() {}));
            return status.code() == 0 ? 0 : tell(status);
        } catch (CommandNotFoundException e) {
            return tell(unknown(words), ExitCode.WRONG_USAGE);
        } catch (RuntimeException e) {
            return tell(refusals.apply(e));
        }
    }

    private String unknown(List<String> words) {
        String typed = String.join(" ", words);
        List<String> names =
                registry.getCommands().stream().map(c -> c.getName()).toList();
        List<String> near = new ArrayList<>();
        for (int length = Math.min(2, words.size()); length > 0 && near.isEmpty(); length--) {
            near.addAll(Nearest.some(String.join(" ", words.subList(0, length)), names, 3));
        }
        return "no command '" + Terminal.harmless(typed.length() > 40 ? words.get(0) : typed) + "'; "
                + (near.isEmpty() ? "see: help" : "did you mean: " + String.join(", ", near) + "? See also: help");
    }

    private int tell(ExitStatus status) {
        messages.println(Terminal.harmless(status.description()));
        messages.flush();
        return status.code();
    }

    private int tell(String message, ExitCode code) {
        return tell(new ExitStatus(code.number(), message));
    }
}
