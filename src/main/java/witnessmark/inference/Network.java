package witnessmark.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A two-layer noisy-OR network: independent causes, and findings that any linked cause or a background can produce.
 *
 * <pre>P(finding | causes) = 1 - (1 - background) * product over present causes of (1 - strength)</pre>
 *
 * Causes and findings are indices from 0. Immutable.
 */
public final class Network {
    private final double[] priors;
    private final double[] backgrounds;
    private final List<List<Link>> links;
    private final int[][] linkedCauses;
    private final double[][] strengths;
    private final double[][] logFailures;
    private final double[] logNoBackground;
    private final double[] logPresent;
    private final double[] logAbsent;
    /** By cause, the part of a plan that it is where nothing open is linked to it. */
    private final Plan.Part[] alone;

    /**
     * A network of {@code priors.length} causes and {@code backgrounds.length} findings; either may be 0.
     *
     * @param priors chance of each cause before anything is reported
     * @param backgrounds chance of each finding with no cause present
     * @param linksOfFinding for each finding the causes that can produce it; a finding may have none
     * @throws IllegalArgumentException with one line for each value out of range, cause unknown or linked twice
     */
    public Network(double[] priors, double[] backgrounds, List<List<Link>> linksOfFinding) {
        this.priors = priors.clone();
        this.backgrounds = backgrounds.clone();
        this.links = linksOfFinding.stream().map(List::copyOf).toList();
        refuseIfFaulty();
        linkedCauses = new int[backgrounds.length][];
        strengths = new double[backgrounds.length][];
        logFailures = new double[backgrounds.length][];
        for (int f = 0; f < backgrounds.length; f++) {
            linkedCauses[f] = links.get(f).stream().mapToInt(Link::cause).toArray();
            strengths[f] = links.get(f).stream().mapToDouble(Link::strength).toArray();
            logFailures[f] = logsOfComplement(strengths[f]);
        }
        logNoBackground = logsOfComplement(backgrounds);
        logPresent = Arrays.stream(priors).map(Math::log).toArray();
        logAbsent = logsOfComplement(priors);
        alone = IntStream.range(0, priors.length).mapToObj(Plan::alone).toArray(Plan.Part[]::new);
    }

    private Network(Network like, double[] priors) {
        this.priors = priors.clone();
        backgrounds = like.backgrounds;
        links = like.links;
        linkedCauses = like.linkedCauses;
        strengths = like.strengths;
        logFailures = like.logFailures;
        logNoBackground = like.logNoBackground;
        alone = like.alone;
        refuse(improbable("prior of cause", priors));
        logPresent = Arrays.stream(priors).map(Math::log).toArray();
        logAbsent = logsOfComplement(priors);
    }

    public int causes() {
        return priors.length;
    }

    public int findings() {
        return backgrounds.length;
    }

    public double prior(int cause) {
        return priors[cause];
    }

    public double background(int finding) {
        return backgrounds[finding];
    }

    public List<Link> links(int finding) {
        return links.get(finding);
    }

    /**
     * The same links and backgrounds with other priors.
     *
     * @throws IllegalArgumentException if there is not one probability for each cause
     */
    public Network withPriors(double[] priors) {
        if (priors.length != causes()) {
            throw new IllegalArgumentException(
                    priors.length + " priors for " + causes() + " causes: give one for each cause.");
        }
        return new Network(this, priors);
    }

    /** The causes linked to a finding, in the order of its links; shared, not to be changed. */
    int[] linkedCauses(int finding) {
        return linkedCauses[finding];
    }

    /** The strengths that go with {@link #linkedCauses}; shared, not to be changed. */
    double[] strengths(int finding) {
        return strengths[finding];
    }

    /** ln of the chance that each link of {@link #linkedCauses} fails to act; shared, not to be changed. */
    double[] logFailures(int finding) {
        return logFailures[finding];
    }

    /** ln of the chance that the background does not produce a finding. */
    double logNoBackground(int finding) {
        return logNoBackground[finding];
    }

    /** ln of the prior of a cause. */
    double logPresent(int cause) {
        return logPresent[cause];
    }

    /** ln of the chance beforehand that a cause is absent. */
    double logAbsent(int cause) {
        return logAbsent[cause];
    }

    /** The part of a plan that the cause is by itself; shared. */
    Plan.Part alone(int cause) {
        return alone[cause];
    }

    private static double[] logsOfComplement(double[] chances) {
        return Arrays.stream(chances).map(p -> Math.log1p(-p)).toArray();
    }

    private void refuseIfFaulty() {
        var faults = new ArrayList<String>(improbable("prior of cause", priors));
        faults.addAll(improbable("background of finding", backgrounds));
        if (links.size() != backgrounds.length) {
            faults.add(links.size() + " lists of links for " + backgrounds.length
                    + " findings: give one list for each finding.");
        }
        for (int f = 0; f < links.size(); f++) {
            collectBadLinks(f, faults);
        }
        refuse(faults);
    }

    private static void refuse(List<String> faults) {
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("\n", faults));
        }
    }

    private static List<String> improbable(String what, double[] values) {
        var faults = new ArrayList<String>();
        for (int i = 0; i < values.length; i++) {
            if (!(values[i] >= 0 && values[i] <= 1)) {
                faults.add(what + " " + i + " is " + values[i] + ": give a probability from 0 to 1.");
            }
        }
        return faults;
    }

    private void collectBadLinks(int finding, List<String> faults) {
        var seen = new HashSet<Integer>();
        for (var link : links.get(finding)) {
            if (link.cause() >= priors.length) {
                faults.add("finding " + finding + " is linked to cause " + link.cause() + ": there are " + priors.length
                        + " causes, from index 0.");
            }
            if (!seen.add(link.cause())) {
                faults.add("finding " + finding + " is linked twice to cause " + link.cause() + ": keep one link.");
            }
        }
    }
}
