package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.shell.print.Terminal;

/** Says that the chain of a case's entries is broken, before anything else is said of it. */
public record ChainAlarm(CaseId id, ChainCheck.Broken broken) {

    /** The alarm for a case whose chain is broken; empty for a whole one and for one that has no history. */
    public static Optional<ChainAlarm> of(CaseDocument document) {
        return document.history()
                .flatMap(h -> h.verify() instanceof ChainCheck.Broken broken
                        ? Optional.of(new ChainAlarm(h.id(), broken))
                        : Optional.empty());
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

    /** The machine form of the state of a chain: whole, or where and why it is broken. */
    public static Map<String, Object> json(CaseDocument document) {
        Map<String, Object> map = new LinkedHashMap<>();
        Optional<ChainAlarm> alarm = of(document);
        map.put("whole", alarm.isEmpty());
        alarm.ifPresent(a -> {
            map.put("brokenAt", a.broken.number());
            map.put("why", a.broken.why());
        });
        return map;
    }
}
