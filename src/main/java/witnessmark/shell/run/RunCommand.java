package witnessmark.shell.run;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.shell.core.InputReader;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandExecutor;
import org.springframework.shell.core.command.CommandNotFoundException;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.ExitStatus;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Screen;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.Waiting;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.Nearest;

/** Runs one command, the same way from arguments, a script and a typed line; answers to one side, messages to the other. */
public final class RunCommand {
    /** A word from outside that would hide what the message says; no word of the program's own is as long. */
    private static final Pattern OVERLONG = Pattern.compile("\\S{300,}");

    private final LineParser parser;
    private final CommandRegistry registry;
    private final CommandNames names;
    private final Refusals refusals;
    private final Function<PrintWriter, Screen> screens;
    private final BooleanSupplier messagesShown;

    /**
     * @param screens what is known of the place an answer goes to
     * @param messagesShown whether messages appear at a terminal, where they are wrapped to its width
     */
    public RunCommand(
            LineParser parser,
            CommandRegistry registry,
            Refusals refusals,
            Function<PrintWriter, Screen> screens,
            BooleanSupplier messagesShown) {
        this.screens = screens;
        this.messagesShown = messagesShown;
        this.parser = parser;
        this.registry = registry;
        this.names = new CommandNames(registry);
        this.refusals = refusals;
    }

    /** Runs a typed line; returns the exit code. */
    public int run(String line, PrintWriter out, PrintWriter messages) {
        if (Terminal.lostLetters(line)) {
            return tell(
                    new ExitStatus(
                            ExitCode.REFUSED_INPUT.number(),
                            "'" + Terminal.shortened(line)
                                    + "' came with letters lost, as it is no UTF-8; nothing is done."
                                    + " Write it anew"),
                    messages);
        }
        try {
            return run(SplitLine.of(line), out, messages);
        } catch (WrongUsage e) {
            return tell(new ExitStatus(ExitCode.WRONG_USAGE.number(), e.getMessage()), messages);
        }
    }

    /** Runs a command given as words; returns the exit code. */
    int run(List<String> typed, PrintWriter out, PrintWriter messages) {
        List<String> words = helpInstead(typed);
        try (Waiting waiting = Waiting.on(named(words))) {
            return run(words, screens.apply(waiting.until(out)), messages, waiting);
        }
    }

    private int run(List<String> words, Screen screen, PrintWriter messages, Waiting waiting) {
        try {
            ExitStatus status = new CommandExecutor(registry)
                    .execute(new CommandContext(parser.parse(words), registry, screen, new InputReader() {}));
            screen.flush();
            waiting.close();
            return status.code() == 0 ? 0 : tell(status, messages);
        } catch (CommandNotFoundException e) {
            return tell(new ExitStatus(ExitCode.WRONG_USAGE.number(), unknown(words)), messages);
        } catch (RuntimeException e) {
            screen.flush();
            waiting.close();
            return tell(refusals.apply(e), messages);
        }
    }

    /** The longest beginning of the words that is a command; the first word where none is. */
    private String named(List<String> words) {
        return names.longest(words)
                .map(Command::getName)
                .orElse(words.isEmpty() ? "" : Terminal.harmless(words.get(0)));
    }

    /** A command with --help, a first word that only groups commands, and what is none with --help are explained instead. */
    private List<String> helpInstead(List<String> words) {
        boolean group = names.group(words);
        if (!words.contains("--help") && !group) {
            return words;
        }
        List<String> name = words.stream().filter(w -> !w.startsWith("--")).toList();
        List<String> help = new ArrayList<>(List.of("help"));
        help.addAll(names.longest(name)
                .map(c -> name.subList(0, CommandNames.length(c)))
                .orElse(name));
        return help;
    }

    private String unknown(List<String> words) {
        List<String> group = words.isEmpty() ? List.of() : names.in(words.get(0));
        List<String> near = new ArrayList<>();
        for (int length = Math.min(2, words.size()); length > 0 && near.isEmpty(); length--) {
            near.addAll(
                    Nearest.some(String.join(" ", words.subList(0, length)), group.isEmpty() ? names.all() : group, 3));
        }
        if (near.isEmpty()) {
            near.addAll(group);
        }
        String typed = String.join(" ", words);
        return "no command '" + Terminal.harmless(typed.length() > 40 ? words.get(0) : typed) + "'; "
                + (near.isEmpty() ? "see: help" : "did you mean: " + String.join(", ", near) + "? See also: help");
    }

    private int tell(ExitStatus status, PrintWriter messages) {
        String said = OVERLONG.matcher(Terminal.harmless(status.description()))
                .replaceAll(word -> Matcher.quoteReplacement(Terminal.shortened(word.group())));
        if (messagesShown.getAsBoolean()) {
            Page page = new Page(screens.apply(messages));
            said.lines().forEach(page::line);
        } else {
            messages.println(said);
        }
        messages.flush();
        return status.code();
    }
}
