package witnessmark.interview;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.NextVisit;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.planner.Hands;
import witnessmark.planner.PlanChecks;

/**
 * Decides whether to go on asking.
 *
 * <p>While no cause can be named, even if its class can, a check is worth asking for what it tells: the interview ends
 * when the best open one is worth less than {@link PlanChecks#TRIFLE_BITS} and none is likely by itself to let a cause
 * stand that is held back. As long as nothing that was found points anywhere, nothing is taken apart.
 *
 * <p>Once a verdict stands, a check is worth asking only if it may overturn it: for each open check the case is judged
 * again as if answered yes and as if answered no, and the chances of the answers that give another class, or another
 * cause of it first, are added up. Below {@link #LEAST_CHANCE} a check is not asked; {@link #LEAST_CHANCE_TEARDOWN}
 * where something must be taken apart for it, since that costs hours and new gaskets; {@link #LEAST_CHANCE_LOOK_ALIKE}
 * for what tells the cause from its look-alikes. A verdict that names people is not left before all that tells it from
 * its look-alikes has been asked, or, once it is beyond doubt, all that could still overturn it, however unlikely, as far
 * as nothing is taken apart for it that is not half apart already. Nor is any verdict left before what would turn
 * it to another owner (a repair, age, others of one delivery) or to another unit has been asked, nor before a second
 * source of a finding on record, and how that finding was come by, has been asked, if it could unsettle the verdict: how
 * often a paper, a gauge or half a test is wrong is in no cause's chance. And as long as another cause beside those concluded is about as likely as not, it is asked
 * about as if no verdict stood, since several can be at work.
 *
 * <p>What any mechanic looks at first for the complaint is asked before all else, as far as nothing is taken apart for it;
 * what is probable orders these checks but drops none.
 *
 * <p>Where what leads leans on answers that contradict each other, nothing more is asked: that is to be cleared up first.
 * The rule looks one check ahead: that two checks together might overturn what neither does alone is not counted. The
 * thresholds are judgement, not measured.
 */
final class StopRule {
    static final double LEAST_CHANCE = 0.05;
    static final double LEAST_CHANCE_TEARDOWN = 0.20;
    static final double LEAST_CHANCE_LOOK_ALIKE = 0.005;
    private static final double AS_LIKELY_AS_NOT = 0.3;
    /** So probable, a cause may be concluded from what is seen once its parts lie open. */
    private static final double IN_QUESTION = 0.1;
    /** Taking apart for so long must promise a trifle more, minutes. */
    private static final double WORK_OF_A_TRIFLE = 30;

    private final OpenCase open;
    private final Judgement judgement;
    private final Set<String> otherSide;
    private final Set<String> secondSources;
    private final Set<String> owners;
    private final Set<String> lookAlikes;
    private final Set<String> mustLook;
    private final int skipped;
    private final Set<String> left;
    private final Hands hands;
    private final Lost lost;

    /** A check to ask, with the visit it belongs to. */
    record Asked(NextCheck check, NextVisit visit) {}

    /** @param left findings that are not asked: lost, skipped or answered, or where nobody knew anything */
    StopRule(OpenCase open, Hands hands, Lost lost, Set<String> left, int skipped) {
        this.left = left;
        this.hands = hands;
        this.lost = lost;
        this.open = open;
        this.judgement = open.standing();
        this.otherSide = open.otherSide(hands);
        this.secondSources = open.secondSources(hands);
        this.owners = open.owners(hands);
        this.lookAlikes = open.lookAlikes();
        this.mustLook = open.mustLook();
        this.skipped = skipped;
    }

    /** The first check of the plan that is worth asking; empty if the interview ends. */
    Optional<Asked> ask(List<NextVisit> plan) {
        if (judgement.waitsOnContradiction()) {
            return Optional.empty();
        }
        return firstLook(plan).or(() -> first(plan, this::isWorthAsking)
                .or(() -> stands() ? Optional.empty() : first(plan, this::mayLetStand))
                .map(asked -> beforeItIsGone(asked, plan)));
    }

