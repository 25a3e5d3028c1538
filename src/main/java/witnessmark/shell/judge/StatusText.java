package witnessmark.shell.judge;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.casefile.CaseFile;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.NextVisit;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.gearbox.EnumWord;
import witnessmark.interview.Ending;
import witnessmark.knowledge.Advice;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** Where a case stands, on one screen: verdict, leading causes, classes, contradictions, what to look at next. */
public final class StatusText {
    private static final int CAUSES_SHOWN = 4;
    private static final int WEIGHTS_SHOWN = 3;
    private static final int VISITS_SHOWN = 3;
    private static final int CHECKS_SHOWN = 4;
    private static final double WORTH_A_LINE = 0.03;

    private final KnowledgeBase knowledge;
    private final Page page;
    private final Texts wording;
    private final ContradictionsText contradictions;
    private final boolean plainLines;

    private static final int LOST_SHOWN = 3;
    private static final int HELP_SHOWN = 5;

    /**
     * @param plainLines whether to leave out bars, which a screen reader would spell
     */
    public StatusText(KnowledgeBase knowledge, Page page, Texts wording, boolean plainLines) {
        this.knowledge = knowledge;
        this.page = page;
        this.wording = wording;
        this.contradictions = new ContradictionsText(knowledge, page, wording);
        this.plainLines = plainLines;
    }

    public Texts wording() {
        return wording;
    }

    public void print(CaseFile file, Judgement judgement, List<NextVisit> plan) {
        print(file, Optional.empty(), judgement, plan);
    }

    /** The same of a signed case: what was signed stands first. */
    public void print(CaseFile file, Optional<AfterSignOff> after, Judgement judgement, List<NextVisit> plan) {
        page.heading(wording.text(
                "status.title",
                file.id().text(),
                file.title().isEmpty() ? file.vehicle().unit() : file.title()));
        after.ifPresent(a -> {
            JudgementText.signed(page, a);
            page.blank();
        });
        page.indented("  ", "  ", judgement.verdict().sentence());
        page.items(judgement.verdict().open());
        contradictions.print(judgement);
        causes(judgement);
        if (!isOpen(judgement)) {
            classes(judgement);
        }
        visits(plan);
        page.blank();
        page.line(wording.text("status.coverage", ScreenFigures.percent(judgement.coverage())));
        page.line(wording.text("status.support"));
        page.flush();
    }

    /** Whether it cannot be told yet; then causes are named, and neither chances nor classes, which would rank people. */
    private static boolean isOpen(Judgement judgement) {
        return judgement.verdict().standing() == Verdict.Standing.UNDETERMINED;
    }

    private void classes(Judgement judgement) {
        List<Judgement.ClassShare> shares = judgement.sharesTold().stream()
                .filter(s -> s.probability() >= WORTH_A_LINE)
                .toList();
        if (!shares.isEmpty()) {
            page.heading(wording.text("status.classes"));
            shares.forEach(s -> page.indented("  ", "      ", share(s.probability(), s.title())));
        }
    }

    /** Why the interview ends. */
    public void ending(Ending ending) {
        String nearest = ending.nearest()
                .map(check -> wording.text(
                        "end.nearest", check.title(), check.accessTitle(), ScreenFigures.minutes(check.minutes())))
                .orElse("");
        switch (ending.reason()) {
            case VERDICT_STANDS -> page.indented(
                    "  ",
                    "  ",
                    wording.text(
                            "end.stands",
                            ScreenFigures.percent(ending.figure()),
                            ScreenFigures.percent(ending.outOfReach()),
                            nearest));
            case NOTHING_TELLS -> page.indented("  ", "  ", wording.text("end.nothing", nearest));
            case NOT_KNOWN -> page.indented("  ", "  ", wording.text("end.not-known"));
            case NOTHING_FOUND -> page.indented("  ", "  ", wording.text("end.nowhere"));
            case CONTRADICTED -> page.indented("  ", "  ", wording.text("end.contradicted"));
        }
        if (ending.skipped() > 0) {
            page.indented("  ", "  ", wording.text("end.skipped", ending.skipped()));
        }
    }

    /** What would tell most, for somebody who can look. */
    public void wouldHelp(List<NextCheck> looks) {
        looks.stream()
                .limit(HELP_SHOWN)
                .forEach(check -> page.item(wording.text(
                        "end.would-help", check.ask(), check.accessTitle(), ScreenFigures.minutes(check.minutes()))));
    }

