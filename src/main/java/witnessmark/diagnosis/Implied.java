package witnessmark.diagnosis;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.diagnosis.fact.State;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.knowledge.Follows;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.NeverTogether;

/**
 * What the answers so far leave no choice about, so that asking it would be pointless: what follows from something
 * present, what something absent would have brought with it, and the last of a set that cannot stand together.
 */
final class Implied {
    private final KnowledgeBase knowledge;
    private final Map<String, Boolean> known = new HashMap<>();
    private final Set<String> answered;

    Implied(KnowledgeBase knowledge, Map<String, Taken> taken) {
        this.knowledge = knowledge;
        answered = Set.copyOf(taken.keySet());
        taken.forEach((finding, t) -> {
            if (t.state() != State.UNSURE) {
                known.put(finding, t.state() == State.PRESENT);
            }
        });
        for (int before = -1; before != known.size(); ) {
            before = known.size();
            knowledge.follows().forEach(this::follow);
            knowledge.neverTogether().forEach(this::exclude);
        }
    }

    /** The findings not answered that the answers settle. */
    Set<String> findings() {
        return known.keySet().stream().filter(f -> !answered.contains(f)).collect(Collectors.toUnmodifiableSet());
    }

    private void follow(Follows rule) {
        if (is(rule.premise(), true)) {
            known.putIfAbsent(rule.conclusion(), true);
        }
        if (is(rule.conclusion(), false)) {
            known.putIfAbsent(rule.premise(), false);
        }
    }

    private void exclude(NeverTogether rule) {
        List<String> open =
                rule.findings().stream().filter(f -> !is(f, true)).toList();
        if (open.size() == 1) {
            known.putIfAbsent(open.get(0), false);
        }
    }

    private boolean is(String finding, boolean present) {
        return known.containsKey(finding) && known.get(finding) == present;
    }
}
