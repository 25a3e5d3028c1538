package witnessmark.shell.cases;

import java.util.Optional;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.yaml.CaseDocument;

/** The machine form of the state of a chain: whole, or where and why it is broken. */
public record ChainJson(boolean whole, Optional<Long> brokenAt, Optional<String> why) {
    public static ChainJson of(CaseDocument document) {
        return of(document.history().map(CaseHistory::verify).orElse(new ChainCheck.Intact(0)));
    }

    static ChainJson of(ChainCheck chain) {
        return chain instanceof ChainCheck.Broken broken
                ? new ChainJson(false, Optional.of(broken.number()), Optional.of(broken.why()))
                : new ChainJson(true, Optional.empty(), Optional.empty());
    }
}
