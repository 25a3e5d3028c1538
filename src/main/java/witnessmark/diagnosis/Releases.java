package witnessmark.diagnosis;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.KnowledgeBase;

/**
 * The open findings that a held-back conclusion waits for: one specific to it, one that must be found sound, one that
 * tells it from a look-alike.
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
