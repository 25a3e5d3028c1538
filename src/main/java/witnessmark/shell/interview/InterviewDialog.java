package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.diagnosis.ReadSample;
import witnessmark.diagnosis.Sentences;
import witnessmark.gearbox.Unit;
import witnessmark.inference.TooDense;
import witnessmark.interview.Ending;
import witnessmark.interview.Interview;
import witnessmark.interview.NotAnAnswer;
import witnessmark.interview.Question;
import witnessmark.interview.Stage;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.language.Texts;
import witnessmark.shell.cases.BelievedRange;
import witnessmark.shell.judge.StatusText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.ScreenFigures;

/** Leads through an interview: prints what is asked, takes the answers, and shows where the case stands. */
final class InterviewDialog {
    private static final Set<String> TAKES_BACK = Set.of("back", "b", "atrás", "atras");
    /** Of what was found last, so much is named to be looked at again. */
    private static final int LOOKED_AT_AGAIN = 3;

    private final Interview interview;
    private final KnowledgeBase knowledge;
    private final IntakeDialog intake;
    private final Asker asker;
    private final Page page;
    private final Texts wording;
    private final StatusText stand;
    private final ConflictDialog conflicts;
    private final QuestionText text;
    private final LimitDialog limits;
    private boolean gone;

    InterviewDialog(
            Interview interview,
            KnowledgeBase knowledge,
            IntakeDialog intake,
            Asker asker,
            Page page,
            StatusText stand) {
        this.interview = interview;
        this.knowledge = knowledge;
        this.intake = intake;
        this.asker = asker;
        this.page = page;
        this.wording = stand.wording();
        this.stand = stand;
        this.text = new QuestionText(knowledge, page, wording);
        this.limits = new LimitDialog(knowledge, asker, page, wording);
        this.conflicts = new ConflictDialog(interview, knowledge, asker, page, wording);
    }

    /** Asks until the interview ends or whoever answers stops. */
    void run() {
        String id = interview.present().id().text();
        boolean fresh = interview.stage() == Stage.TRUCK;
        page.line(wording.text(fresh ? "begin" : "go-on", id, answered()));
        page.line(wording.text("keys-always"));
        while (!gone && leadsOn()) {
            // Each turn asks one question.
        }
        page.blank();
        page.line(wording.text(gone ? "stopped" : "finished", answered(), id));
        page.flush();
    }

    /** Asks the next question; false at the end. */
    private boolean leadsOn() {
        try {
            conflicts.begin();
            if (isAtTheEnd()) {
                return false;
            }
            if (interview.stage() == Stage.CHECKS) {
                interview.question().ifPresent(this::check);
            } else {
                gone = !intake.ask();
            }
        } catch (TooDense e) {
            lookAgain();
        }
        return true;
    }

    /**
     * Offers to take answers back until what is left can be weighed.
     *
     * @throws Refused if whoever answers stops here; all answers are kept
     */
    private void lookAgain() {
        List<String> last = interview.lastFound(LOOKED_AT_AGAIN);
        page.blank();
        page.line(wording.text("dense"));
        if (!last.isEmpty()) {
            page.line(wording.text("dense.last"));
            last.forEach(finding -> page.indented(
                    "  - ", "    ", knowledge.findings().get(finding).title()));
        }
        page.line(wording.text("dense.how"));
        page.flush();
        String answer = asker.ask("dense.back", "> ", TabWords.at("dense", wording))
                .orElse("")
                .strip()
                .toLowerCase(Locale.ROOT);
        if (!TAKES_BACK.contains(answer) || !back()) {
            page.flush();
            String id = interview.present().id().text();
            throw new Refused(wording.text("dense.kept", answered()), wording.text("dense.mend", id));
        }
    }

    private String answered() {
        int checks = interview.answered();
        return wording.text(checks == 1 ? "answered.one" : "answered.many", checks);
    }

