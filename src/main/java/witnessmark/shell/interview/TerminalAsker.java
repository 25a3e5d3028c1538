package witnessmark.shell.interview;

import java.io.IOError;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.reader.impl.completer.StringsCompleter;
import org.jline.reader.impl.history.DefaultHistory;
import org.jline.terminal.Attributes;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Terminal;

/** Asks at the terminal, with completion by TAB: the words to choose from can be walked through with the keys. */
final class TerminalAsker implements Asker {
    private static final int CTRL_C = 3;
    private static final int CTRL_D = 4;
    /** What is left of the line for a short answer. */
    private static final int ROOM = 8;

    private final org.jline.terminal.Terminal terminal;
    private final PrintWriter out;
    private final Texts wording;

    TerminalAsker(org.jline.terminal.Terminal terminal, PrintWriter out, Texts wording) {
        this.terminal = terminal;
        this.out = out;
        this.wording = wording;
    }

    /** A prompt that leaves no room for the answer is printed before it, wrapped at words. */
    private String fitting(String prompt, int room) {
        Page page = new Page(out);
        if (prompt.length() + room <= page.width()) {
            return prompt;
        }
        page.line(prompt.strip()).flush();
        return "> ";
    }

    @Override
    public Optional<String> ask(String key, String prompt, List<String> words) {
        out.flush();
        LineReader reader = LineReaderBuilder.builder()
                .terminal(terminal)
                .completer(new StringsCompleter(words))
                .history(new DefaultHistory())
                .option(LineReader.Option.AUTO_MENU_LIST, true)
                .option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                .option(LineReader.Option.CASE_INSENSITIVE, true)
                .build();
        try {
            String line = reader.readLine(fitting(prompt, ROOM));
            while (Terminal.lostLetters(line)) {
                refused(wording.text("refused.letters-lost"));
                line = reader.readLine(fitting(prompt, ROOM));
            }
            return Optional.of(line);
        } catch (UserInterruptException | EndOfFileException | IOError e) {
            return Optional.empty(); // an error of reading: the terminal was closed
        }
    }

    @Override
    public Optional<String> askLines(String key, String prompt, List<String> words, Predicate<String> whole) {
        Optional<String> line = ask(key, prompt, words);
        if (line.isEmpty() || line.get().isBlank() || whole.test(line.get().strip())) {
            return line;
        }
        List<String> lines = new ArrayList<>();
        for (; line.isPresent() && !line.get().isBlank(); line = ask(key, prompt, List.of())) {
            lines.add(line.get());
            if (whole.test(line.get().strip())) {
                break;
            }
        }
        return line.map(end -> String.join("\n", lines));
    }

    @Override
    public Optional<String> press(String key, String prompt, List<String> keys) {
        String fits = fitting(prompt, 1);
        out.flush();
        terminal.writer().print(fits);
        terminal.flush();
        Attributes before = terminal.enterRawMode();
        try {
            int typed = terminal.reader().read();
            boolean gone = typed < 0 || typed == CTRL_C || typed == CTRL_D;
            String pressed = typed == '\r' || typed == '\n'
                    ? ""
                    : Character.toString(Math.max(typed, 0)).toLowerCase(Locale.ROOT);
            terminal.writer().println(gone ? "" : pressed);
            terminal.flush();
            return gone ? Optional.empty() : Optional.of(pressed);
        } catch (IOException e) {
            return Optional.empty();
        } finally {
            terminal.setAttributes(before);
        }
    }

    @Override
    public void refused(String why) {
        new Page(out).indented("", "  ", why).flush();
    }

    @Override
    public void close() {
        terminal.flush();
    }
}
