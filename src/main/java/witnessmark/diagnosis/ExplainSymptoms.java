package witnessmark.diagnosis;

import java.util.Comparator;
import java.util.List;
import witnessmark.inference.GivenEvidence;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;

/** Asks of a cause that is there whether it also makes the truck do what it does. */
final class ExplainSymptoms {
    private final NetworkReading reading;
    private final List<Finding> symptoms;

    ExplainSymptoms(NetworkReading reading) {
        this.reading = reading;
        this.symptoms = reading.taken().keySet().stream()
                .filter(reading::isPresent)
                .filter(f -> reading.standsFor(f).isEmpty())
                .map(f -> reading.network().findings().get(reading.network().finding(f)))
                .filter(f -> f.kind() == Finding.Kind.SYMPTOM)
                .toList();
    }

    /** The symptoms on record. */
    List<Finding> symptoms() {
        return symptoms;
    }

    /**
     * Each symptom on record with the chance that this cause, known to be there, has made it, most probable first.
     *
     * <p>Given that the cause is there, its own share in a symptom acts with the link's strength whatever else is at
     * work, so the chance that it acted is strength x P(all other evidence) / P(all evidence).
     */
    List<PartSeen.Explained> by(Cause cause) {
        int index = reading.network().cause(cause.id());
        GivenEvidence there = reading.evidence().withPresent(index);
        double all = symptoms.isEmpty() ? 0 : reading.inference().logEvidence(there);
        return symptoms.stream()
                .map(symptom ->
                        new PartSeen.Explained(symptom.id(), symptom.title(), chance(cause, symptom, there, all)))
                .sorted(Comparator.comparingDouble((PartSeen.Explained e) -> -e.probability())
                        .thenComparing(PartSeen.Explained::symptom))
                .toList();
    }

    private double chance(Cause cause, Finding symptom, GivenEvidence there, double all) {
        double strength = cause.links().stream()
                .filter(l -> l.finding().equals(symptom.id()))
                .mapToDouble(Cause.Link::strength)
                .findFirst()
                .orElse(0);
        if (strength == 0) {
            return 0;
        }
        GivenEvidence others = there.without(reading.network().finding(symptom.id()));
        return Math.min(1, strength * Math.exp(reading.inference().logEvidence(others) - all));
    }
}
