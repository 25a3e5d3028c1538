package witnessmark.diagnosis;

import java.util.List;
import witnessmark.diagnosis.fact.ClassChange;
import witnessmark.diagnosis.fact.Contradiction;
import witnessmark.diagnosis.fact.NotApplicable;
import witnessmark.diagnosis.fact.OddsChange;
import witnessmark.diagnosis.fact.Remark;
import witnessmark.diagnosis.fact.Settled;
import witnessmark.diagnosis.fact.Taken;

/** What the rules made of a case before the inference, each list in a fixed order. */
record Premises(
        List<Taken> taken,
        List<Settled> settled,
        List<NotApplicable> notApplicable,
        List<OddsChange> oddsChanges,
        List<ClassChange> classChanges,
        List<Contradiction> contradictions,
        List<Remark> remarks) {}
