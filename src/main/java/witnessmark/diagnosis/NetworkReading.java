package witnessmark.diagnosis;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Applies;
import witnessmark.diagnosis.fact.ClassChange;
import witnessmark.diagnosis.fact.NotApplicable;
import witnessmark.diagnosis.fact.OddsChange;
import witnessmark.diagnosis.fact.Settled;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.inference.ExactInference;
import witnessmark.inference.GivenEvidence;
import witnessmark.inference.Link;
import witnessmark.inference.Posterior;
import witnessmark.inference.Report;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.Vocabulary;

/** The premises of one case as the cause network reads them. */
final class NetworkReading {
    private final CauseNetwork network;
    private final Premises premises;
    private final Map<String, Report> likelihoods;
    private final Report unsure;
    private final Report told;
    private final Report notOnPaper;
    private final Map<String, String> toldAgain;
    private final boolean unsureThroughout;
    private final Map<String, String> classes = new HashMap<>();
    private final Map<String, Taken> taken = new LinkedHashMap<>();
    private final Set<String> excludedCauses;
    private final Set<String> excludedFindings;
    private final boolean nothingFound;
    private final boolean[] applying;
    private final boolean[] questioned;
    private final FindingState[] states;
    private final boolean[] findable;
    private final Set<String> settled = new HashSet<>();
    private final Set<String> following = new HashSet<>();
    private final Map<String, String> otherSources;
    private final double[] priors;
    private final ExactInference inference;
    private final GivenEvidence evidence;
    private final Posterior posterior;

    /** @param reckoned findings that were reckoned already, and that nobody has to look for */
    NetworkReading(
            CauseNetwork network,
            Vocabulary vocabulary,
            Premises premises,
            Map<String, Report> likelihoods,
            Set<String> reckoned) {
        this.likelihoods = Map.copyOf(likelihoods);
        this.network = network;
        this.premises = premises;
        this.unsure = new Report(vocabulary.unsureIfPresent(), vocabulary.unsureIfAbsent());
        this.told = new Report(vocabulary.toldIfSo(), vocabulary.toldIfNot());
        this.notOnPaper = new Report(vocabulary.notOnPaperIfSo(), 1);
        network.causes().forEach(cause -> classes.put(cause.id(), cause.classId()));
        for (ClassChange change : premises.classChanges()) {
            classes.put(change.cause(), change.classId());
        }
        premises.taken().forEach(t -> taken.put(t.finding(), t));
        toldAgain = network.countOnce().toldAgain(taken);
        unsureThroughout =
                taken.values().stream().filter(NetworkReading::isUnsure).count() > Thresholds.UNSURE_THAT_WEIGH;
        excludedCauses = excluded(Applies.Subject.CAUSE);
        excludedFindings = excluded(Applies.Subject.FINDING);
        premises.settled().forEach(s -> {
            settled.add(s.finding());
            if (s.state() == FindingState.PRESENT) {
                following.add(s.finding());
            }
        });
        otherSources = findOtherSources();
        states = states();
        findable = findable(reckoned);
        applying = applying();
        boolean[] explaining = explaining();
        nothingFound = IntStream.range(0, explaining.length).noneMatch(c -> explaining[c]);
        questioned = nothingFound ? applying : explaining;
        priors = priors("");
        inference = new ExactInference(network.network().withPriors(priors));
        evidence = evidence();
        posterior = inference.posterior(evidence);
    }

    ExactInference inference() {
        return inference;
    }

    /** The same network with no cause rarer than this: for asking what must be looked at, however seldom it is. */
    ExactInference inferenceNoRarerThan(double least) {
        double[] raised = priors.clone();
        for (int c = 0; c < raised.length; c++) {
            raised[c] = Math.max(raised[c], least);
        }
        return new ExactInference(network.network().withPriors(raised));
    }

    GivenEvidence evidence() {
        Map<Integer, Report> reports = new TreeMap<>();
        for (Taken t : taken.values()) {
            if (counts(t)) {
                reports.put(network.finding(t.finding()), report(t));
            }
        }
        Map<Integer, Boolean> known = new TreeMap<>();
        excludedCauses.forEach(id -> known.put(network.cause(id), false));
        return new GivenEvidence(reports, known);
    }

    /**
     * Whether what was taken enters the reckoning: not what tells a fact again, nor somebody's denial, nor what is unsure
     * where nearly everything is.
     */
    private boolean counts(Taken t) {
        return !toldAgain.containsKey(t.finding()) && !isDenial(t) && !(unsureThroughout && isUnsure(t));
    }

    private static boolean isUnsure(Taken t) {
        return t.state() == FindingState.UNSURE;
    }

