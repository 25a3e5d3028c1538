package witnessmark.shell.judge;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.casefile.SignOff;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.shell.print.Texts;

/** A judgement for somebody who stands at the bench: the verdict first, then why, then what to do next. */
final class JudgementText {
    private static final int CHECKS_SHOWN = 6;
    private static final int WEIGHTS_SHOWN = 4;

    private final KnowledgeBase knowledge;
    private final Page page;
    private final Texts wording;

    JudgementText(KnowledgeBase knowledge, Page page, Texts wording) {
        this.knowledge = knowledge;
        this.page = page;
        this.wording = wording;
    }

    void print(String title, Optional<SignOff> signedOff, Judgement judgement, int causesShown) {
        page.line(wording.text(title.isEmpty() ? "judge.case" : "judge.case-title", judgement.caseId(), title));
        signedOff.ifPresent(s -> signed(s, judgement));
        verdict(judgement);
        contradictions(judgement);
        causes(judgement, causesShown);
        attribution(judgement);
        nextChecks(judgement.nextChecks());
        advice(judgement.advice());
        if (!judgement.remarks().isEmpty()) {
            page.heading(wording.text("judge.remarks")).items(judgement.remarks());
        }
        page.blank();
        page.line(wording.text("stand.coverage", ScreenFigures.percent(judgement.coverage())));
        page.line(wording.text("stand.support"));
        page.flush();
    }

    /** What was signed stands first, whatever is judged today. */
    private void signed(SignOff signOff, Judgement judgement) {
        page.heading(wording.text(
                "judge.signed", signOff.who(), signOff.time().toString().substring(0, 10)));
        signOff.judgement()
                .ifPresentOrElse(
                        j -> page.indented("  ", "  ", j.sentence()),
                        () -> page.indented("  ", "  ", wording.text("judge.signed-without")));
        boolean differs = signOff.judgement()
                .filter(j -> !j.verdict().equals(judgement.verdict().classId())
                        || !j.standing().equals(judgement.verdict().standing().word()))
                .isPresent();
        page.indented("  ", "  ", wording.text(differs ? "judge.today-differs" : "judge.today"));
    }

    private void verdict(Judgement judgement) {
        page.heading(wording.text("judge.verdict"))
                .indented("  ", "  ", judgement.verdict().sentence());
        page.items(judgement.verdict().open());
    }

    private void contradictions(Judgement judgement) {
        if (!judgement.contradictions().isEmpty()) {
            page.heading(wording.text("stand.contradictions"));
            judgement
                    .contradictions()
                    .forEach(c -> page.item(String.join(
                                    " + ",
                                    c.findings().stream().map(this::title).toList())
                            + ": " + c.why()));
        }
    }

    private void causes(Judgement judgement, int shown) {
        page.heading(wording.text("judge.causes"));
        List<RankedCause> causes = judgement.causes();
        for (int i = 0; i < Math.min(shown, causes.size()); i++) {
            RankedCause cause = causes.get(i);
            if (i > 0 && cause.probability() < 0.02) {
                break;
            }
            page.numbered(
                    i + 1,
                    ScreenFigures.bar(cause.probability()) + " " + ScreenFigures.percent(cause.probability()) + "  "
                            + cause.title() + " - "
                            + knowledge.classOf(cause.classId()).title().toLowerCase(Locale.ROOT) + " ("
                            + cause.id() + ")");
            weights("stand.for", cause.evidenceFor());
            weights("stand.against", cause.evidenceAgainst());
            if (!cause.unchecked().isEmpty() && cause.probability() >= 0.1) {
                page.under(
                        wording.text("judge.unchecked"),
                        ScreenFigures.some(
                                cause.unchecked().stream().map(this::title).toList(), WEIGHTS_SHOWN));
            }
        }
        page.indented("     ", "     ", wording.text("judge.decibans"));
    }

    private void weights(String key, List<RankedCause.Weight> weights) {
        if (!weights.isEmpty()) {
            page.under(
                    wording.text(key),
                    ScreenFigures.some(
                            weights.stream()
                                    .map(w -> w.title() + wording.text("weight." + w.state()) + " ("
                                            + ScreenFigures.decibans(w.decibans()) + ")")
                                    .toList(),
                            WEIGHTS_SHOWN));
        }
    }

    private void attribution(Judgement judgement) {
        page.heading(wording.text("judge.classes"));
        judgement.attribution().stream()
                .filter(s -> s.probability() >= 0.01)
                .forEach(s -> page.indented(
                        "  " + ScreenFigures.bar(s.probability()) + " ",
                        "  ",
                        ScreenFigures.percent(s.probability()) + "  " + s.title()));
    }

    private void nextChecks(List<NextCheck> checks) {
        page.heading(wording.text("judge.next"));
        if (checks.isEmpty()) {
            page.indented("  ", "  ", wording.text("stand.nothing-next"));
        }
        for (int i = 0; i < Math.min(CHECKS_SHOWN, checks.size()); i++) {
            NextCheck check = checks.get(i);
            String time = ScreenFigures.minutes(check.checkMinutes())
                    + (check.openMinutes() > 0
                            ? " + " + wording.text("judge.open", ScreenFigures.minutes(check.openMinutes()))
                            : "");
            page.numbered(
                    i + 1, check.accessTitle() + " (" + time + "): " + check.ask() + " (" + check.finding() + ")");
            if (!check.look().isEmpty()) {
                page.under(wording.text("judge.how"), check.look());
            }
            page.under(
                    wording.text("judge.why"),
                    wording.text("judge.worth", check.why(), ScreenFigures.bits(check.gainBits())));
        }
        page.blank();
        checks.stream()
                .limit(CHECKS_SHOWN)
                .flatMap(check -> check.cautions().stream())
                .distinct()
                .forEach(c -> page.indented(
                        "  " + wording.text("caution") + " ",
                        "    ",
                        knowledge.cautions().get(c).english()));
    }

    private void advice(AdviceGiven advice) {
        pieces("judge.repair", advice.repair(), true);
        pieces("judge.coaching", advice.coaching(), true);
        pieces("judge.towing", advice.towing(), false);
        pieces("judge.cautions", advice.cautions(), false);
    }

    private void pieces(String key, List<AdviceGiven.Piece> pieces, boolean withReason) {
        if (pieces.isEmpty()) {
            return;
        }
        page.heading(wording.text(key));
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
