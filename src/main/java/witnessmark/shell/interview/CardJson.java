package witnessmark.shell.interview;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.gearbox.EnumWord;
import witnessmark.jobcard.CardReading;
import witnessmark.jobcard.Proposal;
import witnessmark.jobcard.Sureness;
import witnessmark.shell.print.Json;

/**
 * What was read in a job card, as JSON.
 *
 * @param id the case; null where nothing was stored
 */
record CardJson(@Json.Name("case") @Nullable String id, List<One> proposals, List<String> notUnderstood) {
    static CardJson of(Optional<String> stored, CardReading reading, List<Proposal> taken) {
        return new CardJson(
                stored.orElse(null),
                reading.proposals().stream()
                        .map(p -> new One(read(p), p.words(), p.sureness(), taken.contains(p)))
                        .toList(),
                reading.notUnderstood());
    }

    private static Record read(Proposal proposal) {
        if (proposal instanceof Proposal.OfMeasure read) {
            return new Value(read.id(), read.value(), read.unit().symbol(), EnumWord.of(read.belief()));
        }
        if (proposal instanceof Proposal.OfOdometer odometer) {
            return new Odometer(odometer.value(), odometer.unit().symbol());
        }
        Proposal.OfFinding said = (Proposal.OfFinding) proposal;
        return new Finding(
                said.id(), said.state().word(), said.saidBy().map(EnumWord::of).orElse(null), said.when());
    }

    /** @param read a value, an odometer or a finding */
    record One(@Json.Inlined Record read, String words, Sureness sureness, boolean stored) {}

    record Value(String measure, double value, String unit, String belief) {}

    record Odometer(double odometer, String unit) {}

    record Finding(String finding, String state, @Nullable String saidBy, Object when) {}
}
