package witnessmark.inference;

import java.util.Set;

/** Chance that at least one of several causes is present. */
final class AnyOf {
    private final Solved solved;
    private final int[] free;
    private final int[] parts;
    private final Sweep sweep;
    private final boolean certain;

    AnyOf(Solved solved, Set<Integer> causes) {
        this.solved = solved;
        certain = causes.stream().anyMatch(c -> solved.observed.state(c) == Observed.State.PRESENT);
        free = causes.stream()
                .filter(solved.observed::isFree)
                .mapToInt(Integer::intValue)
                .sorted()
                .toArray();
        parts = solved.partsOf(free);
        sweep = solved.sweep();
    }

    double chance() {
        if (certain) {
            return 1;
        }
        var none = solved.factors.copy();
        for (int c : free) {
            none.ruleOut(c, 1);
        }
        double chance = -Math.expm1(solved.logRatio(none, parts, sweep));
        return chance >= Solved.LEAST_FOR_COMPLEMENT ? chance : summed();
    }

    /** The first is present; or the second and not the first; and so on. */
    private double summed() {
        double sum = 0;
        var earlierAbsent = solved.factors.copy();
        for (int c : free) {
            var thisPresent = earlierAbsent.copy();
            thisPresent.ruleOut(c, 0);
            sum += Math.exp(solved.logRatio(thisPresent, parts, sweep));
            earlierAbsent.ruleOut(c, 1);
        }
        return sum;
    }
}
