package witnessmark.inference;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * The answers by the definition, in numbers of 60 digits or as many as asked: every set of causes is weighed and the weights are summed. Only
 * for networks of few causes.
 */
final class Enumeration {
    private final Network network;
    private final MathContext digits;
    private final BigDecimal[] weightOfSet;

    Enumeration(Network network, GivenEvidence evidence) {
        this(network, evidence, 60);
    }

    Enumeration(Network network, GivenEvidence evidence, int digits) {
        this.digits = new MathContext(digits);
        this.network = network;
        weightOfSet = new BigDecimal[1 << network.causes()];
        for (int set = 0; set < weightOfSet.length; set++) {
            weightOfSet[set] = weight(set, evidence);
        }
    }

    BigDecimal chanceOfEvidence() {
        return sum(set -> true);
    }

    double logEvidence() {
        return logarithm(chanceOfEvidence());
    }

    double chanceOf(int cause) {
        return share(set -> has(set, cause)).doubleValue();
    }

    double chanceOfAny(Set<Integer> causes) {
        return share(set -> causes.stream().anyMatch(c -> has(set, c))).doubleValue();
    }

    /** ln of odds, minus or plus infinity where a cause is ruled out or certain. */
    double logOdds(int cause) {
        var present = sum(set -> has(set, cause));
        var absent = sum(set -> !has(set, cause));
        if (present.signum() == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        if (absent.signum() == 0) {
            return Double.POSITIVE_INFINITY;
        }
        return logarithm(present.divide(absent, digits));
    }

    /** H(set of causes), bits. */
    double entropyOfSets() {
        double entropy = 0;
        var total = chanceOfEvidence();
        for (var weight : weightOfSet) {
            double share = weight.divide(total, digits).doubleValue();
            entropy -= share > 0 ? share * Math.log(share) / Math.log(2) : 0;
        }
        return entropy;
    }

    private static double logarithm(BigDecimal value) {
        int magnitude = value.precision() - value.scale();
        return Math.log(value.movePointLeft(magnitude).doubleValue()) + magnitude * Math.log(10);
    }

    private BigDecimal share(IntPredicate sets) {
        return sum(sets).divide(chanceOfEvidence(), digits);
    }

    private BigDecimal sum(IntPredicate sets) {
        var sum = BigDecimal.ZERO;
        for (int set = 0; set < weightOfSet.length; set++) {
            if (sets.test(set)) {
                sum = sum.add(weightOfSet[set], digits);
            }
        }
        return sum;
    }

    private BigDecimal weight(int set, GivenEvidence evidence) {
        var weight = BigDecimal.ONE;
        for (int c = 0; c < network.causes(); c++) {
            if (has(set, c) == !evidence.knownCauses().getOrDefault(c, has(set, c))) {
                return BigDecimal.ZERO;
            }
            var prior = new BigDecimal(network.prior(c));
            weight = weight.multiply(has(set, c) ? prior : BigDecimal.ONE.subtract(prior), digits);
        }
        for (var report : evidence.reports().entrySet()) {
            var absent = chanceOfAbsent(report.getKey(), set);
            var likelihood = new BigDecimal(report.getValue().ifPresent())
                    .multiply(BigDecimal.ONE.subtract(absent), digits)
                    .add(new BigDecimal(report.getValue().ifAbsent()).multiply(absent, digits), digits);
            weight = weight.multiply(likelihood, digits);
        }
        return weight;
    }

    private BigDecimal chanceOfAbsent(int finding, int set) {
        var absent = BigDecimal.ONE.subtract(new BigDecimal(network.background(finding)));
        for (var link : network.links(finding)) {
            if (has(set, link.cause())) {
                absent = absent.multiply(BigDecimal.ONE.subtract(new BigDecimal(link.strength())), digits);
            }
        }
        return absent;
    }

    private static boolean has(int set, int cause) {
        return (set >> cause & 1) == 1;
    }
}
