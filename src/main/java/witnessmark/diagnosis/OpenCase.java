package witnessmark.diagnosis;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.diagnosis.fact.Compared;
import witnessmark.diagnosis.fact.GearSaid;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.diagnosis.fact.ThinLog;
import witnessmark.inference.Report;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.planner.Hands;

/** A case under judgement: findings can be set and withdrawn, and the judgement follows. Not for several threads. */
public final class OpenCase implements AutoCloseable {
    private final String id;
    private final RuleSession session;
    private final CauseNetwork network;
    private final KnowledgeBase knowledge;
    private final Map<String, Report> likelihoods = new HashMap<>();
    private final Set<String> reckoned = new HashSet<>();
    private final ChooseChecks checks;
    private @Nullable NetworkReading reading;
    /** The judgement without the checks ahead. */
    private @Nullable Judgement standing;

    private @Nullable Judgement judgement;

    OpenCase(String id, RuleSession session, CauseNetwork network, KnowledgeBase knowledge, ChooseChecks checks) {
        this.id = id;
        this.session = session;
        this.network = network;
        this.knowledge = knowledge;
        this.checks = checks;
    }

    /** Sets a finding, in place of what was said of it before; "not looked at" withdraws it. */
    public void report(String finding, FindingState state) {
        report(finding, state, Optional.empty());
    }

    /** The same for a result that shows the finding only more or less surely. */
    void report(String finding, FindingState state, Optional<Likelihood> likelihood) {
        changed();
        likelihoods.remove(finding);
        likelihood.ifPresent(l -> likelihoods.put(finding, new Report(l.ifPresent(), l.ifAbsent())));
        if (state == FindingState.NOT_LOOKED_AT) {
            session.withdraw(finding);
        } else {
            session.report(finding, state);
        }
    }

    /** Says which findings were reckoned, so that they are not asked for again although they count for nothing. */
    void reckoned(Set<String> findings) {
        changed();
        reckoned.addAll(findings);
    }

    /** Says that the logs' showing of the finding is too thin for a conclusion; it holds while they are what it rests on. */
    void thin(String finding, String why) {
        changed();
        session.thin(new ThinLog(finding, why));
    }

    /** Says in which gear a finding was heard, or on which pair it was seen. */
    void gear(GearSaid gear) {
        changed();
        session.gear(gear);
    }

    /** Sets a measured value; {@code compared} is how it reads where no limit was given. */
    void measure(Measured measured, List<Compared> compared) {
        changed();
        session.measure(measured, compared);
    }

    /** What can be said on the evidence as it is now. */
    public Judgement judgement() {
        Judgement formed = judgement;
        if (formed == null) {
            formed = standing().withNext(checks.next(reading(), standing()));
            judgement = formed;
        }
        return formed;
    }

    /** The judgement without next checks, for whoever plans them for hands of his own: to plan is a third of the work. */
    public Judgement standing() {
        Judgement formed = standing;
        if (formed == null) {
            formed = new FormJudgement(id, reading(), session, knowledge).judgement();
            standing = formed;
        }
        return formed;
    }

    /** Every finding as it is taken, reported or following from a measurement, by id. */
    public Map<String, FindingState> taken() {
        Map<String, FindingState> states = new LinkedHashMap<>();
        reading().taken().forEach((finding, taken) -> states.put(finding, taken.state()));
        return states;
    }

    /** Chance of the cause on the evidence as it is now. */
    double probability(String cause) {
        return reading().probability(cause);
    }

    /** Chance that at least one of these causes is at work. */
    double probabilityOfAny(Set<String> causes) {
        return reading()
                .inference()
                .anyOf(
                        causes.stream().map(network::cause).collect(Collectors.toSet()),
                        reading().evidence());
    }

    /** The verdict alone: much quicker than the whole judgement. */
    public Verdict verdict() {
        return new FormJudgement(id, reading(), session, knowledge).verdict();
    }

    /**
     * What to check next, in order, with the hands where they are.
     *
     * @param leftOut ids of findings not to be asked about
     */
    public List<NextVisit> visits(Hands hands, Set<String> leftOut) {
        return checks.visits(reading(), standing().causes(), hands, leftOut, Set.of());
    }

    /** The verdict if this finding, not answered yet, turned out so; the case stays as it is. */
    public Verdict verdictIf(String finding, FindingState state) {
        NetworkReading before = reading();
        Judgement stands = standing;
        Judgement formed = judgement;
        report(finding, state);
        Verdict verdict = verdict();
        session.withdraw(finding);
        reading = before;
        standing = stands;
        judgement = formed;
        return verdict;
    }

