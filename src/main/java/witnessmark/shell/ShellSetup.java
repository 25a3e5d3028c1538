package witnessmark.shell;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.core.convert.support.ConfigurableConversionService;
import org.springframework.core.env.Environment;
import org.springframework.shell.core.ShellRunner;
import org.springframework.shell.core.command.CommandRegistry;
import witnessmark.casefile.MadeWith;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.KnowledgeFolders;
import witnessmark.shell.print.RoomOptions;
import witnessmark.shell.print.Screen;
import witnessmark.shell.run.CompleteCommand;
import witnessmark.shell.run.InteractiveShell;
import witnessmark.shell.run.LineParser;
import witnessmark.shell.run.OneShot;
import witnessmark.shell.run.OptionValues;
import witnessmark.shell.run.Refusals;
import witnessmark.shell.run.RunCommand;
import witnessmark.shell.settings.SettingsFile;
import witnessmark.shell.settings.ShopSettings;

/** Wires the services that the commands call; each is made when first asked for. */
@Configuration(proxyBeanMethods = false)
class ShellSetup {

    @Bean
    LineParser lineParser(CommandsOfRooms commands) {
        return new LineParser(commands, commands::mostWords);
    }

    @Bean
    Refusals refusals() {
        return new Refusals();
    }

    @Bean
    RunCommand runCommand(
            LineParser parser,
            CommandRegistry registry,
            Refusals refusals,
            ShopSettings shop,
            ObjectProvider<Terminal> terminal) {
        return new RunCommand(
                parser,
                registry,
                refusals,
                out -> new Screen(out, () -> columns(terminal), shop::units),
                witnessmark.shell.print.Terminal::showsMessages);
    }

    /** What the environment says counts before the window: it is how a page is asked for at another width. */
    private static int columns(ObjectProvider<Terminal> terminal) {
        int said = witnessmark.shell.print.Terminal.columns();
        return said > 0 || !witnessmark.shell.print.Terminal.canAsk()
                ? said
                : terminal.getObject().getWidth();
    }

    @Bean
    CommandsOfRooms commandRegistry(GenericApplicationContext context) {
        return new CommandsOfRooms(context);
    }

    /** Not under the name by which the context itself would take it. */
    @Bean
    @Lazy
    ConfigurableConversionService optionValues(ObjectProvider<RoomOptions> ofRooms) {
        return new OptionValues(ofRooms.stream());
    }

    /** The terminal of the prompt and of an interview; it is given back when the program ends. */
    @Bean
    @Lazy
    Terminal terminal() throws IOException {
        return TerminalBuilder.builder().build();
    }

    /** Runs the one command of the arguments, or the prompt where there is none. */
    @Bean
    @Lazy
    ShellRunner shellRunner(
            RunCommand command, CommandRegistry registry, Environment environment, ObjectProvider<Terminal> terminal) {
        return environment.getProperty("witnessmark.prompt", Boolean.class, false)
                ? prompt(command, registry, terminal.getObject())
                : new OneShot(
                        command,
                        new PrintWriter(System.out, false, StandardCharsets.UTF_8),
                        new PrintWriter(System.err, true, StandardCharsets.UTF_8));
    }

    private static InteractiveShell prompt(RunCommand command, CommandRegistry registry, Terminal terminal) {
        Path settings = SettingsFile.folder(System.getenv(), System.getProperty("user.home"));
        return new InteractiveShell(command, new CompleteCommand(registry), terminal, settings.resolve("history"));
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
