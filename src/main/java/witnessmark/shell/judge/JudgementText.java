package witnessmark.shell.judge;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.PartSeen;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Thresholds;
import witnessmark.diagnosis.Verdict;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** All of a judgement: the verdict first, then why, then what to do next. */
final class JudgementText {
    private static final double WORTH_A_LINE = 0.05;
    private static final double WORTH_A_BAR = 0.01;
    private static final int MOST_SHOWN = 8;
    private static final int CHECKS_SHOWN = 6;

    private final KnowledgeBase knowledge;
    private final Page page;
    private final Texts wording;
    private final ContradictionsText contradictions;
    private final Depth depth;

    JudgementText(KnowledgeBase knowledge, Page page, Texts wording, Depth depth) {
        this.knowledge = knowledge;
        this.page = page;
        this.wording = wording;
        this.contradictions = new ContradictionsText(knowledge, page, wording);
        this.depth = depth;
    }

    /**
     * @param causesShown the most causes to show
     */
    void print(String title, Optional<AfterSignOff> after, Judgement judgement, int causesShown) {
        page.line(wording.text(title.isEmpty() ? "judge.case" : "judge.case-title", judgement.caseId(), title));
        after.ifPresent(a -> signed(page, a));
        verdict(judgement);
        parts(judgement.parts());
        contradictions.print(judgement);
        causes(judgement, causesShown);
        if (!judgement.sharesTold().isEmpty()) {
            attribution(judgement);
        }
        nextChecks(judgement.nextChecks());
        advice(judgement.advice());
        if (!judgement.remarks().isEmpty()) {
            page.heading(wording.text("judge.remarks")).items(judgement.remarks());
        }
        page.blank();
        page.line(wording.text("status.coverage", ScreenFigures.percent(judgement.coverage())));
        page.line(wording.text("status.support"));
        page.flush();
    }

    /** What was signed stands first, whatever is judged today. */
    static void signed(Page page, AfterSignOff after) {
        page.blank();
        after.lines().forEach(line -> page.indented("  ", "  ", line));
    }

    private void verdict(Judgement judgement) {
        page.heading(wording.text("judge.verdict"))
                .indented("  ", "  ", judgement.verdict().sentence());
        page.items(judgement.verdict().open());
    }

    /** What was seen is settled; whether it explains what the truck does is said apart. */
    private void parts(List<PartSeen> parts) {
        if (parts.isEmpty()) {
            return;
        }
        page.heading(wording.text("judge.parts"));
        parts.forEach(part -> page.item(part.title() + ". " + explains(part) + reasons(part)));
    }

    private String explains(PartSeen part) {
        if (part.explains().isEmpty() || part.reasons().isEmpty()) {
            return "";
        }
        PartSeen.Explained first = part.explains().get(0);
        return wording.text(
                first.probability() < Thresholds.EXPLAINS ? "judge.explains-not" : "judge.explains",
                first.title().toLowerCase(Locale.ROOT),
                wording.text(likely(first.probability())));
    }

    private String reasons(PartSeen part) {
        return part.reasons().size() < 2
                ? ""
                : " "
                        + wording.text(
                                "judge.reasons",
                                ScreenFigures.some(
                                        part.reasons().stream()
                                                .map(r -> r.title() + " " + ScreenFigures.percent(r.probability()))
                                                .toList(),
                                        MOST_SHOWN,
                                        wording));
    }

    private static String likely(double probability) {
        return probability >= Thresholds.CONCLUDED ? "judge.likely" : "judge.maybe";
    }

    private void causes(Judgement judgement, int shown) {
        page.heading(wording.text("judge.causes"));
        List<RankedCause> causes = judgement.causes();
        for (int i = 0; i < Math.min(shown, causes.size()); i++) {
            RankedCause cause = causes.get(i);
            if (i > 0 && cause.probability() < WORTH_A_LINE) {
                break;
            }
            page.numbered(i + 1, named(knowledge, judgement.verdict(), cause, JudgementText::chance));
            weights("status.for", cause.evidenceFor());
            weights("status.against", cause.evidenceAgainst());
            if (!cause.unchecked().isEmpty() && cause.probability() >= 0.1) {
                page.under(
                        wording.text("judge.unchecked"),
                        ScreenFigures.some(
                                cause.unchecked().stream()
                                        .map(contradictions::title)
                                        .toList(),
                                MOST_SHOWN,
                                wording));
            }
        }
        if (depth == Depth.FIGURES) {
            page.indented("     ", "     ", wording.text("judge.odds"));
        }
    }