    private boolean isDenial(Taken t) {
        return t.state() == FindingState.ABSENT && kind(t.finding()) == Finding.Kind.ACCOUNT;
    }

    Finding.Kind kind(String finding) {
        return network.findings().get(network.finding(finding)).kind();
    }

    /** The finding present that stands for the fact which this one only tells again. */
    Optional<String> standsFor(String finding) {
        return Optional.ofNullable(toldAgain.get(finding));
    }

    /** Whether it was found, for certain. */
    boolean isPresent(String finding) {
        return stateOf(finding) == FindingState.PRESENT;
    }

    /** Whether it was looked at and found sound, for certain. */
    boolean isAbsent(String finding) {
        return stateOf(finding) == FindingState.ABSENT;
    }

    private FindingState stateOf(String finding) {
        Taken t = taken.get(finding);
        return t == null ? FindingState.NOT_LOOKED_AT : t.state();
    }

    /** How the finding of this index is taken; not looked at if it is not. */
    FindingState state(int finding) {
        return states[finding];
    }

    double probability(String cause) {
        return probability(network.cause(cause));
    }

    double probability(int cause) {
        return posterior.of(cause);
    }

    /** Chance of the cause before the findings, what the rules changed counted in. */
    double prior(int cause) {
        return priors[cause];
    }

    String classOf(String cause) {
        return classes.get(cause);
    }

    /** Whether the cause of this index fits the gearbox. */
    boolean applies(int cause) {
        return applying[cause];
    }

    boolean applies(String cause) {
        return !excludedCauses.contains(cause);
    }

    /**
     * Whether the cause could explain something that was found. One that explains nothing stays at its prior, says
     * nothing about this gearbox, and is left out of ranking, attribution and next checks. Before anything was found
     * every cause is in question.
     */
    boolean isInQuestion(String cause) {
        return isInQuestion(network.cause(cause));
    }

    boolean isInQuestion(int cause) {
        return questioned[cause];
    }

    /** The first of the causes in question, by index; 0 if this gearbox can have none. */
    int firstInQuestion() {
        return IntStream.range(0, questioned.length)
                .filter(this::isInQuestion)
                .findFirst()
                .orElse(0);
    }

    /** Whether nothing was found that any cause could explain. */
    boolean nothingFound() {
        return nothingFound;
    }

    /** Whether the finding's state follows from another one, so that asking for it would be pointless. */
    boolean isSettled(String finding) {
        return settled.contains(finding);
    }

    /** Whether it was not reported and no other answer settles it; one learnt from another source is asked all the same. */
    boolean isToBeAsked(String finding) {
        return !taken().containsKey(finding)
                && (!isSettled(finding) || otherSourceFor(finding).isPresent());
    }

    /** Whether the finding is there because another is, so that asking for it would be asking again. */
    boolean follows(String finding) {
        return following.contains(finding);
    }

    /** Whether the finding cannot be there beside what is. */
    boolean isExcluded(String finding) {
        return settled.contains(finding) && !following.contains(finding);
    }

    /** The finding on record that this one, not looked at yet, could unsettle: it would be learnt from another source. */
    Optional<String> otherSourceFor(String finding) {
        return Optional.ofNullable(otherSources.get(finding));
    }

    /** The findings, not looked at yet, that another source than the one on record could say. */
    Set<String> otherSources() {
        return otherSources.keySet();
    }

    /** What is settled but could be learnt otherwise; and how a check was made, on whose sign something rests. */
    private Map<String, String> findOtherSources() {
        Map<String, String> by = new LinkedHashMap<>();
        premises.settled().stream().filter(Settled::otherSource).forEach(s -> by.putIfAbsent(s.finding(), s.by()));
        taken.values().stream()
                .filter(t -> t.state() == FindingState.PRESENT)
                .forEach(t -> network.findings().get(network.finding(t.finding())).needs().stream()
                        .filter(condition -> !taken.containsKey(condition))
                        .forEach(condition -> by.putIfAbsent(condition, t.finding())));
        return by;
    }

    /** Whether looking at the finding could tell anything of a cause in question. */
    boolean touchesQuestion(int finding) {
        for (Link link : network.network().links(finding)) {
            if (questioned[link.cause()]) {
                return true;
            }
        }
        return false;
    }

    /** Whether it can be looked for: this gearbox has it, nothing done has taken it away, and it was not reckoned already. */
    boolean canBeFound(String finding) {
        return canBeFound(network.finding(finding));
    }

    boolean canBeFound(int finding) {
        return findable[finding];
    }

    Map<String, Taken> taken() {
        return taken;
    }

    Premises premises() {
        return premises;
    }

