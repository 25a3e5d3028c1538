package witnessmark.shell.interview;

import java.util.List;
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

    /** The entries of what was accepted from a card; a value is asked for its limits, as no card tells them. */
    List<Change> entries(List<Proposal> accepted, CardEntries entries) {
        return accepted.stream().map(proposal -> entry(proposal, entries)).toList();
    }

    private Change entry(Proposal proposal, CardEntries entries) {
        if (!(proposal instanceof Proposal.OfMeasure read)) {
            return entries.of(proposal);
        }
        Measure measure = knowledge.measures().get(read.id());
        page.blank();
        page.line(measure.title() + ": " + page.units().given(read.value(), read.unit()));
        return entries.of(read, ask(measure, read.unit()));
    }

    /** The limits, in this unit; empty where nobody knows them. */
    Optional<Limits> ask(Measure measure, Unit unit) {
        String typical = measure.typical().isEmpty() ? "" : " " + wording.text("limit.typical", measure.typical());
        while (true) {
            String line = asker.ask("limit.line", wording.text("limit.line", unit.symbol(), typical) + " ", List.of())
                    .orElse("")
                    .strip();
            if (line.isEmpty() || SpokenAnswer.of(line).isPresent()) {
                return Optional.empty();
            }
            try {
                return Optional.of(LimitLine.of(line, unit, measure, wording.text("limit.manual")));
            } catch (CaseRefused | NotAnAnswer e) {
                asker.refused(NotAnAnswer.told(e, wording));
            }
        }
    }
}
