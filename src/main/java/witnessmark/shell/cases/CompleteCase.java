package witnessmark.shell.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.completion.CompletionContext;
import org.springframework.shell.core.command.completion.CompletionProposal;
import org.springframework.shell.core.command.completion.CompletionProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.store.StoreUnavailable;
import witnessmark.knowledge.KnowledgeBase;

/** Completes case ids, finding ids with their states, measures and the command's options. */
@Component("completeCase")
class CompleteCase implements CompletionProvider {
    private static final int MOST = 200;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;

    CompleteCase(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge) {
        this.cases = cases;
        this.knowledge = knowledge;
    }

    @Override
    public List<CompletionProposal> apply(CompletionContext context) {
        String typed = context.currentWordUpToCursor() == null ? "" : context.currentWordUpToCursor();
        return words(context, typed)
                .filter(word -> word.startsWith(typed))
                .limit(MOST)
                .map(CompletionProposal::new)
                .toList();
    }

    private Stream<String> words(CompletionContext context, String typed) {
        if (typed.startsWith("--")) {
            return context.getCommand().getOptions().stream().map(o -> "--" + o.longName());
        }
        int equals = typed.indexOf('=');
        if (equals > 0) {
            String finding = typed.substring(0, equals);
            return Stream.of(FindingState.values()).map(s -> finding + "=" + s.word());
        }
        List<String> words = new ArrayList<>(caseIds(typed));
        KnowledgeBase base = knowledge.getObject();
        boolean sets =
                context.getCommand() != null && context.getCommand().getName().equals("case set");
        base.findings().keySet().forEach(id -> words.add(sets ? id + "=" : id));
        words.addAll(base.measures().keySet());
        return words.stream();
    }

    private List<String> caseIds(String typed) {
        try {
            return cases.getObject().store().ids(typed, MOST).stream()
                    .map(Object::toString)
                    .toList();
        } catch (StoreUnavailable | IllegalArgumentException e) {
            return List.of();
        }
    }
}
