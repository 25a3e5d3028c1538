package witnessmark.planner;

import java.util.List;

/**
 * What several checks are worth together. Each takes its share of the doubt that the ones before left about a cause, as
 * if they told of it independently; so the sum is never more than what is in doubt, and a second check of the same
 * thing is worth less than the first. An estimate: the exact figure would need every combination of answers.
 */
final class Doubt {
    private final double[] bitsInDoubt;
    private final double[] left;
    private double bits;

    /**
     * @param bitsInDoubt entropy of each cause as it stands, bits
     */
    Doubt(double[] bitsInDoubt) {
        this.bitsInDoubt = bitsInDoubt;
        left = bitsInDoubt.clone();
    }

    /** Adds checks; the bits of all so far. */
    double addAll(List<Check> checks) {
        checks.forEach(this::add);
        return bits;
    }

    /** Adds a check; the bits of all so far. */
    double add(Check check) {
        double[] byCause = check.bitsByCause();
        for (int i = 0; i < byCause.length; i++) {
            int c = check.causes()[i];
            if (byCause[i] > 0 && bitsInDoubt[c] > 0) {
                double taken = left[c] * Math.min(1, byCause[i] / bitsInDoubt[c]);
                left[c] -= taken;
                bits += taken;
            }
        }
        bits += check.release();
        return bits;
    }
}
