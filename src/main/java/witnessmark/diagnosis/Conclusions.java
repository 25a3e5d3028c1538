package witnessmark.diagnosis;

import java.util.List;
import witnessmark.diagnosis.fact.Given;
import witnessmark.diagnosis.fact.HeldBack;
import witnessmark.diagnosis.fact.Remark;

/** What the rules allow to be said after the inference, each list in a fixed order. */
record Conclusions(List<HeldBack> heldBack, List<Given> given, List<Remark> remarks) {}
