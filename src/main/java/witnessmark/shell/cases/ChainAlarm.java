package witnessmark.shell.cases;

import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.shell.print.Terminal;

/** Says that the chain of a case's entries is broken, before anything else is said of it. */
public record ChainAlarm(CaseId id, ChainCheck.Broken broken) {

    /** The alarm for a case whose chain is broken; empty for a whole one and for one that has no history. */
    public static Optional<ChainAlarm> of(CaseDocument document) {
        return document.history().flatMap(h -> of(h.id(), h.verify()));
    }

    static Optional<ChainAlarm> of(CaseId id, ChainCheck check) {
        return check instanceof ChainCheck.Broken broken ? Optional.of(new ChainAlarm(id, broken)) : Optional.empty();
    }

    public String sentence() {
        return "case " + id + ": THE CHAIN OF ENTRIES IS BROKEN at entry " + broken.number() + ": " + broken.why()
                + "; what is said of the case cannot be relied on";
    }

    /** Beside the answer, so that a machine that reads the answer is not disturbed. */
    void sound() {
        System.err.println(Terminal.harmless(sentence()));
        System.err.flush();
    }
}