    private static String chance(double probability) {
        return ScreenFigures.bar(probability) + " " + ScreenFigures.percent(probability);
    }

    /** Where it cannot be told, nobody is given a chance of having done it, nor put into a class of those who do. */
    static String named(KnowledgeBase knowledge, Verdict verdict, RankedCause cause, DoubleFunction<String> chance) {
        String id = " (" + cause.id() + ")";
        return knowledge.classOf(cause.classId()).blames() && verdict.standing() == Verdict.Standing.UNDETERMINED
                ? cause.title() + id
                : chance.apply(cause.probability()) + "  " + cause.title() + " - "
                        + knowledge.classOf(cause.classId()).title().toLowerCase(Locale.ROOT) + id;
    }

    private void weights(String key, List<RankedCause.Weight> weights) {
        if (!weights.isEmpty()) {
            page.under(
                    wording.text(key),
                    ScreenFigures.some(weights.stream().map(this::weight).toList(), MOST_SHOWN, wording));
        }
    }

    private String weight(RankedCause.Weight weight) {
        String strength = depth == Depth.FIGURES
                ? ScreenFigures.odds(weight.decibans())
                : wording.text(Strength.of(weight.decibans()).key());
        return weight.title() + wording.text("weight." + weight.state().word()) + " (" + strength + ")";
    }

    private void attribution(Judgement judgement) {
        page.heading(wording.text("judge.classes"));
        judgement.sharesTold().stream()
                .filter(s -> s.probability() >= WORTH_A_BAR)
                .forEach(s -> page.indented(
                        "  " + ScreenFigures.bar(s.probability()) + " ",
                        "  ",
                        ScreenFigures.percent(s.probability()) + "  " + s.title()));
    }

    private void nextChecks(List<NextCheck> checks) {
        page.heading(wording.text("judge.next"));
        if (checks.isEmpty()) {
            page.indented("  ", "  ", wording.text("status.nothing-next"));
        }
        List<NextCheck> shown = checks.subList(0, Math.min(CHECKS_SHOWN, checks.size()));
        for (int i = 0; i < shown.size(); i++) {
            NextCheck check = shown.get(i);
            page.numbered(
                    i + 1,
                    check.accessTitle() + " (" + time(check, wording) + "): " + check.ask() + " (" + check.finding()
                            + ")");
            if (!check.look().isEmpty()) {
                page.under(wording.text("judge.how"), check.look());
            }
            page.under(
                    wording.text("judge.why"),
                    depth == Depth.FIGURES
                            ? wording.text(
                                    "judge.worth", check.why(), ScreenFigures.percent(Math.pow(2, -check.gainBits())))
                            : check.why());
        }
        cautions(shown);
    }

    /** Minutes of work at it, and to get there. */
    static String time(NextCheck check, Texts wording) {
        return ScreenFigures.minutes(check.checkMinutes())
                + (check.openMinutes() > 0
                        ? " + " + wording.text("judge.open", ScreenFigures.minutes(check.openMinutes()))
                        : "");
    }

    private void cautions(List<NextCheck> shown) {
        Set<String> cautions = new LinkedHashSet<>();
        shown.forEach(check -> cautions.addAll(check.cautions()));
        if (!cautions.isEmpty()) {
            page.blank();
        }
        cautions.forEach(c -> page.indented(
                "  " + wording.text("caution") + " ",
                "    ",
                knowledge.cautions().get(c).in(knowledge.language())));
    }

    private void advice(AdviceGiven advice) {
        pieces("judge.repair", advice.repair(), Reasons.SAID);
        pieces("judge.coaching", advice.coaching(), Reasons.SAID);
        pieces("judge.towing", advice.towing(), Reasons.LEFT_OUT);
        pieces("judge.cautions", advice.cautions(), Reasons.LEFT_OUT);
    }

    private enum Reasons {
        SAID,
        LEFT_OUT
    }

    private void pieces(String key, List<AdviceGiven.Piece> pieces, Reasons reasons) {
        if (pieces.isEmpty()) {
            return;
        }
        page.heading(wording.text(key));
        String reason = "";
        for (AdviceGiven.Piece piece : pieces) {
            if (reasons == Reasons.SAID && !piece.why().equals(reason)) {
                page.indented("  ", "  ", "(" + piece.why() + ")");
                reason = piece.why();
            }
            page.item(piece.text());
        }
    }
}
