package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.knowledge.NeverTogether;
import witnessmark.knowledge.OneFact;

/** Finds what is the same fact told again: of each fact the most telling finding present enters, the rest go with it. */
final class CountOnce {
    private final Map<String, List<OneFact>> factsOf = new LinkedHashMap<>();

    private final Set<Set<String>> excluding = new HashSet<>();

    CountOnce(List<OneFact> facts, List<NeverTogether> excluding) {
        excluding.forEach(e -> this.excluding.add(Set.copyOf(e.findings())));
        facts.forEach(fact -> fact.findings().forEach(f -> factsOf.computeIfAbsent(f, key -> new ArrayList<>())
                .add(fact)));
    }

    /** By finding that is not counted by itself: the finding present that stands for its fact. */
    Map<String, String> toldAgain(Map<String, Taken> taken) {
        Map<String, String> again = new LinkedHashMap<>();
        for (String finding : taken.keySet()) {
            for (OneFact fact : factsOf.getOrDefault(finding, List.of())) {
                carrier(fact, taken)
                        .filter(f -> tellsAgain(f, finding, taken))
                        .ifPresent(f -> again.putIfAbsent(finding, f));
            }
        }
        return again;
    }

    /** Two answers present that exclude each other are a contradiction, not the same fact twice. */
    private boolean tellsAgain(String carrier, String finding, Map<String, Taken> taken) {
        return !carrier.equals(finding)
                && (taken.get(finding).state() != FindingState.PRESENT
                        || !excluding.contains(Set.of(carrier, finding)));
    }

    private static Optional<String> carrier(OneFact fact, Map<String, Taken> taken) {
        return fact.findings().stream()
                .filter(f -> taken.containsKey(f) && taken.get(f).state() == FindingState.PRESENT)
                .findFirst();
    }
}