    /** The open findings that must be asked about before the verdict names people; none where it does not. */
    public Set<String> otherSide(Hands hands) {
        return Releases.otherSide(knowledge, reading(), standing().causes(), checks.reach(hands))
                .collect(Collectors.toSet());
    }

    /** Whether a conclusion that names people still leaves room for doubt, so that all the other side can say counts. */
    public boolean leavesDoubtAboutPeople() {
        return standing().causes().stream()
                .filter(c -> c.standing() == RankedCause.Standing.CONCLUDED)
                .anyMatch(c -> knowledge.classOf(c.classId()).blames() && c.probability() < Thresholds.BEYOND_DOUBT);
    }

    /** What any mechanic looks at first for the complaint on record, and nobody has looked at yet, in order. */
    public Set<String> mustLook() {
        return checks.mustLook(reading());
    }

    /** The open findings that tell what is concluded from its look-alikes. */
    public Set<String> lookAlikes() {
        return Releases.lookAlikes(standing().causes()).collect(Collectors.toSet());
    }

    /**
     * What a cause that is at least so probable may wait for once its own parts are seen, and is not looked at yet: the
     * looks at what leaves the same marks, what must be proved good, and what says whose it is.
     */
    public Set<String> mayBeWaitedFor(double probability) {
        return standing().causesFrom(probability).stream()
                .map(cause -> knowledge.causes().get(cause.id()))
                .flatMap(cause -> Stream.of(
                                looksAtRivals(cause),
                                proofs(cause),
                                cause.classWhen().stream().map(Cause.ClassWhen::finding))
                        .flatMap(Function.identity()))
                .filter(reading()::isToBeAsked)
                .collect(Collectors.toSet());
    }

    private Stream<String> looksAtRivals(Cause cause) {
        return knowledge.lookAlikesOf(cause.id()).stream()
                .map(pair -> knowledge.causes().get(pair.other(cause.id())))
                .filter(rival -> rival.looks().stream().noneMatch(reading()::isAbsent))
                .flatMap(rival -> rival.looks().stream());
    }

    private Stream<String> proofs(Cause cause) {
        return Stream.concat(
                cause.provedGood().stream(),
                cause.provedGoodAny().stream()
                        .filter(ways -> ways.stream().noneMatch(reading()::isAbsent))
                        .flatMap(List::stream));
    }

    /** The plan of just these findings for these hands, however little they tell. */
    public List<NextVisit> visitsFor(Set<String> wanted, Hands hands) {
        Set<String> leftOut = new HashSet<>(knowledge.findings().keySet());
        leftOut.removeAll(wanted);
        return checks.visits(reading(), standing().causes(), hands, leftOut, wanted);
    }

    /** What another source than the one on record can say, where a conclusion stands; to be asked if it can unsettle it. */
    public Set<String> secondSources(Hands hands) {
        return Releases.secondSources(reading(), standing().causes(), checks.reach(hands))
                .collect(Collectors.toSet());
    }

    /** What is not known yet and says whose a conclusion is, of which unit, and what was renewed before a look of it. */
    public Set<String> owners(Hands hands) {
        List<RankedCause> causes = standing().causes();
        Releases.Reach reach = checks.reach(hands);
        return Stream.of(
                        Releases.owners(knowledge, reading(), causes, reach),
                        Releases.renewals(knowledge, reading(), causes, reach),
                        Releases.identity(knowledge, reading(), causes, reach))
                .flatMap(Function.identity())
                .collect(Collectors.toSet());
    }

    /** Whether nothing that was found points to any cause. */
    public boolean pointsNowhere() {
        return reading().nothingFound();
    }

    /**
     * What to check next, in order, where what was looked at is open and nobody has begun. What the verdict names as missing
     * comes first.
     */
    public List<NextVisit> visits() {
        return checks.visits(reading(), standing());
    }

    /** How well each of two causes accounts for what was found. */
    public Accounts accounts(String one, String other) {
        return new CompareAccounts(reading(), knowledge).compare(one, other);
    }

    /** Each finding weighed against each class, on the evidence as it is now. */
    public EvidenceMatrix matrix() {
        return EvidenceMatrix.of(reading(), knowledge);
    }

    @Override
    public void close() {
        session.close();
    }

    private void changed() {
        reading = null;
        standing = null;
        judgement = null;
    }

    private NetworkReading reading() {
        NetworkReading read = reading;
        if (read == null) {
            read = new NetworkReading(network, knowledge.vocabulary(), session.premises(), likelihoods, reckoned);
            reading = read;
        }
        return read;
    }
}
