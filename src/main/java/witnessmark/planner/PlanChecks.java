package witnessmark.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import witnessmark.knowledge.AccessStep;

/**
 * Plans in which order to make checks: most expected information for each minute of work, where opening a place is
 * paid once and then serves every check in it.
 *
 * <p>The model is that of troubleshooting with cost clusters (Ottosen and Jensen, "The Cost of Troubleshooting Cost
 * Clusters with Inside Information", 2010): actions lie in clusters, a cluster is opened at a cost, and a greedy order
 * takes next the cluster whose best run of actions has the highest efficiency, opening counted in. Information for a
 * minute as the efficiency of an observation follows decision-theoretic troubleshooting (Heckerman, Breese and
 * Rommelse, 1995). Here clusters lie in one another, as the access steps do; nothing is closed again.
 *
 * <p>The places are gone to in the order of a walk, which is the order of the access steps, and each once: only a place
 * that has become worth several times any other is gone back to.
 *
 * <p>Four habits of the shop stand above the figure: what can be seen from outside comes before anything is taken
 * apart, and a cover or housing that is off within the hour comes before the gearbox is taken out, unless it is worth
 * next to nothing; the hands stay in a place unless another is clearly better; and work
 * under the truck goes from the outer step to the inner.
 */
public final class PlanChecks {
    /**
     * Below this a check is a trifle: it holds nothing up, and is not asked for its own sake. This and the two below are
     * judgement, tried out on cases of known outcome; the outcome hardly moves when they are halved or doubled.
     */
    public static final double TRIFLE_BITS = 0.04;
    /** Another place must be worth this many times as much a minute before the hands go there. */
    static final double CLEARLY_BETTER = 2.5;
    /**
     * A place is gone to in its turn of the walk when it is worth at least one part in so many of the best a minute; one that
     * was left is gone back to only when it is the best by so much.
     */
    static final double WALK_PATIENCE = 4;
    /** Up to this a cover or housing is taken off before anything larger, minutes. */
    static final double SMALL_JOB_MINUTES = 60;
    /** What a question costs in itself, besides the work of the check: reading, wiping hands, writing down. */
    public static final double ASKING_MINUTES = 3;

    private final AccessTree tree;

    /**
     * @param access every access step by id; each step named as lying inside another must be there
     */
    public PlanChecks(Map<String, AccessStep> access) {
        tree = new AccessTree(access);
    }

    /** The ids of the steps on the way to a place, outermost first, the place itself last. */
    public List<String> wayTo(String place) {
        return tree.wayTo(place).stream().map(AccessStep::id).toList();
    }

    /** Work to open what is not open yet on the way to a place. */
    public double openMinutes(String place, Hands hands) {
        return AccessTree.minutes(tree.closed(place, hands.open()));
    }

    /** Whether something must still be taken apart on the way to a place. */
    public boolean takesApart(String place, Hands hands) {
        return tree.closed(place, hands.open()).stream().anyMatch(AccessStep::teardown);
    }

    /** Whether the way to a place goes on inside something that is apart already. */
    public boolean goesOnInside(String place, Hands hands) {
        List<AccessStep> way = tree.wayTo(place);
        return IntStream.range(1, way.size())
                .anyMatch(i -> !hands.open().contains(way.get(i).id())
                        && hands.open().contains(way.get(i - 1).id())
                        && way.get(i - 1).teardown());
    }

    /** The best visit to make next; empty if there is no check. */
    public Optional<Visit> next(List<Check> checks, double[] bitsInDoubt, Hands hands) {
        return new Round(tree, checks, bitsInDoubt, hands).best();
    }

    /**
     * Visits in the order to be made, until every check is in one; going on in the same place is part of the visit
     * before.
     *
     * @param bitsInDoubt entropy of each cause in question as it stands, bits, in the order of the checks' figures
     */
    public List<Visit> plan(List<Check> checks, double[] bitsInDoubt, Hands hands) {
        List<Visit> visits = new ArrayList<>();
        Round round = new Round(tree, checks, bitsInDoubt, hands);
        for (Optional<Visit> next = round.best(); next.isPresent(); next = round.best()) {
            Visit visit = next.get();
            round.made(visit);
            int last = visits.size() - 1;
            if (last >= 0 && visits.get(last).place().equals(visit.place())) {
                visits.set(last, joined(visits.get(last), visit, bitsInDoubt));
            } else {
                visits.add(visit);
            }
        }
        return List.copyOf(visits);
    }

    private static Visit joined(Visit before, Visit more, double[] bitsInDoubt) {
        List<Check> checks = new ArrayList<>(before.checks());
        checks.addAll(more.checks());
        return new Visit(
                before.place(),
                before.opening(),
                before.openMinutes(),
                checks,
                before.checkMinutes() + more.checkMinutes(),
                new Doubt(bitsInDoubt).addAll(checks));
    }
}
