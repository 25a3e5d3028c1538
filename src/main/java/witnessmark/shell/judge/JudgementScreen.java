package witnessmark.shell.judge;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.knowledge.Caution;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/**
 * A judgement on one screen: the verdict, what contradicts itself, three causes with why, three next checks, what to be
 * careful of now. It says as much of each as a screen holds, and where the rest is.
 */
final class JudgementScreen {
    /** Lines of a usual terminal, one of which the prompt takes. */
    private static final int LINES = 23;

    private static final int CHECKS = 3;
    private static final int CAUTIONS = 3;
    private static final double WORTH_A_LINE = 0.05;

    /** The order in which is left out what a reader misses least; {@code --full} has it all. */
    private static final List<Detail> DETAILS = List.of(
            new Detail(3, 2, Room.WIDE, Words.FULL, Words.FULL),
            new Detail(2, 2, Room.WIDE, Words.FULL, Words.FULL),
            new Detail(2, 1, Room.CLOSE, Words.FULL, Words.FULL),
            new Detail(2, 1, Room.CLOSE, Words.FULL, Words.SHORT),
            new Detail(1, 1, Room.CLOSE, Words.FULL, Words.SHORT),
            new Detail(2, 1, Room.WIDE, Words.SHORT, Words.SHORT),
            new Detail(1, 1, Room.WIDE, Words.SHORT, Words.SHORT),
            new Detail(2, 1, Room.CLOSE, Words.SHORT, Words.SHORT),
            new Detail(1, 1, Room.CLOSE, Words.SHORT, Words.SHORT),
            new Detail(1, 0, Room.CLOSE, Words.SHORT, Words.SHORT),
            new Detail(1, 0, Room.TIGHT, Words.SHORT, Words.SHORT));

    private final KnowledgeBase knowledge;
    private final Texts wording;
    private final Judgement judgement;

    JudgementScreen(KnowledgeBase knowledge, Texts wording, Judgement judgement) {
        this.knowledge = knowledge;
        this.wording = wording;
        this.judgement = judgement;
    }

    /**
     * How much is said.
     *
     * @param reasons the most findings named for a cause, and against it
     * @param open the most points named that keep the verdict open
     * @param checks the question in full, or the title of what is looked for
     * @param cautions in full, or in the few words for a screen
     */
    private record Detail(int reasons, int open, Room room, Words checks, Words cautions) {}

    /**
     * Whether blank lines part what belongs together. Where it is tight it is not counted what is left out, and only of
     * the first cause it is said what speaks against it.
     */
    private enum Room {
        WIDE,
        CLOSE,
        TIGHT
    }

    private enum Words {
        FULL,
        SHORT
    }

    /**
     * @param causesShown the most causes to show
     */
    void print(Page page, String title, Optional<AfterSignOff> after, int causesShown) {
        Detail last = DETAILS.get(DETAILS.size() - 1);
        Detail fits = DETAILS.stream()
                .filter(detail -> lines(page, title, after, causesShown, detail) <= LINES)
                .findFirst()
                .orElse(last);
        new Sheet(page, fits).print(title, after, causesShown);
        page.flush();
    }

    private long lines(Page page, String title, Optional<AfterSignOff> after, int causesShown, Detail detail) {
        StringWriter draft = new StringWriter();
        PrintWriter out = new PrintWriter(draft);
        new Sheet(page.on(out), detail).print(title, after, causesShown);
        out.flush();
        return draft.toString().lines().count();
    }

    /** What holds now: what was found calls for it first, then the check that is next. */
    private Set<String> cautions() {
        Set<String> cautions = fromFindings();
        judgement.nextChecks().stream().limit(1).forEach(check -> cautions.addAll(check.cautions()));
        return cautions;
    }

