package witnessmark.shell;

import java.util.List;
import java.util.Locale;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.knowledge.KnowledgeBase;

/** A judgement for somebody who stands at the bench: the verdict first, then why, then what to do next. */
final class JudgementText {
    private static final int CHECKS_SHOWN = 6;
    private static final int WEIGHTS_SHOWN = 4;

    private final KnowledgeBase knowledge;
    private final Page page;

    JudgementText(KnowledgeBase knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
    }

    void print(String title, Judgement judgement, int causesShown) {
        page.line("Case " + judgement.caseId() + (title.isEmpty() ? "" : ": " + title));
        verdict(judgement);
        contradictions(judgement);
        causes(judgement, causesShown);
        attribution(judgement);
        nextChecks(judgement.nextChecks());
        advice(judgement.advice());
        if (!judgement.remarks().isEmpty()) {
            page.heading("Remarks").items(judgement.remarks());
        }
        page.blank();
        page.line("Looked at so far: " + Say.percent(judgement.coverage())
                + " of the evidence that matters for the causes still in question.");
        page.line("This ranking is decision support, not an inspection or a legal finding. Follow the service manual of"
                + " this unit, local codes and licensed practice.");
        page.flush();
    }

    private void verdict(Judgement judgement) {
        page.heading("Verdict").indented("  ", "  ", judgement.verdict().sentence());
        page.items(judgement.verdict().open());
    }

    private void contradictions(Judgement judgement) {
        if (!judgement.contradictions().isEmpty()) {
            page.heading("The evidence contradicts itself");
            judgement
                    .contradictions()
                    .forEach(c -> page.item(String.join(
                                    " + ",
                                    c.findings().stream().map(this::title).toList())
                            + ": " + c.why()));
        }
    }

    private void causes(Judgement judgement, int shown) {
        page.heading("Causes, most probable first (several can be at work at once)");
        List<RankedCause> causes = judgement.causes();
        for (int i = 0; i < Math.min(shown, causes.size()); i++) {
            RankedCause cause = causes.get(i);
            if (i > 0 && cause.probability() < 0.02) {
                break;
            }
            page.numbered(
                    i + 1,
                    Say.bar(cause.probability()) + " " + Say.percent(cause.probability()) + "  " + cause.title() + " - "
                            + knowledge.classOf(cause.classId()).title().toLowerCase(Locale.ROOT) + " ("
                            + cause.id() + ")");
            weights("for:", cause.evidenceFor());
            weights("against:", cause.evidenceAgainst());
            if (!cause.unchecked().isEmpty() && cause.probability() >= 0.1) {
                page.under(
                        "should also show, not looked at:",
                        Say.some(cause.unchecked().stream().map(this::title).toList(), WEIGHTS_SHOWN));
            }
        }
        page.line("     Figures in brackets are decibans: how far the finding alone moves the odds; 10 is ten to one.");
    }

    private void weights(String label, List<RankedCause.Weight> weights) {
        if (!weights.isEmpty()) {
            page.under(
                    label,
                    Say.some(
                            weights.stream()
                                    .map(w ->
                                            w.title() + stateWord(w.state()) + " (" + Say.decibans(w.decibans()) + ")")
                                    .toList(),
                            WEIGHTS_SHOWN));
        }
    }

    private static String stateWord(String state) {
        return switch (state) {
            case "absent" -> ": looked at, not so";
            case "unsure" -> ": unsure";
            default -> "";
        };
    }

    private void attribution(Judgement judgement) {
        page.heading("Where it points (at least one cause of the class)");
        judgement.attribution().stream()
                .filter(s -> s.probability() >= 0.01)
                .forEach(s -> page.indented(
                        "  " + Say.bar(s.probability()) + " ", "  ", Say.percent(s.probability()) + "  " + s.title()));
    }

    private void nextChecks(List<NextCheck> checks) {
        page.heading("Look at next (most worth for the minutes first, outside before teardown)");
        if (checks.isEmpty()) {
            page.indented("  ", "  ", "Nothing that is still open would tell much more.");
        }
        for (int i = 0; i < Math.min(CHECKS_SHOWN, checks.size()); i++) {
            NextCheck check = checks.get(i);
            String time = Say.minutes(check.checkMinutes())
                    + (check.openMinutes() > 0 ? " + " + Say.minutes(check.openMinutes()) + " to get there" : "");
            page.numbered(
                    i + 1, check.accessTitle() + " (" + time + "): " + check.ask() + " (" + check.finding() + ")");
            if (!check.look().isEmpty()) {
                page.under("how:", check.look());
            }
            page.under("why:", check.why() + String.format(Locale.ROOT, "; worth %.2f bit", check.gainBits()));
        }
        page.blank();
        checks.stream()
                .limit(CHECKS_SHOWN)
                .flatMap(check -> check.cautions().stream())
                .distinct()
                .forEach(c -> page.indented(
                        "  Caution: ", "    ", knowledge.cautions().get(c).english()));
    }

    private void advice(AdviceGiven advice) {
        pieces("Repair notes", advice.repair(), true);
        pieces("Coaching points", advice.coaching(), true);
        pieces("For the next tow", advice.towing(), false);
        pieces("Cautions", advice.cautions(), false);
    }

    private void pieces(String heading, List<AdviceGiven.Piece> pieces, boolean withReason) {
        if (pieces.isEmpty()) {
            return;
        }
        page.heading(heading);
        String reason = "";
        for (AdviceGiven.Piece piece : pieces) {
            if (withReason && !piece.why().equals(reason)) {
                page.indented("  ", "  ", "(" + piece.why() + ")");
                reason = piece.why();
            }
            page.item(piece.text());
        }
    }

    private String title(String finding) {
        return knowledge.findings().containsKey(finding)
                ? knowledge.findings().get(finding).title()
                : finding;
    }
}
