package witnessmark.shell;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jline.terminal.Terminal;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;
import org.springframework.context.annotation.Primary;
import org.springframework.core.env.Environment;
import org.springframework.shell.core.command.CommandRegistry;
import witnessmark.casefile.MadeWith;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.KnowledgeFolders;
import witnessmark.shell.run.CompleteCommand;
import witnessmark.shell.run.InteractiveShell;
import witnessmark.shell.run.LineParser;
import witnessmark.shell.run.OneShot;
import witnessmark.shell.run.Refusals;
import witnessmark.shell.run.RunCommand;

/** Wires the services that the commands call; each is made when first asked for. */
@Configuration(proxyBeanMethods = false)
class ShellSetup {

    @Bean
    LineParser lineParser(CommandRegistry registry) {
        return new LineParser(registry);
    }

    @Bean
    Refusals refusals() {
        return new Refusals();
    }

    @Bean
    RunCommand runCommand(LineParser parser, CommandRegistry registry, Refusals refusals) {
        return new RunCommand(parser, registry, refusals);
    }

    @Bean
    @Primary
    @ConditionalOnProperty(name = "spring.shell.interactive.enabled", havingValue = "false")
    OneShot oneShot(RunCommand command) {
        return new OneShot(
                command,
                new PrintWriter(System.out, false, StandardCharsets.UTF_8),
                new PrintWriter(System.err, true, StandardCharsets.UTF_8));
    }

    @Bean
    @Primary
    @ConditionalOnProperty(name = "spring.shell.interactive.enabled", havingValue = "true", matchIfMissing = true)
    InteractiveShell interactiveShell(RunCommand command, CommandRegistry registry, Terminal terminal) {
        String settings = System.getenv().getOrDefault("XDG_CONFIG_HOME", System.getProperty("user.home") + "/.config");
        return new InteractiveShell(
                command, new CompleteCommand(registry), terminal, Path.of(settings, "witnessmark", "history"));
    }

    @Bean
    @Lazy
    KnowledgeBase knowledgeBase(Environment environment) {
        return new KnowledgeFolders(environment).load();
    }

    @Bean
    @Lazy
    MadeWith madeWith(Environment environment) {
        return new KnowledgeFolders(environment).madeWith();
    }

    @Bean
    @Lazy
    Diagnosis diagnosis(KnowledgeBase knowledge) {
        return new Diagnosis(RuleBase.shipped(), knowledge);
    }
}
