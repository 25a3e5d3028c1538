package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.inference.Gain;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.planner.Check;
import witnessmark.planner.Hands;
import witnessmark.planner.PlanChecks;
import witnessmark.planner.Visit;

/** Says what each check not yet made can be expected to tell, and has the planner put them in order. */
final class ChooseChecks {
    private static final double WORTH_MAKING_BITS = 0.005;
    /** A cause with at least this share of the leader's chance counts in full. Tried on cases of known outcome. */
    private static final double SHARE_OF_LEADER = 0.3;
    /**
     * What the doubt counts about a cause that explains nothing of what the truck does or what was seen, and that only papers
     * and tales speak for: after a rebuild any work may be bad, but a part hurt there is no reason for this complaint.
     */
    private static final double BESIDE_THE_COMPLAINT = 0.1;
    /** A cause that a check moves by less is not named beside a stronger reason; a chance, judged. */
    private static final double WORTH_NAMING = 0.05;
    /** What it is worth to learn whether a conclusion that is held back may stand, bits. Judgement, not measured. */
    private static final double RELEASE_BITS = 0.5;

    private final KnowledgeBase knowledge;
    private final Sentences say;
    private final PlanChecks planner;

    ChooseChecks(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
        this.say = new Sentences(knowledge.language());
        this.planner = new PlanChecks(knowledge.access());
    }

    /** Every check worth making: what the verdict names as missing first, then in the order of the plan. */
    List<NextCheck> next(NetworkReading reading, Judgement standing) {
        return visits(reading, standing).stream()
                .flatMap(visit -> visit.checks().stream())
                .toList();
    }

    /** The same as visits, where what was looked at is open and nobody has begun. */
    List<NextVisit> visits(NetworkReading reading, Judgement standing) {
        Hands hands = new Hands(openSteps(reading), Optional.empty());
        Set<String> demanded = Set.copyOf(standing.demanded());
        return demandedFirst(visits(reading, standing.causes(), hands, Set.of(), demanded), demanded, hands);
    }

    /** Of what is demanded the cheapest for what it tells comes first; each place is opened once. */
    private List<NextVisit> demandedFirst(List<NextVisit> plan, Set<String> demanded, Hands hands) {
        Map<String, List<NextCheck>> first = plan.stream()
                .flatMap(visit -> visit.checks().stream())
                .filter(check -> demanded.contains(check.finding()))
                .sorted(Comparator.comparingDouble(
                        c -> -c.gainBits() / (PlanChecks.ASKING_MINUTES + c.checkMinutes() + c.openMinutes())))
                .collect(Collectors.groupingBy(NextCheck::access, LinkedHashMap::new, Collectors.toList()));
        if (first.isEmpty()) {
            return plan;
        }
        List<NextVisit> visits = new ArrayList<>();
        Set<String> open = new HashSet<>(hands.open());
        first.forEach((place, checks) -> visits.add(visit(place, checks, Double.POSITIVE_INFINITY, open)));
        for (NextVisit visit : plan) {
            List<NextCheck> rest = visit.checks().stream()
                    .filter(check -> !demanded.contains(check.finding()))
                    .toList();
            if (!rest.isEmpty()) {
                visits.add(visit(visit.access(), rest, visit.gainBits(), open));
            }
        }
        return visits;
    }

    /** The visit with what is open already, which its place then is too. */
    private NextVisit visit(String place, List<NextCheck> checks, double mostBits, Set<String> open) {
        double opening = planner.openMinutes(place, new Hands(open, Optional.empty()));
        open.addAll(planner.wayTo(place));
        return new NextVisit(
                place,
                knowledge.access().get(place).title(),
                opening,
                opening + checks.stream().mapToDouble(NextCheck::checkMinutes).sum(),
                Math.min(
                        mostBits,
                        checks.stream().mapToDouble(NextCheck::gainBits).sum()),
                checks);
    }

    /**
     * The plan for these hands, without the findings left out.
     *
     * @param demanded what is planned however little it tells
     */
    List<NextVisit> visits(
            NetworkReading reading, List<RankedCause> causes, Hands hands, Set<String> leftOut, Set<String> demanded) {
        Map<String, Releases.Answer> releasing = new Releases(knowledge, reading, causes, reach(hands)).findings();
        mustLook(reading).forEach(f -> releasing.putIfAbsent(f, Releases.Answer.EITHER));
        demanded.forEach(f -> releasing.putIfAbsent(f, Releases.Answer.SETS_APART));
        double[] weights = weights(reading, causes);
        Map<String, Gain> gains = new HashMap<>();
        List<Check> checks = new ArrayList<>();
        for (Gain gain : gains(reading, releasing, leftOut)) {
            Check check = check(gain, reading, weights, releasing);
            if (check.bits() >= WORTH_MAKING_BITS || demanded.contains(check.id())) {
                gains.put(check.id(), gain);
                checks.add(check);
            }
        }
        return planner.plan(checks, doubt(reading, weights), hands).stream()
                .map(visit -> visit(visit, gains, reading, hands, demanded))
                .toList();
    }

