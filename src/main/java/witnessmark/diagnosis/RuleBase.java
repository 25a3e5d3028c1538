package witnessmark.diagnosis;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.drools.model.Model;
import org.drools.modelcompiler.KieBaseBuilder;
import org.kie.api.KieBase;
import org.kie.api.definition.rule.Rule;
import org.kie.api.runtime.KieSession;

/** The rules as compiled at build time; start-up compiles nothing. */
public final class RuleBase {
    private static final String MODELS = "/META-INF/kie/witnessmark/witnessmark/drools-model";

    private final KieBase rules;

    private RuleBase(KieBase rules) {
        this.rules = rules;
    }

    /** The shipped rules; throws if the build left none, since a judgement without rules would be a wrong one. */
    public static RuleBase shipped() {
        List<Model> models = new ArrayList<>();
        for (String line : modelNames()) {
            models.add(model(line));
        }
        KieBase base = KieBaseBuilder.createKieBaseFromModel(models);
        RuleBase rules = new RuleBase(base);
        if (rules.size() == 0) {
            throw new IllegalStateException("the rule base is empty: build the program anew");
        }
        return rules;
    }

    /** How many rules there are. */
    public int size() {
        return rules.getKiePackages().stream()
                .mapToInt(p -> p.getRules().size())
                .sum();
    }

    /** The names of the rules. */
    List<String> names() {
        return rules.getKiePackages().stream()
                .flatMap(p -> p.getRules().stream())
                .map(Rule::getName)
                .sorted()
                .toList();
    }

    KieSession newSession() {
        return rules.newKieSession();
    }

    private static List<String> modelNames() {
        try (InputStream in = RuleBase.class.getResourceAsStream(MODELS)) {
            if (in == null) {
                throw new IllegalStateException("the compiled rules are missing: build the program anew");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty() && !line.startsWith("Drools-Model-Version"))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Model model(String className) {
        try {
            return (Model) Class.forName(className).getDeclaredConstructor().newInstance();
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the compiled rule model " + className + " cannot be loaded", e);
        }
    }
}
