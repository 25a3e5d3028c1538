package witnessmark.shell.interview;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.reader.impl.completer.StringsCompleter;
import org.jline.reader.impl.history.DefaultHistory;
import witnessmark.shell.print.Page;

/** Asks at the terminal, with completion by TAB: the words to choose from can be walked through with the keys. */
final class TerminalAsker implements Asker {
    private final org.jline.terminal.Terminal terminal;
    private final PrintWriter out;

    TerminalAsker(org.jline.terminal.Terminal terminal, PrintWriter out) {
        this.terminal = terminal;
        this.out = out;
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
            return Optional.of(reader.readLine(prompt));
        } catch (UserInterruptException | EndOfFileException e) {
            return Optional.empty();
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
