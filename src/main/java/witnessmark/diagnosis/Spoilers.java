package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.diagnosis.fact.SpoiledBy;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/** What spoils an answer: something done to it or to what its check needs, its whole kind failing, a part renewed before the look. */
final class Spoilers {
    private final Map<String, List<SpoiledBy>> byFinding = new HashMap<>();

    Spoilers(KnowledgeBase knowledge) {
        for (Finding finding : knowledge.findings().values()) {
            String id = finding.id();
            finding.spoiledBy().forEach(by -> add(SpoiledBy.whatever(id, by)));
            finding.needs().stream()
                    .flatMap(need -> knowledge.findings().get(need).spoiledBy().stream())
                    .filter(by -> !by.equals(id))
                    .forEach(by -> add(SpoiledBy.whatever(id, by)));
            finding.renews().forEach(part -> add(SpoiledBy.ifSound(part, id)));
            finding.voids().ifPresent(kind -> knowledge.findings().values().stream()
                    .filter(voided -> voided.kind() == kind)
                    .forEach(voided -> add(SpoiledBy.whatever(voided.id(), id))));
        }
    }

    private void add(SpoiledBy spoiled) {
        List<SpoiledBy> known = byFinding.computeIfAbsent(spoiled.finding(), f -> new ArrayList<>());
        if (known.stream().noneMatch(spoiled::isSame)) {
            known.add(spoiled);
        }
    }

    /** Those of one finding. */
    List<SpoiledBy> of(String finding) {
        return List.copyOf(byFinding.getOrDefault(finding, List.of()));
    }
}
