package witnessmark.shell.judge;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
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

/** A judgement for somebody who stands at the bench: the verdict first, then why, then what to do next. */
final class JudgementText {
    private static final double WORTH_A_LINE = 0.05;
    private static final double WORTH_A_BAR = 0.01;
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
        boolean full = depth != Depth.SCREEN;
        page.line(wording.text(title.isEmpty() ? "judge.case" : "judge.case-title", judgement.caseId(), title));
        after.ifPresent(a -> signed(page, a));
        verdict(judgement);
        parts(judgement.parts());
        contradictions.print(judgement);
        causes(judgement, causesShown);
        if (full && judgement.verdict().standing() != Verdict.Standing.UNDETERMINED) {
            attribution(judgement);
        }
        nextChecks(judgement.nextChecks());
        if (full) {
            advice(judgement.advice());
        } else {
            careful(judgement);
        }
        if (!judgement.remarks().isEmpty()) {
            page.heading(wording.text("judge.remarks")).items(full ? judgement.remarks() : some(judgement.remarks()));
        }
        page.blank();
        page.line(wording.text("status.coverage", ScreenFigures.percent(judgement.coverage()))
                + (full ? "" : " " + wording.text("judge.more", judgement.caseId())));
        page.line(wording.text("status.support"));
        page.flush();
    }

    private List<String> some(List<String> texts) {
        return texts.subList(0, Math.min(2, texts.size()));
    }

    /** What was signed stands first, whatever is judged today. */
    static void signed(Page page, AfterSignOff after) {
        page.blank();
        after.lines().forEach(line -> page.indented("  ", "  ", line));
    }

    private void verdict(Judgement judgement) {
        page.heading(wording.text("judge.verdict"))
                .indented("  ", "  ", judgement.verdict().sentence());
        List<String> open = judgement.verdict().open();
        page.items(depth == Depth.SCREEN ? some(open) : open);
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
                                        weightsShown(),
                                        wording));
    }

    private static String likely(double probability) {
        return probability >= Thresholds.CONCLUDED ? "judge.likely" : "judge.maybe";
    }

    private int weightsShown() {
        return depth == Depth.SCREEN ? 3 : 8;
    }

    private void causes(Judgement judgement, int shown) {
        page.heading(wording.text("judge.causes"));
        List<RankedCause> causes = judgement.causes();
        for (int i = 0; i < Math.min(shown, causes.size()); i++) {
            RankedCause cause = causes.get(i);
            if (i > 0 && cause.probability() < WORTH_A_LINE) {
                break;
            }
            page.numbered(i + 1, named(judgement.verdict(), cause) + " (" + cause.id() + ")");
            weights("status.for", cause.evidenceFor());
            weights("status.against", cause.evidenceAgainst());
            if (depth != Depth.SCREEN && !cause.unchecked().isEmpty() && cause.probability() >= 0.1) {
                page.under(
                        wording.text("judge.unchecked"),
                        ScreenFigures.some(
                                cause.unchecked().stream()
                                        .map(contradictions::title)
                                        .toList(),
                                weightsShown(),
                                wording));
            }
        }
        if (depth == Depth.FIGURES) {
            page.indented("     ", "     ", wording.text("judge.odds"));
        }
    }

    /** Where it cannot be told, nobody is given a chance of having done it, nor put into a class of those who do. */
    private String named(Verdict verdict, RankedCause cause) {
        return knowledge.classOf(cause.classId()).blames() && verdict.standing() == Verdict.Standing.UNDETERMINED
                ? cause.title()
                : ScreenFigures.bar(cause.probability()) + " " + ScreenFigures.percent(cause.probability()) + "  "
                        + cause.title() + " - "
                        + knowledge.classOf(cause.classId()).title().toLowerCase(Locale.ROOT);
    }

    private void weights(String key, List<RankedCause.Weight> weights) {
        if (!weights.isEmpty()) {
            page.under(
                    wording.text(key),
                    ScreenFigures.some(weights.stream().map(this::weight).toList(), weightsShown(), wording));
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
        judgement.attribution().stream()
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
        int shown = Math.min(depth == Depth.SCREEN ? 3 : 6, checks.size());
        for (int i = 0; i < shown; i++) {
            NextCheck check = checks.get(i);
            String time = ScreenFigures.minutes(check.checkMinutes())
                    + (check.openMinutes() > 0
                            ? " + " + wording.text("judge.open", ScreenFigures.minutes(check.openMinutes()))
                            : "");
            page.numbered(
                    i + 1, check.accessTitle() + " (" + time + "): " + check.ask() + " (" + check.finding() + ")");
            if (depth != Depth.SCREEN) {
                if (!check.look().isEmpty()) {
                    page.under(wording.text("judge.how"), check.look());
                }
                page.under(
                        wording.text("judge.why"),
                        depth == Depth.FIGURES
                                ? wording.text(
                                        "judge.worth",
                                        check.why(),
                                        ScreenFigures.percent(Math.pow(2, -check.gainBits())))
                                : check.why());
            }
        }
        if (depth != Depth.SCREEN) {
            cautions(checks, shown, new LinkedHashSet<>());
        }
    }

    /** What to be careful of now: what was found calls for it first, then the next checks. */
    private void careful(Judgement judgement) {
        Set<String> fromFindings = knowledge.findings().values().stream()
                .flatMap(f -> f.whenFound().stream())
                .collect(Collectors.toSet());
        Set<String> cautions = new LinkedHashSet<>();
        judgement.advice().cautions().stream()
                .map(AdviceGiven.Piece::id)
                .filter(fromFindings::contains)
                .forEach(cautions::add);
        cautions(judgement.nextChecks(), 1, cautions);
    }

    private void cautions(List<NextCheck> checks, int shown, Set<String> cautions) {
        checks.stream().limit(shown).flatMap(check -> check.cautions().stream()).forEach(cautions::add);
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
