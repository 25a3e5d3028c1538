package witnessmark.planner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import witnessmark.knowledge.AccessStep;

/** One planning: which checks are left, where, and what is open by now. */
final class Round {
    private static final Comparator<Check> BEST_FIRST =
            Comparator.comparingDouble((Check c) -> -rate(c)).thenComparing(Check::id);

    private final AccessTree tree;
    private final double[] bitsInDoubt;
    private final Map<String, List<Check>> byPlace = new LinkedHashMap<>();
    private final Map<String, Option> worked = new HashMap<>();
    private final Set<String> open;
    private final Set<String> left;
    private Optional<String> at;

    /** A visit that could be made, with the tier it stands in. */
    private record Option(Visit visit, int tier) {}

    Round(AccessTree tree, List<Check> checks, double[] bitsInDoubt, Hands hands) {
        this.tree = tree;
        this.bitsInDoubt = bitsInDoubt;
        open = new HashSet<>(hands.open());
        at = hands.at();
        left = new HashSet<>(hands.left());
        checks.stream().sorted(BEST_FIRST).forEach(c -> byPlace.computeIfAbsent(c.place(), p -> new ArrayList<>())
                .add(c));
    }

    /** The visit to make next, in the order of the walk; empty if no check is left. */
    Optional<Visit> best() {
        List<Option> options = new ArrayList<>();
        byPlace.keySet().forEach(place -> options.add(worked.computeIfAbsent(place, this::option)));
        @Nullable Option best = null;
        for (Option option : options) {
            best = best == null || isBefore(option, best) ? option : best;
        }
        return best == null ? Optional.empty() : Optional.of(inWalk(best, options));
    }

    /** Where the hands are if that is best, else the first place of the walk that is not left yet and worth going to. */
    private Visit inWalk(Option best, List<Option> options) {
        if (isHere(best.visit())) {
            return best.visit();
        }
        return options.stream()
                .filter(o -> o.tier() == best.tier())
                .map(Option::visit)
                .filter(v -> standing(v) * PlanChecks.WALK_PATIENCE >= standing(best.visit()))
                .filter(v -> !left.contains(v.place()) && !isHere(v))
                .min(Comparator.comparingInt(v -> tree.walk(v.place())))
                .orElse(best.visit());
    }

    private boolean isHere(Visit visit) {
        return at.isPresent() && at.get().equals(visit.place());
    }

    void made(Visit visit) {
        at.ifPresent(left::add);
        at = Optional.of(visit.place());
        left.remove(visit.place());
        for (Check check : visit.checks()) {
            List<Check> left = byPlace.get(check.place());
            left.removeIf(other -> other.id().equals(check.id()));
            if (left.isEmpty()) {
                byPlace.remove(check.place());
            }
        }
        open.addAll(visit.opening());
        // Other visits change only with what they too would have had to open: their checks lie there or in their place.
        worked.remove(visit.place());
        worked.values().removeIf(o -> o.visit().opening().stream().anyMatch(visit.opening()::contains));
    }

    private Option option(String place) {
        Visit visit = visit(place);
        return new Option(visit, tier(visit));
    }

    private boolean isBefore(Option one, Option other) {
        int order = Integer.compare(one.tier(), other.tier());
        return order != 0 ? order < 0 : standing(one.visit()) > standing(other.visit());
    }

    private double standing(Visit visit) {
        return isHere(visit) ? PlanChecks.CLEARLY_BETTER * visit.rate() : visit.rate();
    }

    private int tier(Visit visit) {
        if (visit.checks().stream().allMatch(c -> c.bits() < PlanChecks.TRIFLE_BITS)) {
            return 3;
        }
        if (visit.opening().stream().noneMatch(tree::isTeardown)) {
            return 0;
        }
        return visit.openMinutes() <= PlanChecks.SMALL_JOB_MINUTES ? 1 : 2;
    }

    /** The run of checks that makes the most of opening the way to the place: it grows while that raises the rate. */
    private Visit visit(String place) {
        List<AccessStep> opening = tree.closed(place, open);
        List<Check> pool = new ArrayList<>(byPlace.get(place));
        opening.stream()
                .filter(step -> !step.id().equals(place))
                .forEach(step -> pool.addAll(byPlace.getOrDefault(step.id(), List.of())));
        pool.sort(BEST_FIRST);
        Doubt doubt = new Doubt(bitsInDoubt);
        int taken = 0;
        double minutes = AccessTree.minutes(opening);
        double rate = -1;
        for (Check check : pool) {
            minutes += PlanChecks.ASKING_MINUTES + check.minutes();
            double grown = doubt.add(check) / minutes;
            if (grown <= rate) {
                break;
            }
            rate = grown;
            taken++;
        }
        return visit(place, opening, pool.subList(0, taken));
    }

    /** With the checks in the order the hands come to them: outer step first, then best first. */
    private Visit visit(String place, List<AccessStep> opening, List<Check> checks) {
        List<Check> ordered = new ArrayList<>(checks);
        ordered.sort(Comparator.comparingInt((Check c) -> tree.depth(c.place())).thenComparing(BEST_FIRST));
        return new Visit(
                place,
                opening.stream().map(AccessStep::id).toList(),
                AccessTree.minutes(opening),
                ordered,
                ordered.stream().mapToDouble(Check::minutes).sum(),
                new Doubt(bitsInDoubt).addAll(ordered));
    }

    private static double rate(Check check) {
        return check.bits() / (PlanChecks.ASKING_MINUTES + check.minutes());
    }
}
