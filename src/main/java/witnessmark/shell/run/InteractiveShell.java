package witnessmark.shell.run;

import java.io.IOError;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;
import org.springframework.shell.core.ShellRunner;

/**
 * Reads commands at the prompt until quit. A refused command says why and the prompt comes back; Ctrl-C drops the line,
 * Ctrl-D leaves.
 */
public final class InteractiveShell implements ShellRunner {
    private static final String PROMPT = "witnessmark> ";

    private final RunCommand command;
    private final CompleteCommand completion;
    private final Terminal terminal;
    private final Path history;

    public InteractiveShell(RunCommand command, CompleteCommand completion, Terminal terminal, Path history) {
        this.command = command;
        this.completion = completion;
        this.terminal = terminal;
        this.history = history;
    }

    @Override
    public void run(String[] args) {
        LineReader reader = reader();
        PrintWriter out = terminal.writer();
        out.println("Witnessmark. A truck is in? Type interview.");
        out.println("Type help for the commands, TAB to complete, quit to leave.");
        while (true) {
            try {
                String line = reader.readLine(PROMPT).strip();
                if (line.equals("quit") || line.equals("exit")) {
                    return;
                }
                if (!line.isEmpty() && !line.startsWith("#")) {
                    command.run(line, out, out);
                }
            } catch (UserInterruptException e) {
                out.println("Line dropped; what was stored is stored. Type quit to leave.");
            } catch (EndOfFileException | IOError e) {
                return; // an error of reading: the terminal was closed
            }
        }
    }

    private LineReader reader() {
        LineReaderBuilder builder = LineReaderBuilder.builder()
                .appName("witnessmark")
                .terminal(terminal)
                .completer(completion)
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true);
        try {
            Files.createDirectories(history.getParent());
            builder.variable(LineReader.HISTORY_FILE, history);
        } catch (IOException e) {
            // A shell without a lasting history still works.
        }
        return builder.build();
    }
}
