package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import witnessmark.inference.Link;
import witnessmark.inference.Network;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.LookAlike;

/** The knowledge base as a network of numbered causes and findings. */
final class CauseNetwork {
    private static final int[] NONE = {};

    private final List<Cause> causes;
    private final List<Finding> findings;
    private final Map<String, Integer> causeIndex = new HashMap<>();
    private final Map<String, Integer> findingIndex = new HashMap<>();
    private final int[][] linkedFindings;
    private final List<List<Integer>> spoils = new ArrayList<>();
    private final Network network;
    private final double[] odds;
    private final Map<String, int[]> ofClass = new HashMap<>();
    private final CountOnce countOnce;
    private final Map<String, Map<String, LookAlike>> pairs = new HashMap<>();

    private final List<List<Rival>> rivals;

    /** A look-alike of a cause, and the pair that they are. */
    record Rival(int other, LookAlike pair) {}

    CauseNetwork(KnowledgeBase knowledge) {
        countOnce = new CountOnce(knowledge.oneFacts(), knowledge.neverTogether());
        knowledge.lookAlikes().forEach(pair -> {
            pairsOf(pair.first()).putIfAbsent(pair.second(), pair);
            pairsOf(pair.second()).putIfAbsent(pair.first(), pair);
        });
        causes = List.copyOf(knowledge.causes().values());
        findings = List.copyOf(knowledge.findings().values());
        for (int f = 0; f < findings.size(); f++) {
            findingIndex.put(findings.get(f).id(), f);
        }
        findings.forEach(f -> spoils.add(new ArrayList<>()));
        Spoilers spoilers = new Spoilers(knowledge);
        findings.forEach(f -> spoilers.of(f.id()).stream()
                .filter(s -> !s.soundOnly())
                .forEach(s -> spoils.get(finding(s.spoiler())).add(finding(f.id()))));
        List<List<Link>> links = new ArrayList<>();
        findings.forEach(f -> links.add(new ArrayList<>()));
        linkedFindings = new int[causes.size()][];
        double[] priors = new double[causes.size()];
        for (int c = 0; c < causes.size(); c++) {
            Cause cause = causes.get(c);
            causeIndex.put(cause.id(), c);
            priors[c] = cause.prior();
            linkedFindings[c] =
                    cause.links().stream().mapToInt(l -> finding(l.finding())).toArray();
            for (Cause.Link link : cause.links()) {
                links.get(finding(link.finding())).add(new Link(c, link.strength()));
            }
        }
        network = new Network(
                priors, findings.stream().mapToDouble(Finding::background).toArray(), links);
        rivals = causes.stream().map(this::rivalsOf).toList();
        odds = Arrays.stream(priors).map(Thresholds::odds).toArray();
        causes.forEach(cause -> ofClass.computeIfAbsent(cause.classId(), this::indexesOfClass));
    }

    private int[] indexesOfClass(String classId) {
        return IntStream.range(0, causes.size())
                .filter(c -> causes.get(c).classId().equals(classId))
                .toArray();
    }

    /** By cause index, its odds before anything is known; shared, not to be changed. */
    double[] odds() {
        return odds;
    }

    /** The causes that are of the class by themselves, by index; shared, not to be changed. */
    int[] ofClass(String classId) {
        return ofClass.getOrDefault(classId, NONE);
    }

    Network network() {
        return network;
    }

    private Map<String, LookAlike> pairsOf(String cause) {
        return pairs.computeIfAbsent(cause, key -> new HashMap<>());
    }

    private List<Rival> rivalsOf(Cause cause) {
        return pairs.getOrDefault(cause.id(), Map.of()).values().stream()
                .map(pair -> new Rival(cause(pair.other(cause.id())), pair))
                .toList();
    }

    /** The look-alikes of a cause. */
    List<Rival> rivals(int cause) {
        return rivals.get(cause);
    }

    /** The pair of look-alikes that two causes are; empty if they are none. */
    Optional<LookAlike> pair(String cause, String other) {
        return Optional.ofNullable(pairs.getOrDefault(cause, Map.of()).get(other));
    }

    CountOnce countOnce() {
        return countOnce;
    }

    List<Cause> causes() {
        return causes;
    }

    List<Finding> findings() {
        return findings;
    }

    /** The findings that the cause leaves, by index, in the order of its links; shared, not to be changed. */
    int[] linkedFindings(int cause) {
        return linkedFindings[cause];
    }

    /** The findings that cannot be looked for any more where this one is present, by index. */
    List<Integer> spoils(int finding) {
        return spoils.get(finding);
    }

    int cause(String id) {
        return causeIndex.get(id);
    }

    int finding(String id) {
        return findingIndex.get(id);
    }
}