    private List<Gain> gains(NetworkReading reading, Map<String, Releases.Answer> releasing, Set<String> leftOut) {
        List<Finding> findings = reading.network().findings();
        int[] candidates = IntStream.range(0, findings.size())
                .filter(f -> reading.state(f) == FindingState.NOT_LOOKED_AT && reading.canBeFound(f))
                .filter(f -> isWorthAsking(f, findings.get(f).id(), reading, releasing))
                .filter(f -> !leftOut.contains(findings.get(f).id()))
                .toArray();
        return reading.inference().gains(reading.evidence(), candidates);
    }

    private static boolean isWorthAsking(
            int finding, String id, NetworkReading reading, Map<String, Releases.Answer> releasing) {
        return reading.isSettled(id)
                ? reading.otherSourceFor(id).isPresent() && releasing.containsKey(id)
                        || !reading.follows(id)
                                && releasing.getOrDefault(id, Releases.Answer.SETS_APART) != Releases.Answer.SETS_APART
                : reading.touchesQuestion(finding) || releasing.containsKey(id);
    }

    private static Check check(
            Gain gain, NetworkReading reading, double[] weights, Map<String, Releases.Answer> releasing) {
        Finding finding = reading.network().findings().get(gain.finding());
        double[] bits = gain.bitsByCause().clone();
        for (int i = 0; i < bits.length; i++) {
            bits[i] *= weights[gain.causes()[i]];
        }
        double release = Optional.ofNullable(releasing.get(finding.id()))
                .map(answer -> releaseBits(answer, gain.chance()))
                .orElse(0.0);
        return new Check(finding.id(), finding.access(), finding.minutes(), gain.causes(), bits, release);
    }

