package witnessmark.shell.interview;

import java.util.Locale;
import witnessmark.jobcard.Proposal;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.language.Texts;
import witnessmark.shell.cases.BelievedRange;
import witnessmark.shell.print.Page;

/** Says what a job card was taken to mean, each with the words it rests on. */
final class CardText {
    private final KnowledgeBase knowledge;
    private final Page page;
    private final Texts wording;

    CardText(KnowledgeBase knowledge, Page page, Texts wording) {
        this.knowledge = knowledge;
        this.page = page;
        this.wording = wording;
    }

    /** One proposal under its label. */
    void print(String label, Proposal proposal) {
        page.indented(label + " ", "     ", "\"" + proposal.words() + "\"");
        page.indented("     ", "       ", meant(proposal));
    }

    String meant(Proposal proposal) {
        String sure = wording.text("card." + proposal.sureness().name().toLowerCase(Locale.ROOT));
        if (proposal instanceof Proposal.OfMeasure read) {
            Measure measure = knowledge.measures().get(read.id());
            String value = page.units().given(read.value(), read.unit());
            return wording.text("card.measure", measure.title(), value, sure)
                    + switch (read.belief()) {
                        case PLAUSIBLE -> "";
                        case DOUBTFUL -> " "
                                + wording.text(
                                        "card.doubtful-value",
                                        BelievedRange.of(measure.plausible(), measure, page.units()));
                        case IMPOSSIBLE -> " "
                                + wording.text(
                                        "card.impossible-value",
                                        BelievedRange.of(measure.possible(), measure, page.units()));
                    };
        }
        if (proposal instanceof Proposal.OfOdometer odometer) {
            return wording.text("card.odometer", page.units().given(odometer.value(), odometer.unit()), sure);
        }
        Proposal.OfFinding said = (Proposal.OfFinding) proposal;
        String who = said.saidBy()
                .map(s -> wording.text(
                        "card.said-by",
                        wording.text("card.sayer."
                                + s.name().toLowerCase(Locale.ROOT).replace('_', '-'))))
                .orElse("");
        String when = said.when().isEmpty() ? "" : wording.text("card.when", said.when());
        return wording.text(
                "card.finding",
                wording.text("card.state." + said.state().word()),
                knowledge.findings().get(said.id()).title(),
                who,
                when,
                sure);
    }
}