    /** Shows the end and lets the technician go on all the same. */
    private boolean isAtTheEnd() {
        if (interview.stage() != Stage.CHECKS || interview.question().isPresent()) {
            return false;
        }
        page.heading(wording.text("end.title"));
        Ending ending = interview.ending();
        stand.ending(ending);
        if (ending.reason() == Ending.Reason.NOT_KNOWN) {
            stand.wouldHelp(interview.wouldHelp());
        }
        stand.lost(interview.lost());
        page.indented("  ", "  ", wording.text("end.work", ScreenFigures.minutes(interview.workMinutes())));
        stand.print(interview.present(), interview.judgement(), interview.plan());
        stand.driver(interview.judgement().advice());
        if (interview.plan().isEmpty()
                && interview.skipped().isEmpty()
                && interview.notLookedAt() == 0
                && interview.judgement().contradictions().isEmpty()) {
            return true;
        }
        page.blank();
        if (!interview.judgement().contradictions().isEmpty()) {
            page.line(wording.text("end.again"));
        }
        if (interview.notLookedAt() > 0) {
            page.line(wording.text("end.unknown", interview.notLookedAt()));
        }
        page.line(wording.text("end.more"));
        return !goesOn(asker.ask("end.more", "> ", TabWords.at("end", wording))
                .orElse("")
                .strip()
                .toLowerCase(Locale.ROOT));
    }

    private boolean goesOn(String answer) {
        switch (answer) {
            case "more", "m", "más", "mas" -> interview.goOn();
            case "back", "b", "atrás", "atras" -> interview.back();
            case "skipped", "s", "saltadas", "saltados" -> interview.skipNothing();
            case "unknown", "u", "desconocidas" -> interview.askAgainNotKnown();
            case "again", "a", "otra vez" -> conflicts.askAboutAll();
            default -> {
                return false;
            }
        }
        return interview.question().isPresent() || interview.stage() != Stage.CHECKS;
    }

    private void check(Question question) {
        if (interview.wasLeft(question.finding().access())) {
            text.printGoingBack(question, interview.workMinutes());
        } else {
            text.print(question, interview.workMinutes());
        }
        boolean answered = false;
        while (!answered && !gone) {
            Optional<String> line = asker.ask(question.finding().id(), "> ", TabWords.at("check", wording));
            gone = line.isEmpty();
            answered = line.isPresent() && taken(line.get(), question);
        }
    }

    /** Whether the answer leads on to another question. */
    private boolean taken(String line, Question question) {
        try {
            AnswerLine answer = AnswerLine.of(
                    line, question.measure().map(m -> page.units().shown(m.unit())), wording.text("limit.manual"));
            return switch (answer.request()) {
                case SAID -> said(answer, question);
                case VALUE -> measured(answer, question);
                case BACK -> back();
                case SKIP -> skip(question);
                case STOP -> {
                    gone = true;
                    yield true;
                }
                case WHY -> shown(() -> text.why(question));
                case WHERE -> shown(() -> {
                    stand.print(interview.present(), interview.judgement(), interview.plan());
                    text.print(question, interview.workMinutes());
                });
                case HELP -> shown(() -> text.keys(question));
            };
        } catch (CaseRefused | NotAnAnswer e) {
            asker.refused(NotAnAnswer.told(e, wording));
            return false;
        }
    }

    private boolean said(AnswerLine answer, Question question) {
        FindingState state = java.util.Objects.requireNonNull(answer.state());
        interview.answer(new FindingEntry(question.finding().id(), state, answer.note()));
        noted(wording.text("state." + state.word()));
        whenFound(question, state);
        valueBehind(answer, question).ifPresent(value -> measured(value, question));
        String place = question.finding().access();
        if (state == FindingState.NOT_LOOKED_AT && interview.wasLeftNotKnown(place)) {
            page.indented(
                    "  ",
                    "  ",
                    wording.text("left-not-known", knowledge.access().get(place).title()));
        }
        conflicts.askAboutNew();
        return true;
    }

    /** A value told behind a yes or a no counts as well: where the two disagree, that comes out at once. */
    private Optional<AnswerLine> valueBehind(AnswerLine answer, Question question) {
        return question.measure()
                .map(m -> page.units().shown(m.unit()))
                .flatMap(unit -> AnswerLine.valueBehind(answer.note(), unit));
    }

