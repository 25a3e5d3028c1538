package witnessmark.shell;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Map;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.MapPropertySource;
import witnessmark.Witnessmark;
import witnessmark.shell.run.OneShot;
import witnessmark.shell.run.RunCommand;

/** Runs commands as the program does, in this process and on a store of its own. */
public final class CommandLine implements AutoCloseable {

    /** What a command left behind. */
    public record Run(int exitCode, String out, String messages) {}

    private final AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext();

    public CommandLine(Path store) {
        context.getEnvironment()
                .getPropertySources()
                .addFirst(new MapPropertySource(
                        "test",
                        Map.of(
                                "spring.shell.interactive.enabled",
                                "false",
                                "witnessmark.store",
                                store.toString(),
                                "witnessmark.who",
                                "tester")));
        context.register(Witnessmark.class);
        context.refresh();
    }

    public Run run(String... words) {
        StringWriter out = new StringWriter();
        StringWriter messages = new StringWriter();
        OneShot shell = new OneShot(context.getBean(RunCommand.class), new PrintWriter(out), new PrintWriter(messages));
        shell.run(words);
        return new Run(shell.getExitCode(), out.toString(), messages.toString());
    }

    @Override
    public void close() {
        context.close();
    }
}
