package witnessmark.shell.cases;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.shell.print.Json;

/**
 * The machine form of how a case is kept: whether its chain is whole, or where and why it is broken, and which of its
 * files are missing or not as they were put in.
 *
 * @param damagedFiles empty where none is damaged
 */
public record ChainJson(
        boolean whole, Optional<Long> brokenAt, Optional<String> why, Optional<List<File>> damagedFiles) {

    /** A damaged file of the case. */
    record File(String name, String sha256, String fault) {
        static File of(DamagedFile damaged) {
            return new File(
                    damaged.file().name(),
                    damaged.file().sha256(),
                    damaged.fault().word());
        }
    }

    public static ChainJson of(CaseDocument document) {
        return document.history()
                .map(h -> of(h.verify(), h.damagedFiles()))
                .orElse(of(new ChainCheck.Intact(0), List.of()));
    }

    static ChainJson of(ChainCheck chain, List<DamagedFile> damaged) {
        Optional<List<File>> files = Json.some(damaged.stream().map(File::of).toList());
        return chain instanceof ChainCheck.Broken broken
                ? new ChainJson(false, Optional.of(broken.number()), Optional.of(broken.why()), files)
                : new ChainJson(true, Optional.empty(), Optional.empty(), files);
    }
}
