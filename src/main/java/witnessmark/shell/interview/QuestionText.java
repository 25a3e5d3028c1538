package witnessmark.shell.interview;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import witnessmark.diagnosis.NextCheck;
import witnessmark.gearbox.EnumWord;
import witnessmark.interview.Question;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** Prints the questions of an interview; each caution comes once. */
final class QuestionText {
    private static final List<String> KEYS =
            List.of("present", "absent", "unsure", "pass", "cannot", "value", "why", "back", "skip", "where", "stop");

    private final KnowledgeBase knowledge;
    private final Page page;
    private final Texts wording;
    private final Set<String> cautionsShown = new LinkedHashSet<>();
    private boolean keysShown;
    private String lastPlace = "";

    QuestionText(KnowledgeBase knowledge, Page page, Texts wording) {
        this.knowledge = knowledge;
        this.page = page;
        this.wording = wording;
    }

    /**
     * The question, under its place where that is another one than before.
     *
     * @param workMinutes work done for the questions before it
     */
    void print(Question question, double workMinutes) {
        goTo(question);
        ask(question, workMinutes);
    }

    /** The same where the place was left before: it is said why the hands go back. */
    void printGoingBack(Question question, double workMinutes) {
        if (goTo(question)) {
            page.indented(
                    "  ", "  ", wording.text("place.again", question.check().why()));
        }
        ask(question, workMinutes);
    }

    /** Whether that is another place than before. */
    private boolean goTo(Question question) {
        String place = question.finding().access();
        boolean moves = !place.equals(lastPlace);
        if (moves) {
            place(question);
        } else {
            page.blank();
        }
        lastPlace = place;
        return moves;
    }

    private void ask(Question question, double workMinutes) {
        NextCheck check = question.check();
        String asksAt = question.finding().access();
        page.indented(
                wording.text("question", question.number()) + " ",
                "   ",
                question.finding().ask());
        detail("how", question.finding().look());
        detail("looks-like", question.finding().looksLike());
        detail("not-to-confuse", question.finding().confusedWith());
        page.indented(
                "   ",
                "      ",
                wording.text(
                                "minutes",
                                ScreenFigures.minutes(check.minutes()),
                                workMinutes == 0 ? "0 min" : ScreenFigures.minutes(workMinutes))
                        + knowledge
                                .waitsFor(asksAt)
                                .map(wait -> " " + wording.text("waits", EnumWord.of(wait)))
                                .orElse(""));
        question.measure()
                .ifPresent(m -> detail(
                        "measure",
                        wording.text(
                                "measure",
                                m.title(),
                                page.units().shown(m.unit()).symbol())));
        question.cautions().stream()
                .filter(cautionsShown::add)
                .forEach(c -> page.indented(
                        "   " + wording.text("caution") + " ",
                        "      ",
                        knowledge.cautions().get(c).in(knowledge.language())));
        if (question.number() == 1 && !keysShown) {
            keys(question);
        } else {
            page.indented("   ", "   ", wording.text("keys-short"));
        }
        page.flush();
    }

    private void place(Question question) {
        var visit = question.visit();
        page.heading(
                visit.openMinutes() > 0
                        ? wording.text(
                                visit.checks().size() == 1 ? "place.open-one" : "place.open",
                                visit.access().equals(question.check().access())
                                        ? visit.title()
                                        : wording.text(
                                                "place.on-the-way",
                                                question.check().accessTitle(),
                                                visit.title()),
                                ScreenFigures.minutes(visit.openMinutes()),
                                visit.checks().size())
                        : wording.text("place.here", question.check().accessTitle()));
    }

    private void detail(String key, String text) {
        if (!text.isEmpty()) {
            page.indented("   " + wording.text("label." + key) + " ", "      ", text);
        }
    }

    /** Why it is asked. */
    void why(Question question) {
        NextCheck check = question.check();
        page.indented("  ", "  ", wording.text("why", check.why(), ScreenFigures.minutes(check.checkMinutes())));
    }

    /** Every answer that can be given to it. */
    void keys(Question question) {
        keysShown = true;
        String place = knowledge.access().get(question.finding().access()).title();
        KEYS.forEach(key -> page.indented("   ", "      ", wording.text("keys." + key, place)));
    }
}
