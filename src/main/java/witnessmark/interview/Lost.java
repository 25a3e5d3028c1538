package witnessmark.interview;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Before;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.planner.PlanChecks;

/**
 * Which checks cannot be made any more, as the unit came or because of what was done to it, and which a work would take
 * away if it were done now.
 */
final class Lost {
    private final KnowledgeBase knowledge;
    private final PlanChecks planner;

    Lost(KnowledgeBase knowledge, PlanChecks planner) {
        this.knowledge = knowledge;
        this.planner = planner;
    }

    /** The findings that cannot be looked at once these steps are done and the truck has lost these uses besides. */
    Set<String> after(Set<String> done, Collection<AccessStep.Use> ended) {
        Set<AccessStep.Use> uses = new LinkedHashSet<>(ended);
        done.forEach(step -> knowledge.access().get(step).ends().ifPresent(uses::add));
        Set<String> lost = new LinkedHashSet<>();
        for (Finding finding : knowledge.findings().values()) {
            if (needs(finding)
                    .filter(n -> uses.stream().anyMatch(u -> u.endsToo(n)))
                    .isPresent()) {
                lost.add(finding.id());
            }
        }
        knowledge.befores().stream()
                .filter(before -> done.contains(before.work()))
                .map(Before::looks)
                .forEach(lost::addAll);
        return lost;
    }

    /** The findings that going to a place takes away, had nothing been done before. */
    Set<String> byGoingTo(String place) {
        return after(new LinkedHashSet<>(planner.wayTo(place)), List.of());
    }

    /** Whether something is taken apart on the way to a place. */
    boolean takesApart(String place) {
        return planner.wayTo(place).stream()
                .anyMatch(step -> knowledge.access().get(step).teardown());
    }

    private Optional<AccessStep.Use> needs(Finding finding) {
        return knowledge.access().get(finding.access()).needs();
    }
}
