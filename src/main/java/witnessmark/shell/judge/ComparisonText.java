package witnessmark.shell.judge;

import java.util.Locale;
import witnessmark.diagnosis.Accounts;
import witnessmark.diagnosis.Judgement;
import witnessmark.explain.WhatIf;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** Puts two things side by side: a case as it is and as it would be, or two accounts of it. */
final class ComparisonText {
    private static final int CAUSES_SHOWN = 12;
    private static final int DECIDING_SHOWN = 5;

    private final Page page;
    private final Texts wording;

    ComparisonText(Page page, Texts wording) {
        this.page = page;
        this.wording = wording;
    }

    void whatIf(String supposed, WhatIf whatIf) {
        page.heading(wording.text("whatif.title", supposed));
        page.line(wording.text("whatif.note"));
        page.blank();
        page.columns(wording.text("whatif.now"), wording.text("whatif.then"), "");
        whatIf.causes().stream()
                .limit(CAUSES_SHOWN)
                .forEach(m -> page.columns(
                        ScreenFigures.percent(m.before()),
                        ScreenFigures.percent(m.after()),
                        m.title() + " (" + m.cause() + ")"));
        page.blank();
        Judgement now = whatIf.now();
        Judgement then = whatIf.then();
        if (now.verdict().sentence().equals(then.verdict().sentence())) {
            page.line(wording.text("whatif.verdict-same", now.verdict().sentence()));
        } else {
            page.line(wording.text("whatif.verdict-now", now.verdict().sentence()));
            page.line(wording.text("whatif.verdict-then", then.verdict().sentence()));
        }
        then.contradictions().forEach(c -> page.item(c.why()));
        page.flush();
    }

    void accounts(String caseId, Accounts accounts) {
        page.heading(wording.text("accounts.title", caseId));
        side("accounts.first", accounts.first());
        side("accounts.second", accounts.second());
        page.heading(wording.text("accounts.findings"));
        if (accounts.findings().isEmpty()) {
            page.item(wording.text("accounts.no-findings"));
        }
        page.columns(wording.text("accounts.first"), wording.text("accounts.second"), "");
        accounts.findings()
                .forEach(s -> page.columns(
                        ScreenFigures.percent(s.ifFirst()),
                        ScreenFigures.percent(s.ifSecond()),
                        odds(s.decibans()) + "  " + s.title()
                                + wording.text("weight." + s.state().word())));
        page.blank();
        page.line(wording.text(
                accounts.decibansAlone() >= 0 ? "accounts.sum-first" : "accounts.sum-second",
                ScreenFigures.odds(Math.abs(accounts.decibansAlone())),
                ScreenFigures.odds(Math.signum(accounts.decibansAlone()) * accounts.decibansWithOthers())));
        page.line(wording.text("accounts.prior", ScreenFigures.odds(accounts.priorDecibans())));
        page.heading(wording.text("accounts.deciding"));
        if (accounts.deciding().isEmpty()) {
            page.item(wording.text("accounts.no-deciding"));
        }
        accounts.deciding().stream()
                .limit(DECIDING_SHOWN)
                .forEach(d -> page.columns(
                        ScreenFigures.percent(d.ifFirst()),
                        ScreenFigures.percent(d.ifSecond()),
                        odds(d.expectedDecibans()) + "  " + d.accessTitle() + ": " + d.ask() + " (" + d.finding()
                                + ")"));
        page.flush();
    }

    private void side(String key, Accounts.Side side) {
        page.heading(wording.text("accounts.side", wording.text(key), side.title() + " (" + side.cause() + ")"));
        page.indented("  ", "  ", side.mechanism().strip());
        page.indented(
                "  ",
                "  ",
                side.applies()
                        ? wording.text("accounts.probability", ScreenFigures.percent(side.probability()))
                        : wording.text("accounts.not-applying"));
    }

    private static String odds(double decibans) {
        return String.format(Locale.ROOT, "%5s", ScreenFigures.odds(decibans));
    }
}
