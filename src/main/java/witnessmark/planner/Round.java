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
    private final Map<String, Visit> worked = new HashMap<>();
    private final Set<String> open;
    private final Set<String> left;
    private Optional<String> at;

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
        List<Visit> visits = new ArrayList<>();
        byPlace.keySet().forEach(place -> visits.add(worked.computeIfAbsent(place, this::visit)));
        @Nullable Visit best = null;
        for (Visit visit : visits) {
            best = best == null || isBefore(visit, best) ? visit : best;
        }
        return best == null ? Optional.empty() : Optional.of(inWalk(best, visits));
    }

    /** Where the hands are if that is best, else the first place of the walk that is not left yet and worth going to. */
    private Visit inWalk(Visit best, List<Visit> visits) {
        if (isHere(best)) {
            return best;
        }
        int tier = tier(best);
        return visits.stream()
                .filter(v -> tier(v) == tier && standing(v) * PlanChecks.WALK_PATIENCE >= standing(best))
                .filter(v -> !left.contains(v.place()) && !isHere(v))
                .min(Comparator.comparingInt(v -> tree.walk(v.place())))
                .orElse(best);
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
            left.remove(check);
            if (left.isEmpty()) {
                byPlace.remove(check.place());
            }
        }
        boolean opened = false;
        for (AccessStep step : tree.wayTo(visit.place())) {
            opened |= open.add(step.id());
        }
        if (opened) {
            worked.clear();
        } else {
            worked.remove(visit.place());
        }
    }

    private boolean isBefore(Visit one, Visit other) {
        int order = Integer.compare(tier(one), tier(other));
        return order != 0 ? order < 0 : standing(one) > standing(other);
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