    /** What would tell something, but cannot be looked at any more. */
    public void lost(List<NextCheck> lost) {
        if (!lost.isEmpty()) {
            page.indented(
                    "  ",
                    "  ",
                    wording.text(
                            "end.lost",
                            ScreenFigures.some(
                                    lost.stream().map(NextCheck::title).toList(), LOST_SHOWN, wording)));
        }
    }

    /** What to tell the driver, in the driver's language. */
    public void driver(AdviceGiven advice) {
        driver("coaching", advice.coaching(), knowledge.coaching());
        driver("towing", advice.towing(), knowledge.towing());
    }

    private void driver(String key, List<AdviceGiven.Piece> pieces, java.util.Map<String, ? extends Advice> texts) {
        if (pieces.isEmpty()) {
            return;
        }
        page.heading(wording.text("driver." + key));
        for (AdviceGiven.Piece piece : pieces) {
            Advice advice = texts.get(piece.id());
            String reason = advice.why(wording.language());
            page.item(advice.in(wording.language()) + (reason.isEmpty() ? "" : " " + reason));
        }
        page.line(wording.text("driver.no-blame"));
    }

    private void causes(Judgement judgement) {
        boolean open = isOpen(judgement);
        page.heading(wording.text(open ? "status.causes-open" : "status.causes"));
        List<RankedCause> causes = judgement.causesFrom(WORTH_A_LINE);
        if (causes.isEmpty()) {
            page.indented("  ", "  ", wording.text("status.no-cause"));
        }
        causes.stream().limit(CAUSES_SHOWN).forEach(c -> cause(c, open));
        if (causes.size() > CAUSES_SHOWN) {
            page.indented("  ", "  ", wording.text("status.more-causes", causes.size() - CAUSES_SHOWN));
        }
    }

    private void cause(RankedCause cause, boolean open) {
        String named = open
                ? cause.title() + " (" + cause.id() + ")"
                : share(cause.probability(), cause.title()) + " ("
                        + knowledge.classOf(cause.classId()).title().toLowerCase(Locale.ROOT) + "; " + cause.id()
                        + ")";
        page.indented("  ", "      ", named);
        weights("status.for", cause.evidenceFor());
        weights("status.against", cause.evidenceAgainst());
    }

    private void weights(String key, List<RankedCause.Weight> weights) {
        if (!weights.isEmpty()) {
            page.indented(
                    "      " + wording.text(key) + " ",
                    "        ",
                    ScreenFigures.some(
                            weights.stream()
                                    .map(w -> w.title()
                                            + wording.text("weight." + w.state().word()) + " ("
                                            + wording.text(
                                                    Strength.of(w.decibans()).key()) + ")")
                                    .toList(),
                            WEIGHTS_SHOWN,
                            wording));
        }
    }

    private void visits(List<NextVisit> plan) {
        page.heading(wording.text("status.next"));
        if (plan.isEmpty()) {
            page.indented("  ", "  ", wording.text("status.nothing-next"));
        }
        for (NextVisit visit : plan.subList(0, Math.min(VISITS_SHOWN, plan.size()))) {
            page.indented(
                    "  ",
                    "    ",
                    wording.text(
                            visit.openMinutes() > 0 ? "status.visit-open" : "status.visit",
                            visit.title(),
                            ScreenFigures.minutes(visit.openMinutes()),
                            wording.text(
                                    visit.checks().size() == 1 ? "check-one" : "checks",
                                    visit.checks().size())));
            waits(visit.access());
            visit.checks().stream()
                    .limit(CHECKS_SHOWN)
                    .forEach(c -> page.indented(
                            "    - ",
                            "      ",
                            c.ask() + " (" + ScreenFigures.minutes(c.checkMinutes()) + "; " + c.finding() + ")"));
        }
    }

    private void waits(String access) {
        knowledge
                .waitsFor(access)
                .ifPresent(wait -> page.indented("    ", "    ", wording.text("waits", EnumWord.of(wait))));
    }

    private String share(double probability, String title) {
        return (plainLines ? "" : ScreenFigures.bar(probability) + " ") + ScreenFigures.percent(probability) + "  "
                + title;
    }
}
