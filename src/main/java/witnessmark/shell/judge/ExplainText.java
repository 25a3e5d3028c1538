package witnessmark.shell.judge;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.explain.CarryingFindings;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** Says in full why a cause stands where it stands, and which findings carry a verdict. */
final class ExplainText {
    private static final int TURNED_SHOWN = 3;
    private static final int DIFFERENCES_SHOWN = 3;

    private final KnowledgeBase knowledge;
    private final Page page;
    private final Texts wording;

    ExplainText(KnowledgeBase knowledge, Page page, Texts wording) {
        this.knowledge = knowledge;
        this.page = page;
        this.wording = wording;
    }

    void carrying(String caseId, CarryingFindings carrying) {
        page.heading(wording.text("explain.title", caseId));
        page.indented("  ", "  ", carrying.verdict().sentence());
        page.blank();
        page.line(wording.text(leadIn(carrying), carrying.tried()));
        carrying.turned().stream()
                .limit(TURNED_SHOWN)
                .forEach(t -> page.item(wording.text(
                        "explain.turned",
                        t.findings().stream().map(this::named).collect(Collectors.joining(" + ")),
                        t.then().sentence())));
        if (carrying.turned().size() > TURNED_SHOWN) {
            page.item(wording.text("explain.more", carrying.turned().size() - TURNED_SHOWN));
        }
        page.blank();
        page.line(wording.text("explain.hint", caseId));
        page.flush();
    }

    private static String leadIn(CarryingFindings carrying) {
        if (carrying.tried() == 0) {
            return "explain.nothing";
        }
        if (carrying.turned().isEmpty()) {
            return "explain.none";
        }
        return carrying.turned().get(0).findings().size() == 1 ? "explain.single" : "explain.pairs";
    }

    void cause(Cause cause, Judgement judgement) {
        Optional<RankedCause> ranked = ranked(judgement, cause.id());
        page.heading(cause.title()
                + ranked.map(r -> ": " + ScreenFigures.percent(r.probability())).orElse("")
                + " ("
                + knowledge
                        .classOf(ranked.map(RankedCause::classId).orElse(cause.classId()))
                        .title() + ")");
        page.heading(wording.text("explain.mechanism"))
                .indented("  ", "  ", cause.mechanism().strip());
        if (ranked.isEmpty()) {
            page.blank().line(wording.text("explain.not-in-question"));
        } else {
            weights("explain.for", ranked.get().evidenceFor());
            weights("explain.against", ranked.get().evidenceAgainst());
        }
        changes(cause, ranked, judgement);
        ranked.ifPresent(r -> {
            list("explain.unchecked", r.unchecked().stream().map(this::named).toList());
            list("explain.held", r.heldBack());
            lookAlikes(r, judgement);
        });
        page.flush();
    }

    private void weights(String heading, List<RankedCause.Weight> weights) {
        if (weights.isEmpty() && heading.equals("explain.for")) {
            page.heading(wording.text(heading)).item(wording.text("explain.nothing-for"));
        } else {
            list(
                    heading,
                    weights.stream()
                            .map(w -> ScreenFigures.odds(w.decibans()) + "  " + w.title()
                                    + wording.text("weight." + w.state().word()) + " (" + w.finding() + ")")
                            .toList());
        }
    }

    private void changes(Cause cause, Optional<RankedCause> ranked, Judgement judgement) {
        String classId = ranked.map(RankedCause::classId).orElse(cause.classId());
        list(
                "explain.changes",
                judgement.changes().stream()
                        .filter(c ->
                                c.subject().equals(cause.id()) || c.subject().equals(classId))
                        .map(Judgement.Change::sentence)
                        .toList());
    }

    private void lookAlikes(RankedCause cause, Judgement judgement) {
        if (cause.lookAlikes().isEmpty()) {
            return;
        }
        page.heading(wording.text("explain.ahead"));
        for (RankedCause.Rivalry rival : cause.lookAlikes()) {
            page.item(wording.text(
                    "explain.rival", rival.title(), ScreenFigures.percent(rival.probability()), rival.tells()));
            ranked(judgement, rival.cause()).ifPresent(other -> page.under(difference(cause, other)));
        }
    }

    /** Which findings put one cause before the other, or behind it. */
    private String difference(RankedCause cause, RankedCause rival) {
        Map<String, Double> differences = new HashMap<>();
        weights(cause).forEach(w -> differences.merge(w.finding(), w.decibans(), Double::sum));
        weights(rival).forEach(w -> differences.merge(w.finding(), -w.decibans(), Double::sum));
        double apart = 10 * (Math.log10(odds(cause.probability())) - Math.log10(odds(rival.probability())));
        String most = differences.entrySet().stream()
                .filter(e -> e.getValue() * apart > 0)
                .sorted(Comparator.comparingDouble((Map.Entry<String, Double> e) -> -Math.abs(e.getValue())))
                .limit(DIFFERENCES_SHOWN)
                .map(e -> title(e.getKey(), cause, rival) + " " + ScreenFigures.odds(e.getValue()))
                .collect(Collectors.joining("; "));
        return wording.text(
                apart >= 0 ? "explain.rival-weights" : "explain.rival-behind",
                ScreenFigures.odds(Math.abs(apart)),
                most.isEmpty() ? "-" : most);
    }

    private String title(String finding, RankedCause cause, RankedCause rival) {
        return Stream.concat(weights(cause), weights(rival))
                .filter(w -> w.finding().equals(finding))
                .findFirst()
                .map(w -> w.title() + wording.text("weight." + w.state().word()))
                .orElse(finding);
    }

    private static Stream<RankedCause.Weight> weights(RankedCause cause) {
        return Stream.concat(cause.evidenceFor().stream(), cause.evidenceAgainst().stream());
    }

    private static double odds(double probability) {
        double bounded = Math.min(1 - 1e-12, Math.max(1e-12, probability));
        return bounded / (1 - bounded);
    }

    private static Optional<RankedCause> ranked(Judgement judgement, String cause) {
        return judgement.causes().stream().filter(c -> c.id().equals(cause)).findFirst();
    }

    private void list(String heading, List<String> items) {
        if (!items.isEmpty()) {
            page.heading(wording.text(heading)).items(items);
        }
    }

    private String named(String finding) {
        return knowledge.findings().get(finding).title() + " (" + finding + ")";
    }
}
