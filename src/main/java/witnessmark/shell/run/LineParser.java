package witnessmark.shell.run;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandArgument;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.CommandParser;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.ParsedInput;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.Nearest;

/**
 * Turns words into a command with its options and arguments, the same way for a typed line and for program arguments.
 * Unlike the framework's own parser it refuses unknown options and words too many, knows flags of two-word commands, takes values that
 * start with a minus, and keeps the quoting of the user's shell.
 */
public final class LineParser implements CommandParser {
    private final CommandNames names;
    private final ToIntFunction<Command> mostWords;

    /** {@code mostWords} says how many words beside its options a command takes at most. */
    public LineParser(CommandRegistry registry, ToIntFunction<Command> mostWords) {
        this.names = new CommandNames(registry);
        this.mostWords = mostWords;
    }

    @Override
    public ParsedInput parse(String line) {
        return parse(SplitLine.of(line));
    }

    /** The command the words name; throws {@link WrongUsage} where they do not fit it. */
    ParsedInput parse(List<String> words) {
        Optional<Command> named = names.longest(words);
        int nameLength = named.map(CommandNames::length).orElse(Math.min(1, words.size()));
        ParsedInput.Builder input = ParsedInput.builder().commandName(words.isEmpty() ? "" : words.get(0));
        words.subList(Math.min(1, nameLength), nameLength).forEach(input::addSubCommand);
        if (named.isEmpty()) {
            words.stream().skip(nameLength).forEach(input::addSubCommand);
            return input.build();
        }
        Command command = named.get();
        Set<String> given = readRest(command, words.subList(nameLength, words.size()), input);
        addLeftOut(command, given, input);
        return input.build();
    }

    /** An option left out counts as given with its default: the framework would hand over null for an empty one. */
    private static void addLeftOut(Command command, Set<String> given, ParsedInput.Builder input) {
        command.getOptions().stream()
                .filter(o -> !isFlag(o) && o.type() != ValueList.class && !given.contains(o.longName()))
                .filter(o -> !Boolean.TRUE.equals(o.required()))
                .forEach(o -> input.addOption(CommandOption.with()
                        .longName(o.longName())
                        .value(o.defaultValue() == null ? "" : o.defaultValue())
                        .type(o.type())
                        .build()));
    }

    /** Reads options and arguments; returns the long names of the options given. */
    private Set<String> readRest(Command command, List<String> words, ParsedInput.Builder input) {
        Set<String> given = new HashSet<>();
        int argument = 0;
        boolean onlyArguments = false;
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i);
            if (word.equals("--") && !onlyArguments) {
                onlyArguments = true;
            } else if (onlyArguments || !word.startsWith("--") || word.length() == 2) {
                if (argument == mostWords.applyAsInt(command)) {
                    throw new WrongUsage(
                            "'" + command.getName() + "' does not take the word '"
                                    + Terminal.harmless(Terminal.shortened(word)) + "'",
                            "see: help " + command.getName());
                }
                input.addArgument(new CommandArgument(argument++, word));
            } else if (word.equals("--help")) {
                input.addOption(CommandOption.with()
                        .longName("help")
                        .value("true")
                        .type(boolean.class)
                        .build());
            } else {
                given.add(nameOf(word));
                i += readOption(command, words, i, input);
            }
        }
        return given;
    }

    private static String nameOf(String word) {
        int equals = word.indexOf('=');
        return word.substring(2, equals < 0 ? word.length() : equals);
    }

    /** Reads the option at {@code i}; returns how many words beyond it were used. */
    private static int readOption(Command command, List<String> words, int i, ParsedInput.Builder input) {
        String word = words.get(i);
        int equals = word.indexOf('=');
        String name = nameOf(word);
        CommandOption known = option(command, name);
        int used = 0;
        String value;
        if (equals >= 0) {
            value = word.substring(equals + 1);
        } else if (isFlag(known)) {
            value = "true";
        } else if (known.type() == ValueList.class) {
            List<String> list = upToNextOption(words, i + 1);
            value = ValueList.joined(list);
            used = list.size();
        } else if (i + 1 < words.size()) {
            value = words.get(i + 1);
            used = 1;
        } else {
            throw new WrongUsage("--" + name + " needs a value", "see: help " + command.getName());
        }
        if (known.type() == Integer.class && !value.matches("-?\\d{1,9}")) {
            throw new WrongUsage(
                    "--" + name + " '" + Terminal.harmless(Terminal.shortened(value)) + "' is no whole number",
                    "give digits, as in --" + name + " 10");
        }
        if (known.type() == double.class) {
            TypedFigure.number("--" + name, value);
        }
        if (known.type() == OptionalDouble.class) {
            // Said here with the option's name, which what makes the value is not told.
            TypedFigure.maybe("--" + name, value);
        }
        input.addOption(CommandOption.with()
                .longName(name)
                .value(value)
                .type(known.type())
                .build());
        return used;
    }

    private static boolean isFlag(CommandOption option) {
        return option.type() == boolean.class || option.type() == Boolean.class;
    }

    private static List<String> upToNextOption(List<String> words, int from) {
        int end = from;
        while (end < words.size() && !words.get(end).startsWith("--")) {
            end++;
        }
        return words.subList(from, end);
    }

    private static CommandOption option(Command command, String name) {
        Map<String, CommandOption> known = new TreeMap<>();
        command.getOptions().forEach(o -> known.put(o.longName(), o));
        CommandOption option = known.get(name);
        if (option == null) {
            Optional<String> near = Nearest.to(name, known.keySet());
            throw new WrongUsage("'" + command.getName() + "' has no option --" + Terminal.harmless(name)
                    + near.map(n -> "; did you mean --" + n + "?")
                            .orElse(
                                    known.isEmpty()
                                            ? "; it takes none"
                                            : "; it has --" + String.join(", --", known.keySet())));
        }
        return option;
    }
}
