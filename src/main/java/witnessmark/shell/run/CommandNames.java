package witnessmark.shell.run;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandRegistry;

/** Which of the words on a line are the name of a command: as many as make one, since some names begin others. */
final class CommandNames {
    private static final int MOST_WORDS = 3;

    private final CommandRegistry registry;

    CommandNames(CommandRegistry registry) {
        this.registry = registry;
    }

    /** The command of the longest name that the words begin with; empty where they begin with none. */
    Optional<Command> longest(List<String> words) {
        for (int length = Math.min(MOST_WORDS, words.size()); length > 0; length--) {
            Command command = registry.getCommandByName(String.join(" ", words.subList(0, length)));
            if (command != null) {
                return Optional.of(command);
            }
        }
        return Optional.empty();
    }

    /** How many words a command's name has. */
    static int length(Command command) {
        return command.getName().split(" ").length;
    }

    /** Whether the words are the beginning of names and begin with none. */
    boolean group(List<String> words) {
        String start = String.join(" ", words);
        return longest(words).isEmpty()
                && registry.getCommands().stream().anyMatch(c -> c.getName().startsWith(start + " "));
    }

    /** The names that begin with this word and do not end with it; none where it groups no commands. */
    List<String> in(String word) {
        return registry.getCommands().stream()
                .map(Command::getName)
                .filter(name -> name.startsWith(word + " "))
                .sorted()
                .toList();
    }

    /** The names and their first words, which is what people mistype. */
    List<String> all() {
        Set<String> names = new TreeSet<>();
        registry.getCommands().forEach(c -> {
            names.add(c.getName());
            names.add(c.getName().split(" ")[0]);
        });
        return List.copyOf(names);
    }
}
