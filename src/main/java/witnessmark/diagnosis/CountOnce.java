package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.diagnosis.fact.State;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.knowledge.OneFact;

/** Finds what is the same fact told again: of each fact the most telling finding present enters, the rest go with it. */
final class CountOnce {
    private final Map<String, List<OneFact>> factsOf = new LinkedHashMap<>();

    CountOnce(List<OneFact> facts) {
        facts.forEach(fact -> fact.findings().forEach(f -> factsOf.computeIfAbsent(f, key -> new ArrayList<>())
                .add(fact)));
    }

    /** By finding that is not counted by itself: the finding present that stands for its fact. */
    Map<String, String> toldAgain(Map<String, Taken> taken) {
        Map<String, String> again = new LinkedHashMap<>();
        for (String finding : taken.keySet()) {
            for (OneFact fact : factsOf.getOrDefault(finding, List.of())) {
                carrier(fact, taken).filter(f -> !f.equals(finding)).ifPresent(f -> again.putIfAbsent(finding, f));
            }
        }
        return again;
    }

    private static Optional<String> carrier(OneFact fact, Map<String, Taken> taken) {
        return fact.findings().stream()
                .filter(f -> taken.containsKey(f) && taken.get(f).state() == State.PRESENT)
                .findFirst();
    }
}
