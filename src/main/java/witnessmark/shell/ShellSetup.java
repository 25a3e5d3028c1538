package witnessmark.shell;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;
import org.springframework.context.annotation.Primary;
import org.springframework.core.env.Environment;
import org.springframework.shell.core.command.CommandRegistry;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.knowledge.KnowledgeBase;

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
    @Primary
    @ConditionalOnProperty(name = "spring.shell.interactive.enabled", havingValue = "false")
    OneShot oneShot(LineParser parser, CommandRegistry registry, Refusals refusals) {
        return new OneShot(
                parser,
                registry,
                refusals,
                new PrintWriter(System.out, false, StandardCharsets.UTF_8),
                new PrintWriter(System.err, true, StandardCharsets.UTF_8));
    }

    @Bean
    @Lazy
    KnowledgeBase knowledgeBase(Environment environment) {
        return new KnowledgeFolders(environment).load();
    }

    @Bean
    @Lazy
    Diagnosis diagnosis(KnowledgeBase knowledge) {
        return new Diagnosis(RuleBase.shipped(), knowledge);
    }
}