    CauseNetwork network() {
        return network;
    }

    /** Chance of at least one cause of the class among those in question. */
    double classProbability(String classId) {
        Set<Integer> members = membersInQuestion(classId);
        return members.isEmpty() ? 0 : inference.anyOf(members, evidence);
    }

    /** The causes of the class that are in question, by index. */
    Set<Integer> membersInQuestion(String classId) {
        return IntStream.range(0, questioned.length)
                .filter(c -> questioned[c]
                        && classes.get(network.causes().get(c).id()).equals(classId))
                .boxed()
                .collect(Collectors.toSet());
    }

    /** Chance of at least one of these causes, had this finding not been looked at. */
    double without(String finding, Set<Integer> members) {
        return inferenceWithout(finding).anyOf(members, evidence.without(network.finding(finding)));
    }

    /** Chance of each cause, by index, had this finding not been looked at: its report and its rules left out. */
    double[] without(String finding) {
        return inferenceWithout(finding)
                .posterior(evidence.without(network.finding(finding)))
                .causes();
    }

    private ExactInference inferenceWithout(String finding) {
        return changesOdds(finding) ? new ExactInference(network.network().withPriors(priors(finding))) : inference;
    }

    /** Whether a rule changed odds because of this finding. */
    boolean changesOdds(String finding) {
        return oddsChanges().anyMatch(c -> c.finding().equals(finding));
    }

    /** What rules changed, but for what a finding would change that only tells a fact again. */
    Stream<OddsChange> oddsChanges() {
        return premises.oddsChanges().stream().filter(c -> !toldAgain.containsKey(c.finding()));
    }

    private double[] priors(String leftOut) {
        double[] priors = network.odds().clone();
        oddsChanges().filter(c -> !c.finding().equals(leftOut)).forEach(change -> {
            for (int c : concerned(change)) {
                priors[c] *= change.factor();
            }
        });
        for (int c = 0; c < priors.length; c++) {
            priors[c] = priors[c] / (1 + priors[c]);
        }
        return priors;
    }

    /** Whose a cause is here does not make it likelier: a class is meant as the cause has it by itself. */
    private int[] concerned(OddsChange change) {
        return switch (change.kind()) {
            case CAUSE -> new int[] {network.cause(change.target())};
            case CLASS -> network.ofClass(change.target());
        };
    }

    private FindingState[] states() {
        FindingState[] states = new FindingState[network.findings().size()];
        Arrays.fill(states, FindingState.NOT_LOOKED_AT);
        taken.forEach((finding, t) -> states[network.finding(finding)] = t.state());
        return states;
    }

    private boolean[] findable(Set<String> reckoned) {
        boolean[] findable = new boolean[states.length];
        for (int f = 0; f < states.length; f++) {
            String id = network.findings().get(f).id();
            findable[f] = !excludedFindings.contains(id) && !reckoned.contains(id);
        }
        for (int f = 0; f < states.length; f++) {
            if (states[f] == FindingState.PRESENT) {
                network.spoils(f).forEach(spoiled -> findable[spoiled] = false);
            }
        }
        return findable;
    }

    /** By cause index, whether the cause fits this gearbox. */
    private boolean[] applying() {
        boolean[] applying = new boolean[network.causes().size()];
        Arrays.fill(applying, true);
        excludedCauses.forEach(id -> applying[network.cause(id)] = false);
        return applying;
    }

    /** By cause index, whether it fits this gearbox and leaves something that was found. */
    private boolean[] explaining() {
        boolean[] explaining = new boolean[applying.length];
        taken.values().stream()
                .filter(t -> t.state() != FindingState.ABSENT && counts(t))
                .flatMap(t -> network.network().links(network.finding(t.finding())).stream())
                .forEach(link -> explaining[link.cause()] = applying[link.cause()]);
        return explaining;
    }

    private Report report(Taken t) {
        if (t.isAsReported() && likelihoods.containsKey(t.finding())) {
            return likelihoods.get(t.finding());
        }
        Finding.Kind kind = kind(t.finding());
        return switch (t.state()) {
            case PRESENT -> kind == Finding.Kind.ACCOUNT ? told : Report.PRESENT;
            case ABSENT -> kind == Finding.Kind.PAPER ? notOnPaper : Report.ABSENT;
            case UNSURE -> unsure;
            case NOT_LOOKED_AT -> throw new IllegalStateException(t.finding() + " is taken and was not looked at");
        };
    }

    private Set<String> excluded(Applies.Subject subject) {
        return premises.notApplicable().stream()
                .filter(n -> n.subject() == subject)
                .map(NotApplicable::id)
                .collect(Collectors.toSet());
    }
}
