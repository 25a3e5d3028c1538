package witnessmark.shell.cases;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.shell.print.Terminal;

/**
 * Says that a case is not kept as it was written, its chain of entries or a file of it, before anything else is said of it.
 *
 * @param broken where the chain is broken; empty while it is whole
 * @param files those that are missing or not as they were put in
 */
record CaseAlarm(CaseId id, Optional<ChainCheck.Broken> broken, List<DamagedFile> files) {

    /** The alarm for a case as it was looked over; with nothing to tell for a whole one. */
    static CaseAlarm of(CaseHistory history) {
        return new CaseAlarm(
                history.id(),
                history.verify() instanceof ChainCheck.Broken at ? Optional.of(at) : Optional.empty(),
                history.damagedFiles());
    }

    /** Beside the answer, so that a machine that reads the answer is not disturbed; silent where nothing is amiss. */
    void sound() {
        broken.ifPresent(at -> tell("THE CHAIN OF ENTRIES IS BROKEN at entry " + at.number() + ": " + at.why()
                + "; what is said of the case cannot be relied on"));
        if (!files.isEmpty()) {
            tell("FILES ARE NOT AS THEY WERE PUT IN: " + DamagedFile.sentence(files)
                    + "; what is said of them cannot be" + " relied on. " + capital(DamagedFile.mend(id)));
        }
    }

    private void tell(String sentence) {
        System.err.println(Terminal.harmless("case " + id + ": " + sentence));
        System.err.flush();
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
