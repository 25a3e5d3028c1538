package witnessmark.inference;

import java.util.Arrays;

/**
 * The textbook sum over subsets of the present findings (Heckerman's Quickscore, 1989), in doubles: terms of alternating
 * sign that cancel. Here to show why the program goes another way.
 */
final class InclusionExclusion {
    private InclusionExclusion() {}

    /** Posterior of each cause when the given findings are present and nothing else is known. */
    static double[] posterior(Network network, int[] present) {
        int causes = network.causes();
        var both = new double[causes];
        double evidence = 0;
        for (int subset = 0; subset < 1 << present.length; subset++) {
            var unexplained = new double[causes];
            Arrays.fill(unexplained, 1);
            double term = Integer.bitCount(subset) % 2 == 0 ? 1 : -1;
            for (int i = 0; i < present.length; i++) {
                if ((subset >> i & 1) == 1) {
                    term *= 1 - network.background(present[i]);
                    network.links(present[i]).forEach(link -> unexplained[link.cause()] *= 1 - link.strength());
                }
            }
            for (int c = 0; c < causes; c++) {
                term *= 1 - network.prior(c) + network.prior(c) * unexplained[c];
            }
            evidence += term;
            for (int c = 0; c < causes; c++) {
                double presentShare = network.prior(c) * unexplained[c];
                both[c] += term * presentShare / (1 - network.prior(c) + presentShare);
            }
        }
        double total = evidence;
        return Arrays.stream(both).map(b -> b / total).toArray();
    }
}
