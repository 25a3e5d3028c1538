package witnessmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jline.terminal.TerminalBuilder;
import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.beans.factory.support.GenericTypeAwareAutowireCandidateResolver;
import org.springframework.boot.Banner;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.AnnotationConfigUtils;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.shell.core.ShellRunner;
import witnessmark.refusal.Refusal;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Screen;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.ExitCode;
import witnessmark.shell.run.FaultLog;
import witnessmark.shell.run.OneShot;
import witnessmark.shell.run.StartOptions;
import witnessmark.shell.settings.SettingSources;

/** Starts the program: with arguments it runs one command and sets the exit code, without it opens the shell. */
@Configuration(proxyBeanMethods = false)
@ComponentScan("witnessmark.shell")
public class Witnessmark {
    public static void main(String[] args) {
        System.exit(run(args));
    }

    /** Whatever goes wrong before a command runs, as with a library missing, is told too. */
    private static int run(String[] args) {
        try {
            return start(args);
        } catch (SpringApplication.AbandonedRunException e) {
            // The build prepares the context ahead of time and stops here.
            throw e;
        } catch (WrongUsage e) {
            return told(e.getMessage(), ExitCode.WRONG_USAGE);
        } catch (Refusal e) {
            return told(e.getMessage(), ExitCode.REFUSED_INPUT);
        } catch (Throwable e) {
            return told(
                    "the program cannot start: " + e.getClass().getSimpleName() + ": " + e.getMessage()
                            + "; install it anew if files of it are missing. " + FaultLog.write(e),
                    ExitCode.INSIDE_FAULT);
        }
    }

    private static int start(String[] args) throws Exception {
        refuseLostLetters(args);
        // Else the rule engine would look for definitions of work in the current folder.
        System.setProperty("drools.workDefinitions", "");
        // What libraries log is dropped before it is worded, and without asking every jar for a better place.
        System.setProperty("org.apache.commons.logging.LogFactory", "org.apache.commons.logging.impl.LogFactoryImpl");
        System.setProperty("org.apache.commons.logging.Log", "org.apache.commons.logging.impl.NoOpLog");
        // Libraries that write to the platform's own log would else reach the terminal.
        System.setProperty("java.util.logging.config.class", SilentLog.class.getName());
        StartOptions options = StartOptions.of(args);
        if (isPackaged()) {
            System.setProperty("spring.aot.enabled", "true");
        }
        SpringApplication application = new SpringApplication(Witnessmark.class) {
            @Override
            protected void bindToSpringApplication(ConfigurableEnvironment environment) {
                // all of it is said here; the framework's way to look for it in properties costs a twentieth of a start
            }
        };
        application.setBannerMode(Banner.Mode.OFF);
        application.setLazyInitialization(true);
        // Otherwise each --name=value of a command would also become a Spring property.
        application.setAddCommandLineProperties(false);
        application.setWebApplicationType(WebApplicationType.NONE);
        // Neither a logging system nor files of configuration are looked for: the one file is read with the settings.
        application.setListeners(List.of());
        application.setLogStartupInfo(false);
        application.setAddConversionService(false);
        application.addInitializers(Witnessmark::leaveAnnotationsUnread);
        Map<String, Object> properties = new HashMap<>(options.properties());
        properties.put("witnessmark.prompt", String.valueOf(options.words().isEmpty()));
        application.setEnvironment(SettingSources.of(properties, System.getenv(), System.getProperty("user.home")));
        try (ConfigurableApplicationContext context = application.run(args)) {
            ShellRunner runner = context.getBean(ShellRunner.class);
            runner.run(args);
            return runner instanceof OneShot one ? one.getExitCode() : ExitCode.DONE.number();
        }
    }

    /**
     * No bean listens to events by an annotation, and each is known by its type alone: looking for more would read every
     * method of every room.
     */
    private static void leaveAnnotationsUnread(ConfigurableApplicationContext context) {
        DefaultListableBeanFactory beans = (DefaultListableBeanFactory) context.getBeanFactory();
        beans.setAutowireCandidateResolver(new GenericTypeAwareAutowireCandidateResolver());
        if (beans.containsBeanDefinition(AnnotationConfigUtils.EVENT_LISTENER_PROCESSOR_BEAN_NAME)) {
            beans.removeBeanDefinition(AnnotationConfigUtils.EVENT_LISTENER_PROCESSOR_BEAN_NAME);
        }
    }

    /** Whether this is the program as it ships, whose context the build has prepared ahead of time. */
    private static boolean isPackaged() {
        URL prepared = Witnessmark.class.getResource("Witnessmark__ApplicationContextInitializer.class");
        return prepared != null && !prepared.getProtocol().equals("file");
    }

    /** Under a locale without these letters they are replaced before the program sees them, and would be stored so. */
    private static void refuseLostLetters(String[] args) {
        for (String arg : args) {
            if (Terminal.lostLetters(arg)) {
                throw new Refused(
                        "'" + arg + "' came with letters lost: the locale of this shell does not know them",
                        "set LC_ALL=C.UTF-8 and repeat");
            }
        }
    }

    /** At a terminal wrapped to its width, elsewhere each sentence on one line. */
    private static int told(String message, ExitCode code) {
        if (Terminal.showsMessages()) {
            PrintWriter messages = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
            Page page = new Page(messages, Screen.within(columns()), false);
            message.lines().forEach(page::line);
            page.flush();
        } else {
            System.err.println(Terminal.harmless(message));
        }
        return code.number();
    }

    /** Columns of the window where no context knows them yet; 0 where it does not say. */
    private static int columns() {
        int said = Terminal.columns();
        if (said > 0) {
            return said;
        }
        try (org.jline.terminal.Terminal window = TerminalBuilder.terminal()) {
            return window.getWidth();
        } catch (IOException e) {
            return 0;
        }
    }
}
