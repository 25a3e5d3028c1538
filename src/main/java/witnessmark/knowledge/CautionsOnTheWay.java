package witnessmark.knowledge;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Says with a repair, after the cause's own cautions, those of the whole way to each of its places. */
final class CautionsOnTheWay {
    private CautionsOnTheWay() {}

    static KnowledgeBase of(KnowledgeBase knowledge) {
        Map<String, Cause> causes = new LinkedHashMap<>();
        knowledge.causes().forEach((id, cause) -> causes.put(id, cause.withCautions(said(cause, knowledge))));
        return knowledge.withCauses(causes);
    }

    private static List<String> said(Cause cause, KnowledgeBase knowledge) {
        Set<String> said = new LinkedHashSet<>(cause.cautions());
        cause.repairAt().stream()
                .flatMap(place -> knowledge.wayTo(place).stream())
                .forEach(step -> said.addAll(step.cautions()));
        List<String> covered = said.stream()
                .flatMap(caution -> knowledge.cautions().get(caution).covers().stream())
                .toList();
        return said.stream().filter(caution -> !covered.contains(caution)).toList();
    }
}
