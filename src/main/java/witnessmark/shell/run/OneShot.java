package witnessmark.shell.run;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.springframework.shell.core.ShellRunner;
import witnessmark.shell.print.Terminal;

/**
 * Runs one command from the program's arguments, or the lines of {@code @file} or {@code @-}, and keeps the exit code.
 */
public final class OneShot implements ShellRunner {
    private final RunCommand command;
    private final PrintWriter out;
    private final PrintWriter messages;
    private int exitCode;

    public OneShot(RunCommand command, PrintWriter out, PrintWriter messages) {
        this.command = command;
        this.out = out;
        this.messages = messages;
    }

    @Override
    public void run(String[] args) {
        List<String> words = StartOptions.of(args).words();
        exitCode = words.size() == 1 && words.get(0).startsWith("@")
                ? script(words.get(0).substring(1))
                : command.run(words, out, messages);
        out.flush();
        messages.flush();
    }

    /** The exit code of what was run. */
    public int getExitCode() {
        return exitCode;
    }

    private int script(String name) {
        List<String> lines;
        try {
            lines = name.equals("-") ? lines(System.in.readAllBytes()) : lines(Files.readAllBytes(Path.of(name)));
        } catch (CharacterCodingException e) {
            return refuse((name.equals("-") ? "standard input" : "script '" + name + "'")
                    + " is not UTF-8; write it anew as UTF-8 text");
        } catch (InvalidPathException | NoSuchFileException e) {
            return refuse("no script '" + name + "'; give the path of a file with one command a line");
        } catch (IOException e) {
            return refuse("script '" + name + "' cannot be read; give the path of a file that you may read");
        }
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            int code = command.run(line, out, messages);
            if (code != 0) {
                messages.println("stopped at line " + (i + 1) + ": " + Terminal.harmless(Terminal.shortened(line)));
                return code;
            }
        }
        return ExitCode.DONE.number();
    }

    /** Throws CharacterCodingException where the bytes are no UTF-8. */
    private static List<String> lines(byte[] bytes) throws IOException {
        return StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(bytes))
                .toString()
                .lines()
                .toList();
    }

    private int refuse(String message) {
        messages.println(Terminal.harmless(message));
        return ExitCode.REFUSED_INPUT.number();
    }
}
