package witnessmark.diagnosis;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.diagnosis.fact.Settled;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.KnowledgeBase;

/**
 * The open findings that a held-back conclusion waits for: one specific to it, one that must be found sound, one that
 * tells it from a look-alike. A conclusion that names people waits, even where nothing holds it back, for what tells it
 * from each look-alike without taking anything apart: the other side is asked before a person is named. And every
 * conclusion waits for the second source of what it rests on, where there is one: the paper beside the gauge.
 */
final class Releases {
    private final KnowledgeBase knowledge;
    private final Reading reading;
    private final Map<String, Answer> answers = new HashMap<>();

    /** Which answer would let the conclusion stand. */
    enum Answer {
        PRESENT,
        ABSENT,
        EITHER
    }

    Releases(KnowledgeBase knowledge, Reading reading, List<RankedCause> causes) {
        this.knowledge = knowledge;
        this.reading = reading;
        causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.HELD_BACK)
                .forEach(this::collect);
        otherSide(knowledge, causes).forEach(f -> add(f, Answer.EITHER));
        secondSources(knowledge, reading, causes).forEach(f -> add(f, Answer.EITHER));
    }

    /** What another source says of a finding on record, nothing taken apart, once something is concluded. */
    static List<String> secondSources(KnowledgeBase knowledge, Reading reading, List<RankedCause> causes) {
        if (causes.stream().noneMatch(c -> c.standing() == RankedCause.Standing.CONCLUDED)) {
            return List.of();
        }
        return reading.premises().settled().stream()
                .filter(Settled::otherSource)
                .map(Settled::finding)
                .distinct()
                .filter(f -> isOutside(knowledge, f))
                .toList();
    }

    private static boolean isOutside(KnowledgeBase knowledge, String finding) {
        return knowledge.wayTo(knowledge.findings().get(finding).access()).stream()
                .noneMatch(AccessStep::teardown);
    }

    /** What tells a conclusion that names people from its look-alikes, nothing taken apart, not looked at yet. */
    static List<String> otherSide(KnowledgeBase knowledge, List<RankedCause> causes) {
        return causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.CONCLUDED
                        && knowledge.classOf(c.classId()).blames())
                .flatMap(c -> c.lookAlikes().stream())
                .flatMap(rival -> rival.openChecks().stream())
                .distinct()
                .filter(f -> isOutside(knowledge, f))
                .toList();
    }

    /** The findings, each with the answer that releases. */
    Map<String, Answer> findings() {
        return answers;
    }

    private void collect(RankedCause held) {
        Cause cause = knowledge.causes().get(held.id());
        boolean carried =
                cause.specificFindings().stream().anyMatch(f -> reading.taken().containsKey(f));
        if (!carried && knowledge.classOf(held.classId()).blames()) {
            cause.specificFindings().forEach(f -> add(f, Answer.PRESENT));
        }
        cause.provedGood().forEach(f -> add(f, Answer.ABSENT));
        held.lookAlikes().stream()
                .filter(rival -> Thresholds.lookAlikeOpen(held.probability(), rival.probability()))
                .forEach(rival -> rival.openChecks().forEach(f -> add(f, Answer.EITHER)));
    }

    private void add(String finding, Answer answer) {
        if (!reading.taken().containsKey(finding) && reading.canBeFound(finding)) {
            answers.putIfAbsent(finding, answer);
        }
    }
}