    /**
     * What is asked although nobody knew anything where it is: what any mechanic looks at first, what is owed to those whom
     * the verdict names, what another source can say, and what says whose it is.
     */
    Set<String> owed() {
        Set<String> owed = new HashSet<>(mustLook);
        owed.addAll(otherSide);
        owed.addAll(secondSources);
        owed.addAll(owners);
        return owed;
    }

    /** Whether a check that any mechanic makes first for the complaint is open. */
    boolean owesFirstLooks(List<NextVisit> plan) {
        return firstLook(plan).isPresent();
    }

    /** Where the hands are, else in the first place of the walk where one is open, in the order in which they are written. */
    private Optional<Asked> firstLook(List<NextVisit> plan) {
        return plan.stream()
                .sorted(Comparator.comparing(
                        visit -> !hands.at().filter(visit.access()::equals).isPresent()))
                .map(visit -> mustLook.stream()
                        .flatMap(f -> visit.checks().stream()
                                .filter(check -> check.finding().equals(f) && !check.teardown()))
                        .findFirst()
                        .map(check -> new Asked(check, visit)))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /**
     * A check that the way to this one would take away is asked before it, if it is worth asking at all. Before something
     * is taken apart that is also whatever a cause in question may wait for later: nobody could look at it any more.
     */
    private Asked beforeItIsGone(Asked asked, List<NextVisit> plan) {
        String place = asked.check().access();
        Set<String> goes = lost.byGoingTo(place);
        goes.remove(asked.check().finding());
        if (goes.isEmpty()) {
            return asked;
        }
        return first(plan, (visit, check) -> goes.contains(check.finding()) && isWorthAsking(check))
                .or(() -> lost.takesApart(place) ? mayBeWaitedFor(goes) : Optional.empty())
                .orElse(asked);
    }

    private Optional<Asked> mayBeWaitedFor(Set<String> goes) {
        Set<String> wanted = new HashSet<>(open.mayBeWaitedFor(IN_QUESTION));
        wanted.retainAll(goes);
        wanted.removeAll(left);
        return wanted.isEmpty()
                ? Optional.empty()
                : first(open.visitsFor(wanted, hands), (visit, check) -> !check.teardown());
    }

    private static Optional<Asked> first(List<NextVisit> plan, BiPredicate<NextVisit, NextCheck> which) {
        for (NextVisit visit : plan) {
            for (NextCheck check : visit.checks()) {
                if (which.test(visit, check)) {
                    return Optional.of(new Asked(check, visit));
                }
            }
        }
        return Optional.empty();
    }

    /**
     * How it ends.
     *
     * @param notKnown whether it ends because nobody could look
     */
    Ending ending(List<NextVisit> plan, boolean notKnown) {
        boolean stands = stands();
        double most = 0;
        Optional<NextCheck> nearest = Optional.empty();
        for (NextVisit visit : plan) {
            for (NextCheck check : visit.checks()) {
                double figure = stands ? chanceOfChange(check) : check.gainBits();
                if (figure > most) {
                    most = figure;
                    nearest = Optional.of(check);
                }
            }
        }
        return new Ending(
                notKnown ? Ending.Reason.NOT_KNOWN : reason(stands),
                most,
                nearest,
                stands ? 1 - share(judgement.verdict().classId()) : 0,
                skipped);
    }

    private Ending.Reason reason(boolean stands) {
        if (judgement.waitsOnContradiction()) {
            return Ending.Reason.CONTRADICTED;
        }
        if (open.pointsNowhere()) {
            return Ending.Reason.NOTHING_FOUND;
        }
        return stands ? Ending.Reason.VERDICT_STANDS : Ending.Reason.NOTHING_TELLS;
    }

    private boolean isWorthAsking(NextVisit visit, NextCheck check) {
        return isWorthTheWork(visit, check) && isWorthAsking(check);
    }

    /** Whether what is taken apart for the visit is worth what it tells: the longer the work, the more it must tell. */
    private static boolean isWorthTheWork(NextVisit visit, NextCheck check) {
        return !check.teardown()
                || visit.gainBits() >= PlanChecks.TRIFLE_BITS * (1 + visit.openMinutes() / WORK_OF_A_TRIFLE);
    }

    private boolean isWorthAsking(NextCheck check) {
        if (check.teardown() && open.pointsNowhere()) {
            return false;
        }
        if (mustLook.contains(check.finding())) {
            return true;
        }
        boolean tells = check.gainBits() >= PlanChecks.TRIFLE_BITS;
        if (!stands()) {
            return tells;
        }
        return tells && leavesAnotherOpen() || isOwed(check) || chanceOfChange(check) >= leastChance(check);
    }

    /** Whether the answer to this check alone is likely enough to let a cause stand that is held back. */
    private boolean mayLetStand(NextVisit visit, NextCheck check) {
        return waits()
                && (lets(check, FindingState.PRESENT) ? check.chance() : 0)
                                + (lets(check, FindingState.ABSENT) ? 1 - check.chance() : 0)
                        >= leastChance(check);
    }

    private boolean waits() {
        return judgement.causes().stream().anyMatch(c -> c.standing() == RankedCause.Standing.HELD_BACK);
    }

    private boolean lets(NextCheck check, FindingState answer) {
        return open.verdictIf(check.finding(), answer).isDetermined();
    }

    /** Whether a cause beside those concluded is about as likely as not: several can be at work. */
    private boolean leavesAnotherOpen() {
        return judgement.causesFrom(AS_LIKELY_AS_NOT).stream()
                .anyMatch(c -> c.standing() != RankedCause.Standing.CONCLUDED);
    }

    /** Whether it is owed to those whom the verdict names, or to a source that says otherwise. */
    private boolean isOwed(NextCheck check) {
        return otherSide.contains(check.finding())
                        && (open.leavesDoubtAboutPeople()
                                || changes(check, FindingState.PRESENT)
                                || changes(check, FindingState.ABSENT))
                || secondSources.contains(check.finding())
                        && (changes(check, FindingState.PRESENT) || changes(check, FindingState.ABSENT))
                || owners.contains(check.finding()) && changes(check, FindingState.PRESENT);
    }

    private double leastChance(NextCheck check) {
        if (check.teardown()) {
            return LEAST_CHANCE_TEARDOWN;
        }
        return lookAlikes.contains(check.finding()) ? LEAST_CHANCE_LOOK_ALIKE : LEAST_CHANCE;
    }

    /** Chance that the answer to this check alone would give another verdict. */
    private double chanceOfChange(NextCheck check) {
        return chance(check, FindingState.PRESENT, check.chance())
                + chance(check, FindingState.ABSENT, 1 - check.chance());
    }

    private double chance(NextCheck check, FindingState answer, double chance) {
        return changes(check, answer) ? chance : 0;
    }

    private boolean changes(NextCheck check, FindingState answer) {
        return !said(open.verdictIf(check.finding(), answer)).equals(said(judgement.verdict()));
    }

    /** What a verdict says: the class and the cause first named. */
    private static List<String> said(Verdict verdict) {
        return List.of(
                verdict.classId(), verdict.carriedBy().stream().findFirst().orElse(""));
    }

    /** Whether a cause is named, and not only a class. */
    private boolean stands() {
        Verdict verdict = judgement.verdict();
        return verdict.isDetermined()
                && judgement.causes().stream()
                        .anyMatch(c -> c.standing() == RankedCause.Standing.CONCLUDED
                                && verdict.carriedBy().contains(c.id()));
    }

    private double share(String classId) {
        return judgement.attribution().stream()
                .filter(s -> s.classId().equals(classId))
                .mapToDouble(Judgement.ClassShare::probability)
                .sum();
    }
}
