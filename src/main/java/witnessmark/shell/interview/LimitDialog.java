package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.Limits;
import witnessmark.casefile.history.Change;
import witnessmark.gearbox.Unit;
import witnessmark.interview.NotAnAnswer;
import witnessmark.jobcard.Proposal;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;

/** Asks in one line within which limits of this unit a value is good; Enter leaves them open. */
final class LimitDialog {
    private final KnowledgeBase knowledge;
    private final Asker asker;
    private final Page page;
    private final Texts wording;

    LimitDialog(KnowledgeBase knowledge, Asker asker, Page page, Texts wording) {
        this.knowledge = knowledge;
        this.asker = asker;
        this.page = page;
        this.wording = wording;
    }

    /** What was answered: the limits, if anybody knows them, or a wish to leave the question. */
    sealed interface Answer {
        record Known(Optional<Limits> limits) implements Answer {}

        enum Left implements Answer {
            BACK,
            STOP
        }
    }

    /** The entries of a list, or how it was left. */
    sealed interface Entries {
        record Made(List<Change> changes) implements Entries {}

        record Left(Answer.Left how) implements Entries {}
    }

    /**
     * The entries of what was accepted from a card; a value is asked for its limits, as no card tells them. Back goes to the
     * value before, and from the first to where the list came from.
     */
    Entries entries(List<Proposal> accepted, CardEntries entries) {
        List<Change> changes = new ArrayList<>();
        while (changes.size() < accepted.size()) {
            Proposal proposal = accepted.get(changes.size());
            if (!(proposal instanceof Proposal.OfMeasure read)) {
                changes.add(entries.of(proposal));
                continue;
            }
            Measure measure = knowledge.measures().get(read.id());
            page.blank();
            page.line(measure.title() + ": " + page.units().given(read.value(), read.unit()));
            Answer answer = ask(measure, read.unit());
            if (answer instanceof Answer.Known known) {
                changes.add(entries.of(read, known.limits()));
            } else if (answer == Answer.Left.STOP || !toValueBefore(changes, accepted)) {
                return new Entries.Left((Answer.Left) answer);
            }
        }
        return new Entries.Made(changes);
    }

    /** Takes back the last value entered and what came after it; false where there is none. */
    private static boolean toValueBefore(List<Change> changes, List<Proposal> accepted) {
        int value = changes.size() - 1;
        while (value >= 0 && !(accepted.get(value) instanceof Proposal.OfMeasure)) {
            value--;
        }
        if (value < 0) {
            return false;
        }
        changes.subList(value, changes.size()).clear();
        return true;
    }

    /** The limits, in this unit. */
    Answer ask(Measure measure, Unit unit) {
        String typical = measure.typical().isEmpty() ? "" : " " + wording.text("limit.typical", measure.typical());
        while (true) {
            String line = asker.ask(
                            "limit.line",
                            wording.text("limit.line", unit.symbol(), typical) + " ",
                            TabWords.at("limit", wording))
                    .orElse("")
                    .strip();
            Optional<AnswerLine.Request> request =
                    line.isEmpty() ? Optional.empty() : AnswerLine.request(line.toLowerCase(Locale.ROOT));
            if (request.equals(Optional.of(AnswerLine.Request.BACK))) {
                return Answer.Left.BACK;
            }
            if (request.equals(Optional.of(AnswerLine.Request.STOP))) {
                return Answer.Left.STOP;
            }
            if (line.isEmpty()
                    || request.equals(Optional.of(AnswerLine.Request.SKIP))
                    || SpokenAnswer.of(line).isPresent()) {
                return new Answer.Known(Optional.empty());
            }
            try {
                return new Answer.Known(Optional.of(LimitLine.of(line, unit, measure, wording.text("limit.manual"))));
            } catch (CaseRefused | NotAnAnswer e) {
                asker.refused(NotAnAnswer.told(e, wording));
            }
        }
    }
}
