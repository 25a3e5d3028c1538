package witnessmark.planner;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.knowledge.AccessStep;

/** The access steps and how they lie in one another. */
final class AccessTree {
    private final Map<String, AccessStep> steps;
    private final Map<String, Integer> walk = new HashMap<>();
    private final Map<String, List<AccessStep>> ways = new HashMap<>();

    /**
     * @param steps every step by id; each one named as lying inside another must be there
     */
    AccessTree(Map<String, AccessStep> steps) {
        this.steps = steps;
        steps.keySet().forEach(id -> walk.put(id, walk.size()));
        steps.keySet().forEach(id -> ways.put(id, way(id)));
    }

    /** Where a place comes in the walk round the truck. */
    int walk(String place) {
        return walk.get(place);
    }

    /** The steps on the way to a place, outermost first, the place itself last. */
    List<AccessStep> wayTo(String place) {
        return ways.get(place);
    }

    /** What is not open yet on the way to a place, outermost first. */
    List<AccessStep> closed(String place, Set<String> open) {
        return wayTo(place).stream().filter(step -> !open.contains(step.id())).toList();
    }

    /** How many steps down a place lies, 1 for one that starts from the standing truck. */
    int depth(String place) {
        return wayTo(place).size();
    }

    boolean isTeardown(String step) {
        return steps.get(step).teardown();
    }

    static double minutes(List<AccessStep> steps) {
        return steps.stream().mapToDouble(AccessStep::minutes).sum();
    }

    private List<AccessStep> way(String place) {
        List<AccessStep> way = new ArrayList<>();
        for (Optional<String> at = Optional.of(place);
                at.isPresent();
                at = way.get(0).inside()) {
            way.add(0, steps.get(at.get()));
        }
        return List.copyOf(way);
    }
}