    /** What holds from the moment it is found, or cannot be ruled out, is said at once. */
    private void whenFound(Question question, FindingState state) {
        if (state == FindingState.PRESENT || state == FindingState.UNSURE) {
            question.finding()
                    .whenFound()
                    .forEach(caution -> page.strong(
                            wording.text("caution-now") + " ",
                            knowledge.cautions().get(caution).in(knowledge.language())));
        }
    }

    private boolean measured(AnswerLine answer, Question question) {
        Measure measure = question.measure().orElseThrow();
        Unit unit = java.util.Objects.requireNonNull(answer.unit());
        if (!isBelieved(measure, answer.value(), unit)) {
            return false;
        }
        LimitDialog.Answer good =
                answer.limits().isPresent() ? new LimitDialog.Answer.Known(answer.limits()) : limits.ask(measure, unit);
        if (good == LimitDialog.Answer.Left.BACK) {
            page.indented("  ", "  ", wording.text("value.not-kept"));
            text.print(question, interview.workMinutes());
            return false;
        }
        gone |= good == LimitDialog.Answer.Left.STOP;
        Optional<Limits> known = good instanceof LimitDialog.Answer.Known given ? given.limits() : Optional.empty();
        Measurement read = new Measurement(measure.id(), answer.value(), unit, known, answer.note());
        interview.measured(read);
        noted(measured(measure, read));
        conflicts.askAboutNew();
        return true;
    }

    private String measured(Measure measure, Measurement read) {
        String value = page.units().given(read.value(), read.unit());
        if (read.limits().isPresent()) {
            return wording.text("measured", value);
        }
        return ReadSample.of(measure, read)
                .map(new Sentences(knowledge.language())::readAgainst)
                .map(against -> wording.text("measured.usual", value, against))
                .orElseGet(() -> wording.text("measured.no-limit", value));
    }

    /** What cannot be is refused; what would be out of the ordinary is kept only when it is said again. */
    private boolean isBelieved(Measure measure, double value, Unit unit) {
        String read = page.units().given(value, unit);
        return switch (measure.belief(value, unit)) {
            case PLAUSIBLE -> true;
            case IMPOSSIBLE -> {
                asker.refused(wording.text(
                        "value.impossible", read, BelievedRange.of(measure.possible(), measure, page.units())));
                yield false;
            }
            case DOUBTFUL -> {
                page.indented(
                        "  ",
                        "  ",
                        wording.text(
                                "value.doubtful", read, BelievedRange.of(measure.plausible(), measure, page.units())));
                String sure = asker.ask("value.sure", wording.text("value.sure") + " ", TabWords.at("sure", wording))
                        .orElse("");
                boolean kept = SpokenAnswer.of(sure)
                        .filter(s -> s.state() == FindingState.PRESENT)
                        .isPresent();
                if (!kept) {
                    page.indented("  ", "  ", wording.text("value.not-kept"));
                }
                yield kept;
            }
        };
    }

    private boolean back() {
        if (!interview.back()) {
            page.line(wording.text("back.none"));
            return false;
        }
        page.line(wording.text("back"));
        return true;
    }

    private boolean skip(Question question) {
        String place = question.finding().access();
        interview.skip(place);
        page.line(wording.text("skipped", knowledge.access().get(place).title()));
        return true;
    }

    private static boolean shown(Runnable print) {
        print.run();
        return false;
    }

    /** One line after each answer: that it is kept, and what is ahead now. */
    private void noted(String what) {
        List<String> ahead = new ArrayList<>();
        interview.judgement().causesFrom(0.05).stream()
                .limit(2)
                .forEach(c -> ahead.add(c.title() + " " + ScreenFigures.percent(c.probability())));
        page.indented(
                "  ", "    ", wording.text(ahead.isEmpty() ? "noted.none" : "noted", what, String.join("; ", ahead)));
    }
}