    /**
     * How much the doubt about each cause counts, by index: in full near the leader, less the farther behind it, not at
     * all out of question. To rule out one by one what hardly anybody believes would take many questions and change
     * nothing. The look-alikes of a cause that may not be concluded yet count in full: they are just what matters.
     */
    private double[] weights(NetworkReading reading, List<RankedCause> causes) {
        Set<String> complaint = complaint(reading);
        double full = SHARE_OF_LEADER
                * causes.stream().mapToDouble(RankedCause::probability).max().orElse(0);
        Set<String> held = causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.HELD_BACK)
                .flatMap(c -> c.lookAlikes().stream())
                .map(RankedCause.Rivalry::cause)
                .collect(Collectors.toSet());
        List<Cause> all = reading.network().causes();
        return IntStream.range(0, all.size())
                .mapToDouble(c -> {
                    double p = reading.isInQuestion(c) ? reading.probability(c) : 0;
                    return p == 0
                            ? 0
                            : held.contains(all.get(c).id())
                                    ? 1
                                    : Math.min(1, p / full)
                                            * (isBeside(all.get(c), complaint) ? BESIDE_THE_COMPLAINT : 1);
                })
                .toArray();
    }

    /** What was found of how the truck behaves and of its parts; empty where it does nothing that calls for a cause. */
    private Set<String> complaint(NetworkReading reading) {
        Set<String> found = reading.taken().keySet().stream()
                .filter(f -> mayBe(f, reading))
                .filter(f -> knowledge.findings().get(f).kind() != Finding.Kind.PAPER
                        && knowledge.findings().get(f).kind() != Finding.Kind.ACCOUNT)
                .collect(Collectors.toSet());
        return found.stream().anyMatch(f -> knowledge.findings().get(f).kind() == Finding.Kind.SYMPTOM)
                ? found
                : Set.of();
    }

    private static boolean isBeside(Cause cause, Set<String> complaint) {
        return !complaint.isEmpty() && cause.links().stream().noneMatch(link -> complaint.contains(link.finding()));
    }

    private static double releaseBits(Releases.Answer answer, double chance) {
        return switch (answer) {
            case PRESENT -> RELEASE_BITS * chance;
            case ABSENT -> RELEASE_BITS * (1 - chance);
            case EITHER -> RELEASE_BITS;
            case SETS_APART -> WORTH_MAKING_BITS;
        };
    }

    /** What there is to be learnt of each cause, weighted as the gains are. */
    private static double[] doubt(NetworkReading reading, double[] weights) {
        double[] doubt = new double[weights.length];
        for (int c = 0; c < doubt.length; c++) {
            doubt[c] = weights[c] * entropy(reading.probability(c));
        }
        return doubt;
    }

    private static double entropy(double p) {
        return p <= 0 || p >= 1 ? 0 : -(p * Math.log(p) + (1 - p) * Math.log(1 - p)) / Math.log(2);
    }

    private NextVisit visit(
            Visit visit, Map<String, Gain> gains, NetworkReading reading, Hands hands, Set<String> demanded) {
        return new NextVisit(
                visit.place(),
                knowledge.access().get(visit.place()).title(),
                visit.openMinutes(),
                visit.minutes(),
                visit.bits(),
                visit.checks().stream()
                        .map(check -> nextCheck(
                                check,
                                gains.get(check.id()),
                                reading,
                                hands,
                                demanded.contains(check.id()) ? NextCheck.Bearing.CONCLUSION : bearing(check, reading)))
                        .toList());
    }

    private NextCheck nextCheck(
            Check check, Gain gain, NetworkReading reading, Hands hands, NextCheck.Bearing bearing) {
        Finding finding = knowledge.findings().get(check.id());
        List<AccessStep> way = knowledge.wayTo(finding.access());
        Set<String> cautions = new LinkedHashSet<>();
        way.forEach(step -> cautions.addAll(step.cautions()));
        cautions.addAll(finding.cautions());
        AccessStep step = way.get(way.size() - 1);
        int most = mostMoved(gain, reading);
        return new NextCheck(
                finding.id(),
                finding.title(),
                finding.ask(),
                finding.look(),
                step.id(),
                step.title(),
                check.bits(),
                gain.chance(),
                finding.minutes(),
                planner.openMinutes(step.id(), hands),
                planner.takesApart(step.id(), hands),
                bearing,
                reading.network()
                        .causes()
                        .get(most < 0 ? reading.firstInQuestion() : gain.causes()[most])
                        .id(),
                why(check, gain, most, reading, bearing),
                List.copyOf(cautions));
    }

    private NextCheck.Bearing bearing(Check check, NetworkReading reading) {
        if (reading.otherSourceFor(check.id()).isPresent()) {
            return NextCheck.Bearing.SECOND_SOURCE;
        }
        return check.release() < check.bits() - check.release()
                ? NextCheck.Bearing.CAUSE
                : NextCheck.Bearing.CONCLUSION;
    }

    /** The place among the causes of a gain of the one in question that the check would move most; -1 if there is none. */
    private static int mostMoved(Gain gain, NetworkReading reading) {
        int most = -1;
        for (int i = 0; i < gain.causes().length; i++) {
            if (reading.isInQuestion(gain.causes()[i]) && (most < 0 || width(gain, i) > width(gain, most))) {
                most = i;
            }
        }
        return most;
    }

    private static double width(Gain gain, int place) {
        return Math.abs(gain.ifPresent()[place] - gain.ifAbsent()[place]);
    }

    /** What the check is made for, and how far it would move a cause either way. */
    private String why(Check check, Gain gain, int most, NetworkReading reading, NextCheck.Bearing bearing) {
        return switch (bearing) {
            case SECOND_SOURCE -> say.say(
                    "check-other-source",
                    reading.otherSourceFor(check.id())
                            .map(knowledge.findings()::get)
                            .orElseThrow()
                            .title());
            case CAUSE -> moves(gain, most, reading);
                // What a conclusion is set against is the reason; a cause that hardly moves has nothing to do with it.
            case CONCLUSION -> most < 0 || width(gain, most) < WORTH_NAMING
                    ? say.say("check-sets-apart-alone")
                    : say.say("check-sets-apart", moves(gain, most, reading));
        };
    }

    private String moves(Gain gain, int place, NetworkReading reading) {
        int index = gain.causes()[place];
        String title = reading.network().causes().get(index).title();
        String now = say.percent(reading.probability(index));
        String present = say.percent(gain.ifPresent()[place]);
        String absent = say.percent(gain.ifAbsent()[place]);
        return now.equals(present) && now.equals(absent)
                ? say.say("check-hardly-moves", title, now)
                : say.say("check-moves", title, now, present, absent);
    }

    /** What any mechanic looks at first for the complaint on record, and nobody has looked at yet, in order. */
    Set<String> mustLook(NetworkReading reading) {
        Set<String> looks = new LinkedHashSet<>();
        knowledge.mustLooks().stream()
                .filter(must -> must.symptoms().stream().anyMatch(f -> mayBe(f, reading)))
                .flatMap(must -> must.looks().stream())
                .filter(f -> !reading.taken().containsKey(f) && reading.canBeFound(f))
                .filter(f -> !reading.isSettled(f) || reading.otherSourceFor(f).isPresent())
                .forEach(looks::add);
        return looks;
    }

    private static boolean mayBe(String symptom, NetworkReading reading) {
        Taken taken = reading.taken().get(symptom);
        return taken != null && taken.state() != FindingState.ABSENT;
    }

    /** How far a check may go for the sake of a conclusion that stands already. */
    Releases.Reach reach(Hands hands) {
        return new Releases.Reach(
                f -> !planner.takesApart(place(f), hands),
                f -> !planner.takesApart(place(f), hands) || planner.goesOnInside(place(f), hands));
    }

    private String place(String finding) {
        return knowledge.findings().get(finding).access();
    }

    /** The steps that must be open already, since something behind them was looked at; a complaint opens nothing. */
    private Set<String> openSteps(NetworkReading reading) {
        Set<String> open = new HashSet<>();
        reading.taken().keySet().stream()
                .map(knowledge.findings()::get)
                .filter(finding -> finding.kind() != Finding.Kind.SYMPTOM)
                .forEach(finding -> open.addAll(planner.wayTo(finding.access())));
        return open;
    }
}
