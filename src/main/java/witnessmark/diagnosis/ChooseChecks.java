package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import witnessmark.inference.Gain;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/** Ranks the checks not yet made by expected information for each minute of work, what is outside before teardown. */
final class ChooseChecks {
    private static final double WORTH_MAKING_BITS = 0.005;

    private final KnowledgeBase knowledge;

    ChooseChecks(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
    }

    /** Every check worth making, best first. */
    List<NextCheck> next(Reading reading) {
        Set<String> open = openSteps(reading);
        CauseNetwork network = reading.network();
        int[] candidates = knowledge.findings().values().stream()
                .filter(f -> !reading.taken().containsKey(f.id()))
                .filter(f -> reading.canBeFound(f.id()) && !reading.isSettled(f.id()))
                .filter(f -> reading.touchesQuestion(f.id()))
                .mapToInt(f -> network.finding(f.id()))
                .toArray();
        List<NextCheck> checks = new ArrayList<>();
        for (Gain gain : reading.inference().gains(reading.evidence(), candidates)) {
            double bits = bitsInQuestion(gain, reading);
            if (bits >= WORTH_MAKING_BITS) {
                checks.add(check(network.findings().get(gain.finding()), gain, bits, reading, open));
            }
        }
        checks.sort(Comparator.comparing((NextCheck c) -> c.teardown() && c.openMinutes() > 0)
                .thenComparing(
                        Comparator.comparingDouble(NextCheck::gainPerMinute).reversed())
                .thenComparing(NextCheck::finding));
        return List.copyOf(checks);
    }

    private NextCheck check(Finding finding, Gain gain, double bits, Reading reading, Set<String> open) {
        List<AccessStep> way = knowledge.wayTo(finding.access());
        double openMinutes = way.stream()
                .filter(step -> !open.contains(step.id()))
                .mapToDouble(AccessStep::minutes)
                .sum();
        Set<String> cautions = new LinkedHashSet<>();
        way.forEach(step -> cautions.addAll(step.cautions()));
        AccessStep step = way.get(way.size() - 1);
        return new NextCheck(
                finding.id(),
                finding.title(),
                finding.ask(),
                finding.look(),
                step.id(),
                step.title(),
                bits,
                finding.minutes(),
                openMinutes,
                step.teardown(),
                why(gain, reading),
                List.copyOf(cautions));
    }

    /** Expected information about the causes in question, each taken by itself and summed. */
    private static double bitsInQuestion(Gain gain, Reading reading) {
        double bits = 0;
        for (int c = 0; c < gain.bitsByCause().length; c++) {
            if (reading.isInQuestion(reading.network().causes().get(c).id())) {
                bits += gain.bitsByCause()[c];
            }
        }
        return bits;
    }

    /** Which cause the check would move most, and how far either way. */
    private String why(Gain gain, Reading reading) {
        int most = 0;
        double widest = -1;
        for (int c = 0; c < gain.ifPresent().length; c++) {
            double width = Math.abs(gain.ifPresent()[c] - gain.ifAbsent()[c]);
            boolean counts =
                    reading.isInQuestion(reading.network().causes().get(c).id());
            if (counts && width > widest) {
                widest = width;
                most = c;
            }
        }
        var cause = reading.network().causes().get(most);
        return "moves \"" + cause.title() + "\" from " + Sentences.percent(reading.probability(cause.id())) + " to "
                + Sentences.percent(gain.ifPresent()[most]) + " if present, "
                + Sentences.percent(gain.ifAbsent()[most]) + " if absent";
    }

    /** The steps that must be open already, since something behind them was looked at. */
    private Set<String> openSteps(Reading reading) {
        Set<String> open = new HashSet<>();
        reading.taken().keySet().forEach(id -> knowledge
                .wayTo(knowledge.findings().get(id).access())
                .forEach(step -> open.add(step.id())));
        return open;
    }
}
