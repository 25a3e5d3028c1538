package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Vocabulary.CauseClass;

/** Decides which class the evidence points to, or that it cannot be told yet. */
final class ReachVerdict {
    private final KnowledgeBase knowledge;

    ReachVerdict(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
    }

    /**
     * The verdict.
     *
     * @param causes ranked, most probable first
     * @param attribution of the classes, most probable first
     */
    Verdict verdict(List<RankedCause> causes, List<Judgement.ClassShare> attribution) {
        Optional<RankedCause> best = causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.CONCLUDED)
                .findFirst();
        List<RankedCause> held = causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.HELD_BACK)
                .toList();
        if (best.isPresent() && !outweighed(best.get(), held)) {
            return concluded(best.get(), causes, held);
        }
        Optional<Judgement.ClassShare> byClass = attribution.stream()
                .filter(share -> share.probability() >= Thresholds.CLASS_CONCLUDED)
                .filter(share -> !knowledge.classOf(share.classId()).blames())
                .findFirst();
        if (best.isEmpty() && held.isEmpty() && byClass.isPresent()) {
            return concludedByClass(byClass.get(), causes);
        }
        return undetermined(causes, held);
    }

    private static boolean outweighed(RankedCause best, List<RankedCause> held) {
        return held.stream()
                .anyMatch(h -> Thresholds.odds(h.probability())
                        > Thresholds.LEADER_ODDS * Thresholds.odds(best.probability()));
    }

    private Verdict concluded(RankedCause best, List<RankedCause> causes, List<RankedCause> held) {
        CauseClass of = knowledge.classOf(best.classId());
        List<RankedCause> carrying = causes.stream()
                .filter(c -> c.standing() == RankedCause.Standing.CONCLUDED)
                .toList();
        String sentence = of.blames()
                ? "The evidence is consistent with: " + best.title()
                        + ", and the look-alikes named are ruled out or far"
                        + " behind. It names a class (" + of.title().toLowerCase(java.util.Locale.ROOT)
                        + "), not a person."
                : of.title() + " (" + of.plain() + "): " + best.title() + ".";
        List<String> open = new ArrayList<>();
        carrying.stream()
                .skip(1)
                .forEach(c -> open.add("Also at work on this evidence: " + c.title() + " ("
                        + Sentences.percent(c.probability()) + ")."));
        held.forEach(h -> open.add(h.title() + " (" + Sentences.percent(h.probability()) + ") cannot be concluded: "
                + String.join("; ", h.heldBack())));
        return new Verdict(
                best.classId(),
                carrying.stream()
                        .filter(c -> c.classId().equals(best.classId()))
                        .map(RankedCause::id)
                        .toList(),
                sentence,
                open);
    }

    private Verdict concludedByClass(Judgement.ClassShare share, List<RankedCause> causes) {
        List<RankedCause> members = causes.stream()
                .filter(c -> c.classId().equals(share.classId()) && c.probability() >= Thresholds.WORTH_A_WORD)
                .toList();
        String names =
                String.join(" or ", members.stream().map(RankedCause::title).toList());
        return new Verdict(
                share.classId(),
                members.stream().map(RankedCause::id).toList(),
                share.title() + ", but which cause of it cannot be told yet: " + names + ".",
                List.of());
    }

    private static Verdict undetermined(List<RankedCause> causes, List<RankedCause> held) {
        List<String> open = new ArrayList<>();
        held.forEach(h -> open.add(h.title() + " (" + Sentences.percent(h.probability()) + ") cannot be concluded: "
                + String.join("; ", h.heldBack())));
        if (held.isEmpty()) {
            String leaders = String.join(
                    "; ",
                    causes.stream()
                            .sorted(Comparator.comparingDouble((RankedCause c) -> -c.probability()))
                            .limit(3)
                            .map(c -> c.title() + " (" + Sentences.percent(c.probability()) + ")")
                            .toList());
            open.add("No cause is probable enough; ahead are " + leaders + ".");
        }
        return new Verdict(Verdict.UNDETERMINED, List.of(), "It cannot be told yet.", open);
    }
}
