package witnessmark;

import java.util.HashMap;
import java.util.Map;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.ExitCode;
import witnessmark.shell.run.StartOptions;

/** Starts the program: with arguments it runs one command and sets the exit code, without it opens the shell. */
@SpringBootApplication(exclude = {DataSourceAutoConfiguration.class, FlywayAutoConfiguration.class})
public class Witnessmark {
    public static void main(String[] args) {
        StartOptions options;
        try {
            options = StartOptions.of(args);
        } catch (WrongUsage e) {
            System.err.println(e.getMessage());
            System.exit(ExitCode.WRONG_USAGE.number());
            return;
        }
        SpringApplication application = new SpringApplication(Witnessmark.class);
        // Otherwise each --name=value of a command would also become a Spring property.
        application.setAddCommandLineProperties(false);
        application.setWebApplicationType(WebApplicationType.NONE);
        Map<String, Object> properties = new HashMap<>(options.properties());
        properties.put(
                "spring.shell.interactive.enabled",
                String.valueOf(options.words().isEmpty()));
        application.setDefaultProperties(properties);
        System.exit(SpringApplication.exit(application.run(args)));
    }
}
