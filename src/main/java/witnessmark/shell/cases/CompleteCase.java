package witnessmark.shell.cases;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.completion.CompletionContext;
import org.springframework.shell.core.command.completion.CompletionProposal;
import org.springframework.shell.core.command.completion.CompletionProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.RankedCause;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.refusal.Refusal;

/** Completes what fits at its place: the case first, then what the command names of it, and the command's options. */
@Component("completeCase")
class CompleteCase implements CompletionProvider {
    private static final int MOST = 200;
    private static final Set<String> OPEN_NEW = Set.of("interview", "case read");
    private static final Set<String> NAME_FINDINGS = Set.of("case set", "whatif", "case clear", "photo add");
    private static final Set<String> NAME_CAUSES = Set.of("explain", "accounts");
    /** What is less likely is not offered before a letter of it is typed; a chance. */
    private static final double WORTH_OFFERING = 0.01;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ObjectProvider<Diagnosis> diagnosis;

    CompleteCase(
            ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge, ObjectProvider<Diagnosis> diagnosis) {
        this.cases = cases;
        this.knowledge = knowledge;
        this.diagnosis = diagnosis;
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
        Command command = context.getCommand();
        List<String> before = context.getWords().subList(0, context.getWordIndex());
        if (!before.isEmpty() && before.get(before.size() - 1).equals("--finding")) {
            return knowledge.getObject().findings().keySet().stream();
        }
        Stream<String> options = command.getOptions().stream().map(o -> "--" + o.longName());
        if (typed.startsWith("--")) {
            return options;
        }
        List<String> arguments = before.stream()
                .skip(command.getName().split(" ").length)
                .filter(word -> !word.startsWith("--"))
                .toList();
        Stream<String> fitting =
                arguments.isEmpty() ? first(command.getName(), typed) : further(command.getName(), arguments, typed);
        return Stream.concat(fitting, typed.isEmpty() ? options : Stream.empty());
    }

    private Stream<String> first(String command, String typed) {
        if (command.equals("case list")) {
            return Stream.empty();
        }
        return Stream.concat(OPEN_NEW.contains(command) ? Stream.of("new") : Stream.empty(), caseIds(typed).stream());
    }

    private Stream<String> further(String command, List<String> arguments, String typed) {
        KnowledgeBase base = knowledge.getObject();
        if (NAME_CAUSES.contains(command)) {
            return causes(base, arguments.get(0), typed);
        }
        if (command.equals("case measure")) {
            return switch (arguments.size()) {
                case 1 -> base.measures().keySet().stream();
                case 3 -> units(base, arguments.get(1));
                default -> Stream.empty();
            };
        }
        if (command.equals("case tell")) {
            return arguments.size() == 1
                    ? Stream.of("title", "complaint", "driver-account", "work-done")
                    : Stream.empty();
        }
        return NAME_FINDINGS.contains(command) ? findings(base, command, typed) : Stream.empty();
    }

    /** The causes in question in the case; every cause where the word begins none of them, or none is. */
    private Stream<String> causes(KnowledgeBase base, String name, String typed) {
        List<String> likely = inQuestion(name);
        return likely.stream().anyMatch(id -> id.startsWith(typed)) ? likely.stream() : base.causes().keySet().stream();
    }

    private List<String> inQuestion(String name) {
        try {
            CaseFile file = Cases.isFile(name)
                    ? Cases.read(Path.of(name)).present()
                    : cases.getObject().stored(name);
            Diagnosis judge = diagnosis.getObject();
            try (OpenCase open = judge.open(CheckKnown.toJudge(file, judge.knowledge()))) {
                return open.pointsNowhere()
                        ? List.of()
                        : open.standing().causesFrom(WORTH_OFFERING).stream()
                                .map(RankedCause::id)
                                .toList();
            }
        } catch (Refusal e) {
            return List.of();
        }
    }

    private static Stream<String> findings(KnowledgeBase base, String command, String typed) {
        int equals = typed.indexOf('=');
        if (equals > 0) {
            String finding = typed.substring(0, equals);
            return Stream.of(FindingState.values()).map(s -> finding + "=" + s.word());
        }
        boolean sets = command.equals("case set") || command.equals("whatif");
        List<String> words = new ArrayList<>();
        base.findings().keySet().forEach(id -> words.add(sets ? id + "=" : id));
        if (command.equals("case clear")) {
            words.addAll(base.measures().keySet());
        }
        return words.stream();
    }

    private static Stream<String> units(KnowledgeBase base, String measure) {
        return base.measures().containsKey(measure)
                ? Arrays.stream(Unit.values())
                        .filter(u -> u.quantity()
                                == base.measures().get(measure).unit().quantity())
                        .map(Unit::symbol)
                : Stream.empty();
    }

    private List<String> caseIds(String typed) {
        try {
            return cases.getObject().store().ids(typed, MOST).stream()
                    .map(Object::toString)
                    .toList();
        } catch (Refusal e) {
            return List.of();
        }
    }
}
