package bare;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Command;

/** The least program of Boot and Shell: one command that answers one word, wired by automatic configuration. */
@SpringBootApplication
public class Bare {
    public static void main(String[] args) {
        SpringApplication.run(Bare.class, args);
    }

    @Command(name = "hello", description = "Answer")
    public void hello(CommandContext context) {
        context.outputWriter().println("here");
        context.outputWriter().flush();
    }
}
