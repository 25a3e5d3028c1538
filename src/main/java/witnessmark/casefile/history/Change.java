package witnessmark.casefile.history;

import java.util.Map;
import witnessmark.casefile.CaseSheet;

/** One change to a case. A change that replaces something carries what stood before it. */
public sealed interface Change
        permits Opened,
                TextSet,
                VehicleSet,
                GearboxSet,
                ClaimSet,
                FindingSet,
                FindingCleared,
                MeasurementSet,
                MeasurementCleared,
                NoteAdded,
                AttachmentAdded,
                AttachmentRemoved,
                EvidenceSet,
                EvidenceRemoved,
                SignedOff,
                CorrectedAfterSignOff {

    /** The word for this kind of change. */
    String kind();

    /** What the change holds besides its kind, as {@link CanonicalText} writes it. */
    Map<String, Object> form();

    /** The same change with what stood before it taken from the case as it stands now. */
    default Change against(CaseSheet now) {
        return this;
    }

    /** Writes the change on the sheet; throws CaseRefused, with the sheet unchanged, if the case does not take it. */
    void applyTo(CaseSheet sheet, Stamp stamp);
}
