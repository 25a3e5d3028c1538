package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Vocabulary.CauseClass;

/** Decides which class may be concluded, which is only pointed to, or that it cannot be told yet. */
final class ReachVerdict {
    private static final int MOST_LEADERS = 3;

    private final KnowledgeBase knowledge;
    private final Titles titles;
    private final Sentences say;

    ReachVerdict(KnowledgeBase knowledge, Titles titles) {
        this.knowledge = knowledge;
        this.titles = titles;
        this.say = new Sentences(knowledge.language());
    }

    /**
     * The verdict.
     *
     * @param causes ranked, best answer first
     * @param attribution of the classes, most probable first
     * @param marks looks and marks found present
     */
    Verdict verdict(List<RankedCause> causes, List<Judgement.ClassShare> attribution, List<String> marks) {
        List<RankedCause> concluded = with(causes, RankedCause.Standing.CONCLUDED);
        List<RankedCause> held = with(causes, RankedCause.Standing.HELD_BACK);
        if (!concluded.isEmpty() && !outweighed(concluded.get(0), causes)) {
            return concluded(concluded, causes, marks);
        }
        return pointsTo(causes, attribution)
                .map(share -> pointing(share, causes))
                .orElseGet(() -> undetermined(causes, held));
    }

    private static List<RankedCause> with(List<RankedCause> causes, RankedCause.Standing standing) {
        return causes.stream().filter(c -> c.standing() == standing).toList();
    }

    /** Whether something that may not be concluded answers the complaint better. */
    private static boolean outweighed(RankedCause best, List<RankedCause> causes) {
        return causes.stream().takeWhile(c -> c != best).anyMatch(c -> c.standing() == RankedCause.Standing.HELD_BACK);
    }

    private Verdict concluded(List<RankedCause> concluded, List<RankedCause> causes, List<String> marks) {
        RankedCause best = concluded.get(0);
        CauseClass of = knowledge.classOf(best.classId());
        String sentence = of.blames()
                ? say.say("verdict-blames", best.title(), of.title().toLowerCase(Locale.ROOT))
                : say.say("verdict", of.title(), of.plain(), best.title());
        List<String> open = new ArrayList<>();
        concluded.stream()
                .skip(1)
                .forEach(c -> open.add(say.say("verdict-also", c.title(), say.percent(c.probability()))));
        with(causes, RankedCause.Standing.HELD_BACK).forEach(h -> open.add(notConcluded(h)));
        causes.stream()
                .filter(c -> c.standing().compareTo(RankedCause.Standing.HELD_BACK) > 0)
                .filter(c -> c.probability() >= Thresholds.OPEN_BESIDE
                        && !c.classId().equals(best.classId()))
                .limit(MOST_LEADERS)
                .forEach(c -> open.add(say.say("verdict-open-beside", c.title())));
        unexplained(concluded, marks).ifPresent(open::add);
        return new Verdict(
                best.classId(),
                Verdict.Standing.CONCLUDED,
                Optional.empty(),
                concluded.stream()
                        .filter(c -> c.classId().equals(best.classId()))
                        .map(RankedCause::id)
                        .toList(),
                sentence,
                open);
    }

    private Optional<String> unexplained(List<RankedCause> concluded, List<String> marks) {
        List<String> left = marks.stream()
                .filter(mark -> concluded.stream()
                        .map(c -> knowledge.causes().get(c.id()))
                        .noneMatch(c ->
                                c.links().stream().anyMatch(l -> l.finding().equals(mark))))
                .limit(MOST_LEADERS)
                .map(mark -> "{finding:" + mark + "}")
                .toList();
        return left.isEmpty()
                ? Optional.empty()
                : Optional.of(titles.fill(say.say("verdict-unexplained", String.join("; ", left))));
    }

    /** The class of the best answer, if it is likely by far and not one of two that explain the parts alike. */
    private Optional<Judgement.ClassShare> pointsTo(List<RankedCause> causes, List<Judgement.ClassShare> attribution) {
        return causes.stream()
                .limit(1)
                .filter(c ->
                        hasDirection(c.reasons(), knowledge.classOf(c.classId()).blames()))
                .flatMap(c -> attribution.stream()
                        .filter(share -> share.classId().equals(c.classId()))
                        .filter(share -> share.probability() >= least(c, causes)))
                .findFirst();
    }

    /** Where no single cause leads, several that share the chance must leave little else, on evidence that fits together. */
    private static double least(RankedCause best, List<RankedCause> causes) {
        if (best.probability() >= Thresholds.LEADS) {
            return Thresholds.POINTS_TO;
        }
        boolean contradicted =
                causes.stream().flatMap(c -> c.reasons().stream()).anyMatch(HoldReason.Contradicted.class::isInstance);
        return contradicted ? Double.POSITIVE_INFINITY : Thresholds.POINTS_TO_UNLED;
    }

    /** People are pointed to only where little is missing: else it would be choosing among what nobody looked at. */
    private static boolean hasDirection(List<HoldReason> reasons, boolean blames) {
        long missing = reasons.stream()
                .filter(r -> r instanceof HoldReason.NotProvedGood || r instanceof HoldReason.RivalOpen)
                .count();
        return reasons.stream().noneMatch(r -> r.leavesNoDirection(blames))
                && !(blames && missing > Thresholds.MISSING_AT_MOST);
    }

    private Verdict pointing(Judgement.ClassShare share, List<RankedCause> causes) {
        // Beside one that is as likely as a conclusion what is merely possible is no second answer.
        double least = causes.get(0).probability() >= Thresholds.CONCLUDED ? Thresholds.LEADS : Thresholds.WORTH_A_WORD;
        List<RankedCause> members = causes.stream()
                .filter(c -> c.classId().equals(share.classId()) && c.probability() >= least)
                .limit(MOST_LEADERS)
                .toList();
        String names = String.join(
                say.say("verdict-or"), members.stream().map(RankedCause::title).toList());
        String looks = looks(members);
        return new Verdict(
                Verdict.UNDETERMINED,
                Verdict.Standing.POINTS_TO,
                Optional.of(share.classId()),
                members.stream().map(RankedCause::id).toList(),
                say.say(
                        looks.isEmpty() ? "verdict-points-to" : "verdict-points-to-look",
                        share.title().toLowerCase(Locale.ROOT),
                        names,
                        looks),
                members.stream()
                        .filter(c -> !c.heldBack().isEmpty())
                        .map(this::notConcluded)
                        .toList());
    }

    /** The shortest list of looks that would complete it. */
    private String looks(List<RankedCause> members) {
        return titles.fill(members.stream()
                .limit(1)
                .flatMap(c -> c.demands().stream())
                .map(f -> "{finding:" + f + "}")
                .collect(Collectors.joining("; ")));
    }

    private String notConcluded(RankedCause held) {
        return say.say("verdict-not-concluded", held.title(), String.join("; ", held.heldBack()));
    }

    private Verdict undetermined(List<RankedCause> causes, List<RankedCause> held) {
        List<String> open = new ArrayList<>();
        held.forEach(h -> open.add(notConcluded(h)));
        if (held.isEmpty() && !causes.isEmpty()) {
            String leaders = String.join(
                    "; ",
                    causes.stream().limit(MOST_LEADERS).map(RankedCause::title).toList());
            open.add(say.say("verdict-could-be", leaders));
        }
        return new Verdict(
                Verdict.UNDETERMINED,
                Verdict.Standing.UNDETERMINED,
                Optional.empty(),
                List.of(),
                say.say("verdict-undetermined"),
                open);
    }
}
