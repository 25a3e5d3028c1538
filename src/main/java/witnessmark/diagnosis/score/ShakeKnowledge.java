package witnessmark.diagnosis.score;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RuleBase;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.KnowledgeBase;

/**
 * Moves the numbers of the knowledge base and looks whether the answers hold: the strengths of one cause after the
 * other one word up and down, and its prior by a factor of three up and down.
 */
public final class ShakeKnowledge {
    private static final double PRIOR_FACTOR = 3;

    private final RuleBase rules;
    private final KnowledgeBase knowledge;
    private final List<Double> strengths;

    public ShakeKnowledge(RuleBase rules, KnowledgeBase knowledge) {
        this.rules = rules;
        this.knowledge = knowledge;
        this.strengths =
                List.copyOf(new TreeSet<>(knowledge.vocabulary().strengths().values()));
    }

    /**
     * What changed over the cases when the causes that come first in them are moved one at a time.
     *
     * @param told learns how many of all moves are made
     */
    public List<Shaken> shake(List<CaseDocument> cases, BiConsumer<Long, Long> told) {
        Map<String, Judgement> before = new LinkedHashMap<>();
        Diagnosis plain = new Diagnosis(rules, knowledge);
        cases.forEach(c -> before.put(c.present().id().toString(), plain.judge(c.present())));
        List<Shaken> shaken = new ArrayList<>();
        Moves moves = new Moves(told);
        shaken.add(moved("strengths one word up", cases, before, moves, c -> strengthsMoved(c, 1)));
        shaken.add(moved("strengths one word down", cases, before, moves, c -> strengthsMoved(c, -1)));
        shaken.add(moved("priors times 3", cases, before, moves, c -> priorMoved(c, PRIOR_FACTOR)));
        shaken.add(moved("priors by 3", cases, before, moves, c -> priorMoved(c, 1 / PRIOR_FACTOR)));
        return shaken;
    }

    private Shaken moved(
            String what,
            List<CaseDocument> cases,
            Map<String, Judgement> before,
            Moves moves,
            UnaryOperator<Cause> move) {
        int trials = 0;
        int first = 0;
        int verdict = 0;
        for (String id : knowledge.causes().keySet()) {
            moves.next();
            Diagnosis other = new Diagnosis(rules, with(id, move));
            for (CaseDocument document : cases) {
                Judgement old = before.get(document.present().id().toString());
                if (old.causes().stream().limit(5).noneMatch(c -> c.id().equals(id))) {
                    continue;
                }
                Judgement now = other.judge(document.present());
                trials++;
                first += firstOf(now).equals(firstOf(old)) ? 0 : 1;
                verdict += now.verdict().classId().equals(old.verdict().classId()) ? 0 : 1;
            }
        }
        return new Shaken(what, trials, first, verdict);
    }

    /** Counts the moves for whoever wants to know. */
    private final class Moves {
        private static final long KINDS = 4;

        private final BiConsumer<Long, Long> told;
        private long made;

        Moves(BiConsumer<Long, Long> told) {
            this.told = told;
        }

        void next() {
            told.accept(made++, KINDS * knowledge.causes().size());
        }
    }

    private static String firstOf(Judgement judgement) {
        return judgement.causes().isEmpty() ? "" : judgement.causes().get(0).id();
    }

    private KnowledgeBase with(String id, UnaryOperator<Cause> move) {
        Map<String, Cause> causes = new LinkedHashMap<>(knowledge.causes());
        causes.computeIfPresent(id, (key, cause) -> move.apply(cause));
        return knowledge.withCauses(causes);
    }

    private Cause strengthsMoved(Cause cause, int words) {
        return cause.withLinks(cause.links().stream()
                .map(l -> l.look() ? l : l.withStrength(moved(l.strength(), words)))
                .toList());
    }

    private double moved(double strength, int words) {
        int place = nearest(strength) + words;
        return strengths.get(Math.max(0, Math.min(strengths.size() - 1, place)));
    }

    /** The word nearest to a strength, which may be bounded below its word. */
    private int nearest(double strength) {
        int nearest = 0;
        for (int i = 1; i < strengths.size(); i++) {
            if (Math.abs(strengths.get(i) - strength) < Math.abs(strengths.get(nearest) - strength)) {
                nearest = i;
            }
        }
        return nearest;
    }

    private static Cause priorMoved(Cause cause, double factor) {
        return cause.withPrior(Math.min(0.5, cause.prior() * factor));
    }
}
