package witnessmark.shell;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.PropertySource;
import org.springframework.core.io.support.ResourcePropertySource;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.CommandRegistry;
import witnessmark.Witnessmark;
import witnessmark.shell.run.OneShot;
import witnessmark.shell.run.RunCommand;

/** Runs commands as the program does, in this process and on a store of its own. */
public final class CommandLine implements AutoCloseable {

    /** What a command left behind. */
    public record Run(int exitCode, String out, String messages) {}

    static {
        // Nobody types here: what a runner of tests keeps at standard input would be waited for without end.
        System.setIn(InputStream.nullInputStream());
    }

    private final AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext();

    public CommandLine(Path store) {
        this(store, Map.of());
    }

    /** With more properties of the program, such as a site's own knowledge. */
    public CommandLine(Path store, Map<String, Object> more) {
        context.getEnvironment().getPropertySources().addFirst(new MapPropertySource("more", more));
        context.getEnvironment()
                .getPropertySources()
                .addFirst(new MapPropertySource(
                        "test",
                        Map.of(
                                "witnessmark.store",
                                store.toString(),
                                "witnessmark.who",
                                "tester",
                                "witnessmark.settings.file",
                                store.resolve("settings.yaml").toString())));
        context.getEnvironment().getPropertySources().addLast(shipped());
        context.register(Witnessmark.class);
        context.refresh();
    }

    private static PropertySource<?> shipped() {
        try {
            return new ResourcePropertySource("classpath:application.properties");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public Run run(String... words) {
        StringWriter out = new StringWriter();
        StringWriter messages = new StringWriter();
        OneShot shell = new OneShot(context.getBean(RunCommand.class), new PrintWriter(out), new PrintWriter(messages));
        shell.run(words);
        return new Run(shell.getExitCode(), out.toString(), messages.toString());
    }

    /** Runs a line as it is typed at the prompt. */
    public Run type(String line) {
        StringWriter out = new StringWriter();
        StringWriter messages = new StringWriter();
        int exitCode = context.getBean(RunCommand.class).run(line, new PrintWriter(out), new PrintWriter(messages));
        return new Run(exitCode, out.toString(), messages.toString());
    }

    /** The names of the commands that people are shown, but for quit, which ends the shell. */
    public List<String> registered() {
        return shown().map(Command::getName).sorted().toList();
    }

    /** Those of them that have the option. */
    public List<String> withOption(String name) {
        return shown().filter(c -> c.getOptions().stream().anyMatch(o -> name.equals(o.longName())))
                .map(Command::getName)
                .toList();
    }

    /** The long names of the options of a command that take a value. */
    public List<String> valuesOf(String command) {
        return shown().filter(c -> c.getName().equals(command))
                .flatMap(c -> c.getOptions().stream())
                .filter(o -> o.type() != boolean.class && o.type() != Boolean.class)
                .map(CommandOption::longName)
                .toList();
    }

    /** The commands that people are shown, but for quit. */
    public List<Command> commands() {
        return shown().toList();
    }

    /** A part of the program, for what no command shows. */
    public <T> T bean(Class<T> type) {
        return context.getBean(type);
    }

    private Stream<Command> shown() {
        return context.getBean(CommandRegistry.class).getCommands().stream()
                .filter(c -> !c.isHidden() && !c.getName().equals("quit"));
    }

    @Override
    public void close() {
        context.close();
    }
}
