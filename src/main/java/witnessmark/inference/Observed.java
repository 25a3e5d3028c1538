package witnessmark.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Evidence laid out by index and checked against its network. A finding is <em>open</em> when its report leaves it
 * possibly present with some weight: those need tables; findings reported absent only reweigh their causes.
 */
final class Observed {
    enum Kind {
        NOTHING,
        ABSENT,
        OPEN
    }

    enum State {
        FREE,
        PRESENT,
        ABSENT
    }

    final Network network;
    private final Kind[] kinds;
    private final State[] states;
    private final double[] logIfPresent;
    private final double[] logIfAbsent;
    private final int[] reported;
    private final int[] open;

    /**
     * @throws IllegalArgumentException with one line for each index that the network does not have
     */
    Observed(Network network, GivenEvidence evidence) {
        this.network = network;
        refuseUnknown(evidence);
        kinds = new Kind[network.findings()];
        logIfPresent = new double[network.findings()];
        logIfAbsent = new double[network.findings()];
        Arrays.fill(kinds, Kind.NOTHING);
        evidence.reports().forEach(this::note);
        reported =
                evidence.reports().keySet().stream().mapToInt(Integer::intValue).toArray();
        open = IntStream.of(reported).filter(f -> kinds[f] == Kind.OPEN).toArray();
        states = new State[network.causes()];
        for (int c = 0; c < states.length; c++) {
            states[c] = stateByItself(network.prior(c));
        }
        evidence.knownCauses().forEach((c, present) -> states[c] = present ? State.PRESENT : State.ABSENT);
    }

    Kind kind(int finding) {
        return kinds[finding];
    }

    /** Whether a report leaves both possible, the finding there and not there, with unequal weight. */
    boolean isUnsure(int finding) {
        return kinds[finding] == Kind.OPEN && logIfAbsent[finding] > Double.NEGATIVE_INFINITY;
    }

    /** Whether a report says for certain that the finding is there or not. */
    boolean isCertain(int finding) {
        return kinds[finding] != Kind.NOTHING && !isUnsure(finding);
    }

    State state(int cause) {
        return states[cause];
    }

    /** The states of all causes; shared, not to be changed. */
    State[] states() {
        return states;
    }

    boolean isFree(int cause) {
        return states[cause] == State.FREE;
    }

    /** Findings with a report, whether it carries something or not, in ascending order; shared, not to be changed. */
    int[] reported() {
        return reported;
    }

    /** Open findings in ascending order; shared, not to be changed. */
    int[] open() {
        return open;
    }

    /** The vertex of an open finding in the tables: causes come first. */
    int vertexOf(int finding) {
        return network.causes() + Arrays.binarySearch(open, finding);
    }

    /** Those of the causes that are linked to a finding and free. */
    int[] freeLinked(int finding) {
        return Arrays.stream(network.linkedCauses(finding)).filter(this::isFree).toArray();
    }

    double logIfPresent(int finding) {
        return logIfPresent[finding];
    }

    double logIfAbsent(int finding) {
        return logIfAbsent[finding];
    }

    /** Findings with a report that carries something. */
    int[] telling() {
        return IntStream.of(reported).filter(f -> kinds[f] != Kind.NOTHING).toArray();
    }

    private void note(int finding, Report report) {
        logIfPresent[finding] = Math.log(report.ifPresent());
        logIfAbsent[finding] = Math.log(report.ifAbsent());
        if (!report.isVacuous()) {
            kinds[finding] = report.ifPresent() == 0 ? Kind.ABSENT : Kind.OPEN;
        }
    }

    /** The state of a cause of which nothing is known. */
    private static State stateByItself(double prior) {
        if (prior == 0) {
            return State.ABSENT;
        }
        return prior == 1 ? State.PRESENT : State.FREE;
    }

    private void refuseUnknown(GivenEvidence evidence) {
        List<String> faults = new ArrayList<>();
        for (int f : evidence.reports().keySet()) {
            if (f < 0 || f >= network.findings()) {
                faults.add("report on finding " + f + ": there are " + network.findings() + " findings, from index 0.");
            }
        }
        for (int c : evidence.knownCauses().keySet()) {
            if (c < 0 || c >= network.causes()) {
                faults.add("known cause " + c + ": there are " + network.causes() + " causes, from index 0.");
            }
        }
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("\n", faults));
        }
    }
}