    private Set<String> fromFindings() {
        Set<String> ofFindings = knowledge.findings().values().stream()
                .flatMap(f -> f.whenFound().stream())
                .collect(Collectors.toSet());
        return judgement.advice().cautions().stream()
                .map(AdviceGiven.Piece::id)
                .filter(ofFindings::contains)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** One way to write it. */
    private final class Sheet {
        private final Page page;
        private final Detail detail;

        Sheet(Page page, Detail detail) {
            this.page = page;
            this.detail = detail;
        }

        void print(String title, Optional<AfterSignOff> after, int causesShown) {
            page.line(wording.text(title.isEmpty() ? "judge.case" : "judge.case-title", judgement.caseId(), title));
            after.ifPresent(a -> JudgementText.signed(page, a));
            page.labelled(
                    wording.text("judge.verdict") + ":", judgement.verdict().sentence());
            some(judgement.verdict().open(), detail.open);
            new ContradictionsText(knowledge, page, wording).print(judgement);
            parts();
            causes(causesShown);
            checks();
            part();
            careful();
            some(judgement.remarks(), Math.max(1, detail.open));
            page.line(wording.text("judge.rest", ScreenFigures.percent(judgement.coverage())));
            page.line(wording.text("judge.support"));
        }

        private void part() {
            if (detail.room == Room.WIDE) {
                page.blank();
            }
        }

        private void some(List<String> texts, int most) {
            int more = texts.size() - most;
            for (int i = 0; i < Math.min(most, texts.size()); i++) {
                boolean last = i == most - 1 && more > 0;
                page.item(texts.get(i) + (last ? " (" + wording.text("and-more", more) + ")" : ""));
            }
        }

        private void parts() {
            List<String> seen = judgement.parts().stream()
                    .map(p -> p.title() + (p.fitsComplaint() ? "" : wording.text("judge.not-it")))
                    .toList();
            if (!seen.isEmpty()) {
                page.labelled(
                        wording.text("judge.parts") + ":", ScreenFigures.some(seen, detail.reasons + 1, wording) + ".");
            }
        }

        private void causes(int shown) {
            part();
            page.bold(wording.text("judge.causes"));
            List<RankedCause> causes = judgement.causes();
            for (int i = 0; i < Math.min(shown, causes.size()); i++) {
                RankedCause cause = causes.get(i);
                if (i > 0 && cause.probability() < WORTH_A_LINE) {
                    break;
                }
                page.numbered(
                        i + 1, JudgementText.named(knowledge, judgement.verdict(), cause, ScreenFigures::percent));
                String why = Stream.of(
                                weights("status.for", cause.evidenceFor()),
                                detail.room == Room.TIGHT && i > 0
                                        ? ""
                                        : weights("status.against", cause.evidenceAgainst()))
                        .filter(text -> !text.isEmpty())
                        .collect(Collectors.joining("; "));
                if (!why.isEmpty()) {
                    page.under(why);
                }
            }
        }

        private String weights(String key, List<RankedCause.Weight> weights) {
            List<String> said = weights.stream().map(this::weight).toList();
            if (said.isEmpty()) {
                return "";
            }
            return wording.text(key) + " "
                    + (detail.room == Room.TIGHT ? said.get(0) : ScreenFigures.some(said, detail.reasons, wording));
        }

        private String weight(RankedCause.Weight weight) {
            return weight.title() + wording.text("weight." + weight.state().word()) + " ("
                    + wording.text(Strength.of(weight.decibans()).key()) + ")";
        }

        private void checks() {
            part();
            page.bold(wording.text("judge.next"));
            List<NextCheck> checks = judgement.nextChecks();
            if (checks.isEmpty()) {
                page.indented("  ", "  ", wording.text("status.nothing-next"));
            }
            for (int i = 0; i < Math.min(CHECKS, checks.size()); i++) {
                boolean samePlace =
                        i > 0 && checks.get(i - 1).access().equals(checks.get(i).access());
                page.numbered(i + 1, check(checks.get(i), samePlace));
            }
        }

        private String check(NextCheck check, boolean samePlace) {
            String place = samePlace ? "" : check.accessTitle() + ": ";
            String time = JudgementText.time(check, wording);
            return detail.checks == Words.FULL
                    ? place + check.ask() + " (" + time + "; " + check.finding() + ")"
                    : place + check.title() + " (" + time + ")";
        }

        /** What was found calls for comes first and whole; of a long way to the next check what its first steps need. */
        private void careful() {
            List<String> cautions = List.copyOf(cautions());
            int shown = detail.cautions == Words.FULL
                    ? cautions.size()
                    : Math.min(
                            cautions.size(), Math.max(CAUTIONS, fromFindings().size()));
            if (shown == 0) {
                return;
            }
            String said = cautions.subList(0, shown).stream()
                    .map(id -> said(knowledge.cautions().get(id)))
                    .collect(Collectors.joining(" "));
            int more = cautions.size() - shown;
            page.labelled(
                    wording.text("caution"), more == 0 ? said : said + " " + wording.text("judge.more-cautions", more));
        }

        private String said(Caution caution) {
            return detail.cautions == Words.FULL
                    ? caution.in(knowledge.language())
                    : caution.briefly().in(knowledge.language());
        }
    }
}
