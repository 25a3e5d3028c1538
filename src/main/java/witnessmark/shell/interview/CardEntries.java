package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Teller;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.gearbox.LoadPath;
import witnessmark.jobcard.Proposal;
import witnessmark.jobcard.Sayer;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/** Turns what a job card was taken to say into entries of a case. */
final class CardEntries {
    private static final int LONGEST_NOTE = 4000;

    private final KnowledgeBase knowledge;
    private final CaseFile now;

    /**
     * @param now the case before the card
     */
    CardEntries(KnowledgeBase knowledge, CaseFile now) {
        this.knowledge = knowledge;
        this.now = now;
    }

    /** The entry for a proposal that was accepted. */
    Change of(Proposal proposal) {
        if (proposal instanceof Proposal.OfMeasure read) {
            return of(read, Optional.empty());
        }
        if (proposal instanceof Proposal.OfOdometer odometer) {
            Vehicle v = now.vehicle();
            return new VehicleSet(new Vehicle(
                    v.unit(),
                    v.serial(),
                    v.duty(),
                    OptionalDouble.of(odometer.km()),
                    v.kmSinceNew(),
                    v.kmSinceRepair(),
                    v.repairNote()));
        }
        return new FindingSet(entry((Proposal.OfFinding) proposal));
    }

    /** The entry for a value that was accepted, good within these limits. */
    Change of(Proposal.OfMeasure read, Optional<Limits> limits) {
        return new MeasurementSet(
                new Measurement(read.id(), read.value(), read.unit(), limits, "card: " + read.words()));
    }

    FindingEntry entry(Proposal.OfFinding said) {
        FindingState state = said.state();
        Optional<String> gear = said.when().isEmpty() ? Optional.empty() : LoadPath.parse(said.when());
        String words = said.words().isEmpty() ? "" : "card: " + said.words();
        return new FindingEntry(said.id(), state, words, teller(said), gear);
    }

    /** Who told it; nobody where the shop looked, as it did where it read a paper. */
    private Optional<Teller> teller(Proposal.OfFinding said) {
        boolean ofPapers = knowledge.findings().get(said.id()).kind() == Finding.Kind.PAPER;
        return said.saidBy().filter(s -> s != Sayer.PAPER || !ofPapers).map(sayer -> switch (sayer) {
            case DRIVER -> Teller.DRIVER;
            case FLEET -> Teller.FLEET;
            case TOW_OPERATOR -> Teller.TOW_OPERATOR;
            case PREVIOUS_SHOP -> Teller.PREVIOUS_SHOP;
            case PREVIOUS_OWNER -> Teller.PREVIOUS_OWNER;
            case PAPER -> Teller.OTHER;
        });
    }

    /** The card as written, so that nothing of it is lost: the complaint of a case that has none yet, else a note. */
    List<Change> written(String card, List<String> notTaken) {
        List<Change> changes = new ArrayList<>();
        changes.add(
                now.complaint().isEmpty()
                        ? new TextSet(TextField.COMPLAINT, card)
                        : new NoteAdded(shortened("Job card: " + card)));
        if (!notTaken.isEmpty()) {
            changes.add(new NoteAdded(shortened("Job card, not taken into findings: " + String.join(" / ", notTaken))));
        }
        return changes;
    }

    private static String shortened(String note) {
        return note.length() <= LONGEST_NOTE ? note : note.substring(0, LONGEST_NOTE - 4) + " ...";
    }
}
