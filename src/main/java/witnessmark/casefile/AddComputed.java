package witnessmark.casefile;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.evidence.ComputedFinding;

/** What was worked out for a truck, on its way into a case. */
public final class AddComputed {
    private final Evidence evidence;
    private final Optional<TruckProfile> truck;

    /**
     * @param id of the evidence; a result that bears it already is replaced
     * @param truck the profile reckoned with; empty where none was
     * @param guessed whether what went in is somebody's guess, so that nothing is sure
     * @throws CaseRefused where nothing was found that a case could hold
     */
    public AddComputed(String id, Optional<TruckProfile> truck, List<ComputedFinding> findings, boolean guessed) {
        this.truck = truck;
        evidence = ComputedEvidence.of(id, truck.map(TruckProfile::id).orElse(""), findings, guessed);
    }

    /**
     * The evidence, if the case takes it.
     *
     * @throws CaseRefused where the truck's gearbox is not that of the case
     */
    public Evidence to(CaseFile file) {
        truck.ifPresent(t -> SameGearbox.check(file, t.id(), t.layout()));
        return evidence;
    }
}
