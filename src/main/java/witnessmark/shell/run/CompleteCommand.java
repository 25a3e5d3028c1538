package witnessmark.shell.run;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jline.reader.Candidate;
import org.jline.reader.Completer;
import org.jline.reader.LineReader;
import org.jline.reader.ParsedLine;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.completion.CompletionContext;

/** Completes the words of a command's name, then what the command's own completion offers. */
public final class CompleteCommand implements Completer {
    private static final int OPTIONS_LAST = 1;

    private final CommandRegistry registry;
    private final CommandNames names;

    public CompleteCommand(CommandRegistry registry) {
        this.registry = registry;
        this.names = new CommandNames(registry);
    }

    @Override
    public void complete(LineReader reader, ParsedLine line, List<Candidate> candidates) {
        List<String> before = line.words().subList(0, line.wordIndex());
        nextWords(before).forEach(word -> candidates.add(candidate(word)));
        Command command = names.longest(before).orElse(null);
        if (command != null && command.getCompletionProvider() != null) {
            CompletionContext context =
                    new CompletionContext(line.words(), line.wordIndex(), line.wordCursor(), command, null);
            command.getCompletionProvider().apply(context).forEach(p -> candidates.add(candidate(p.value())));
        }
    }

    /** What is named comes before the options. A finding that still wants its state is not followed by a blank. */
    private static Candidate candidate(String word) {
        int turn = word.startsWith("--") ? OPTIONS_LAST : 0;
        return new Candidate(word, word, null, null, null, null, !word.endsWith("="), turn);
    }

    private Set<String> nextWords(List<String> before) {
        List<String> start =
                !before.isEmpty() && before.get(0).equals("help") ? before.subList(1, before.size()) : before;
        String prefix = start.isEmpty() ? "" : String.join(" ", start) + " ";
        Set<String> words = new LinkedHashSet<>();
        registry.getCommands().stream()
                .map(Command::getName)
                .filter(name -> name.startsWith(prefix))
                .sorted()
                .forEach(name -> words.add(name.substring(prefix.length()).split(" ")[0]));
        if (before.isEmpty()) {
            words.add("quit");
        }
        return words;
    }
}
