package witnessmark.diagnosis;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.Follows;
import witnessmark.knowledge.KnowledgeBase;

/**
 * The open findings that a conclusion waits for. One that is held back waits for what its reasons name. One that names people waits, even where nothing holds it back,
 * for what tells it from each look-alike, as far as nothing is taken apart for it that is not half apart already: the
 * other side is asked before a person is named. Every conclusion waits for the second source of what it rests on, where
 * there is one: the paper beside the gauge. And what tells it from its look-alikes is worth a look, where nothing more is taken apart for it.
 */
final class Releases {
    private final KnowledgeBase knowledge;
    private final NetworkReading reading;
    private final Map<String, Answer> answers = new LinkedHashMap<>();

    /** Which answer would let the conclusion stand; the last only sets it apart from a look-alike. */
    enum Answer {
        PRESENT,
        ABSENT,
        EITHER,
        SETS_APART
    }

    /**
     * Which findings can be looked at for the sake of a conclusion.
     *
     * @param asItIs those for which nothing more is taken apart
     * @param goingOn those for which taking apart goes on inside what is open already, besides: for a person's sake
     */
    record Reach(Predicate<String> asItIs, Predicate<String> goingOn) {}

    Releases(KnowledgeBase knowledge, NetworkReading reading, List<RankedCause> causes, Reach reach) {
        this.knowledge = knowledge;
        this.reading = reading;
        causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.HELD_BACK)
                .forEach(held -> collect(held, reach));
        otherSide(knowledge, reading, causes, reach).forEach(f -> add(f, Answer.EITHER));
        // How a check was made is asked last: as a rule it was made right.
        secondSources(reading, causes, reach)
                .forEach(f -> add(f, reading.isExcluded(f) ? Answer.EITHER : Answer.SETS_APART));
        owners(knowledge, reading, causes, reach).forEach(f -> add(f, Answer.EITHER));
        renewals(knowledge, reading, causes, reach).forEach(f -> add(f, Answer.SETS_APART));
        identity(knowledge, reading, causes, reach).forEach(f -> add(f, Answer.SETS_APART));
        lookAlikes(causes).filter(reach.asItIs()).forEach(f -> add(f, Answer.SETS_APART));
    }

    /**
     * What tells a conclusion that names people from its look-alikes, not looked at yet; and what may be the reason of
     * something found that must have one, since without any the evidence is not to be believed.
     */
    static Stream<String> otherSide(
            KnowledgeBase knowledge, NetworkReading reading, List<RankedCause> causes, Reach reach) {
        List<RankedCause> people = concluded(causes)
                .filter(c -> knowledge.classOf(c.classId()).blames())
                .toList();
        return people.isEmpty()
                ? Stream.empty()
                : Stream.concat(
                        openChecks(people.stream()).filter(reach.goingOn()),
                        open(reasonsOfWhatWasFound(knowledge, reading), reading, reach));
    }

    private static Stream<String> reasonsOfWhatWasFound(KnowledgeBase knowledge, NetworkReading reading) {
        return knowledge.explainedBy().stream()
                .filter(must -> isThere(must.finding(), reading))
                .filter(must -> must.by().stream().noneMatch(reason -> isThere(reason, reading)))
                .flatMap(must -> must.by().stream());
    }

    /** What tells a conclusion from its look-alikes, not looked at yet. */
    static Stream<String> lookAlikes(List<RankedCause> causes) {
        return openChecks(concluded(causes));
    }

    /** What another source says of a finding on record, or of how it was come by, once something is more likely than not. */
    static Stream<String> secondSources(NetworkReading reading, List<RankedCause> causes, Reach reach) {
        boolean leads = causes.stream()
                .anyMatch(c -> c.standing() == RankedCause.Standing.CONCLUDED
                        || c.standing() == RankedCause.Standing.HELD_BACK
                        || c.standing() == RankedCause.Standing.LIKELY);
        return !leads ? Stream.empty() : reading.otherSources().stream().filter(reach.asItIs());
    }

    /**
     * The circumstances, not known yet, that would turn a conclusion to another owner; also where one has turned it, since
     * what counts before it may be there as well.
     */
    static Stream<String> owners(
            KnowledgeBase knowledge, NetworkReading reading, List<RankedCause> causes, Reach reach) {
        return open(
                concluded(causes).flatMap(c -> asked(knowledge.causes().get(c.id()))
                        .filter(turn -> !turn.classId().equals(c.classId()))
                        .map(Cause.ClassWhen::finding)),
                reading,
                reach);
    }

    /**
     * What can have been set or renewed before the look at a conclusion itself, which nobody found there: it is lost then.
     * Where the conclusion names people, also before the looks that found sound what must be good for it, and the repair
     * that would give reason to ask.
     */
    static Stream<String> renewals(
            KnowledgeBase knowledge, NetworkReading reading, List<RankedCause> causes, Reach reach) {
        Set<String> unseen = concluded(causes)
                .flatMap(c -> standsOn(knowledge.causes().get(c.id()), knowledge, c.classId()))
                .filter(look -> !isThere(look, reading))
                .collect(Collectors.toSet());
        if (unseen.isEmpty()) {
            return Stream.empty();
        }
        List<String> renewing = knowledge.findings().values().stream()
                .filter(f -> !Collections.disjoint(f.renews(), unseen))
                .map(Finding::id)
                .toList();
        boolean people =
                concluded(causes).anyMatch(c -> knowledge.classOf(c.classId()).blames());
        Stream<String> reasons = !people
                ? Stream.empty()
                : knowledge.follows().stream()
                        .filter(follows -> renewing.contains(follows.premise()))
                        .map(Follows::conclusion);
        return open(Stream.concat(renewing.stream(), reasons), reading, reach);
    }

    private static Stream<String> standsOn(Cause cause, KnowledgeBase knowledge, String classId) {
        return !knowledge.classOf(classId).blames()
                ? cause.looks().stream()
                : Stream.of(
                                cause.looks().stream(),
                                cause.provedGood().stream(),
                                cause.provedGoodAny().stream().flatMap(List::stream))
                        .flatMap(Function.identity());
    }

    /**
     * Where a conclusion names people, or parts were looked at that lay inside the box: what would say that parts or logs are
     * of another unit.
     */
    static Stream<String> identity(
            KnowledgeBase knowledge, NetworkReading reading, List<RankedCause> causes, Reach reach) {
        boolean people =
                concluded(causes).anyMatch(c -> knowledge.classOf(c.classId()).blames());
        boolean parts = concluded(causes).findAny().isPresent() && partsLieApart(knowledge, reading);
        if (!people && !parts) {
            return Stream.empty();
        }
        return open(
                knowledge.findings().values().stream()
                        .filter(Finding::doubtsIdentity)
                        .filter(f ->
                                f.voids().map(kind -> isLookedAt(kind, reading)).orElse(true))
                        .map(Finding::id),
                reading,
                reach);
    }

    /** The circumstances of a cause that are worth a question. */
    private static Stream<Cause.ClassWhen> asked(Cause cause) {
        return cause.classWhen().stream().filter(turn -> turn.asked() != Cause.Asked.NEVER);
    }

    private static boolean partsLieApart(KnowledgeBase knowledge, NetworkReading reading) {
        return reading.taken().keySet().stream()
                .filter(finding -> isThere(finding, reading))
                .flatMap(finding ->
                        knowledge.wayTo(knowledge.findings().get(finding).access()).stream())
                .anyMatch(AccessStep::teardown);
    }

    private static boolean isThere(String finding, NetworkReading reading) {
        Taken taken = reading.taken().get(finding);
        return taken != null && taken.state() == FindingState.PRESENT;
    }

    private static boolean isLookedAt(Finding.Kind kind, NetworkReading reading) {
        return reading.taken().keySet().stream().anyMatch(f -> reading.kind(f) == kind);
    }

    private static Stream<String> open(Stream<String> findings, NetworkReading reading, Reach reach) {
        return findings.filter(f -> !reading.taken().containsKey(f) && !reading.isSettled(f))
                .filter(reach.asItIs())
                .distinct();
    }

    private static Stream<RankedCause> concluded(List<RankedCause> causes) {
        return causes.stream().filter(c -> c.standing() == RankedCause.Standing.CONCLUDED);
    }

    private static Stream<String> openChecks(Stream<RankedCause> causes) {
        return causes.flatMap(c -> c.lookAlikes().stream())
                .flatMap(rival -> rival.openChecks().stream())
                .distinct();
    }

    /** The findings, each with the answer that releases. */
    Map<String, Answer> findings() {
        return answers;
    }

    private void collect(RankedCause held, Reach reach) {
        Cause cause = knowledge.causes().get(held.id());
        held.reasons().forEach(reason -> release(reason, cause));
        // Whose it is decides which rivals count against it.
        asked(cause)
                .map(Cause.ClassWhen::finding)
                .forEach(f -> add(f, reach.asItIs().test(f) ? Answer.EITHER : Answer.SETS_APART));
    }

    private void release(HoldReason reason, Cause cause) {
        if (reason instanceof HoldReason.NotLookedAt not) {
            not.looks().forEach(f -> add(f, Answer.PRESENT));
        } else if (reason instanceof HoldReason.MarkAlone alone) {
            alone.looks().forEach(f -> add(f, Answer.PRESENT));
            // A mark that others leave too carries it beside a log or paper.
            cause.links().stream()
                    .map(Cause.Link::finding)
                    .filter(f -> knowledge.findings().get(f).kind().isWitness())
                    .forEach(f -> add(f, Answer.PRESENT));
        } else if (reason instanceof HoldReason.NotProvedGood good) {
            add(good.finding(), Answer.ABSENT);
        } else if (reason instanceof HoldReason.RivalOpen rival) {
            rival.looks().forEach(f -> add(f, Answer.EITHER));
        } else if (reason instanceof HoldReason.OwnersBeside beside) {
            beside.looks().forEach(f -> add(f, Answer.EITHER));
        } else if (reason instanceof HoldReason.RenewalOpen renewal) {
            add(renewal.renewed(), Answer.ABSENT);
        } else if (reason instanceof HoldReason.OwnerOpen owner) {
            add(owner.finding(), Answer.EITHER);
            asked(cause).forEach(turn -> add(turn.finding(), Answer.PRESENT));
        } else if (reason instanceof HoldReason.WhyNotAsked why) {
            why.findings().forEach(f -> add(f, Answer.EITHER));
        }
    }

    private void add(String finding, Answer answer) {
        if (!reading.taken().containsKey(finding) && reading.canBeFound(finding)) {
            answers.putIfAbsent(finding, answer);
        }
    }
}
