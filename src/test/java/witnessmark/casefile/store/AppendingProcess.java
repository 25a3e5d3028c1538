package witnessmark.casefile.store;

import java.nio.file.Path;
import java.time.Clock;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.NoteAdded;

/** A shell of its own for the tests: appends notes to a case and says the number of each entry it was told is kept. */
public final class AppendingProcess {
    private AppendingProcess() {}

    /** Arguments: folder or database file of the store, case, how many notes, the writer's name. */
    public static void main(String[] args) {
        try (CaseStore store = new CaseStore(StoreLocation.at(Path.of(args[0])), Clock.systemUTC())) {
            int count = Integer.parseInt(args[2]);
            for (int i = 1; i <= count; i++) {
                store.append(new CaseId(args[1]), new NoteAdded(args[3] + " " + i), args[3]);
                System.out.println(i);
            }
        }
    }

    static Process start(Path folder, CaseId id, int count, String who) throws java.io.IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        AppendingProcess.class.getName(),
                        folder.toString(),
                        id.text(),
                        String.valueOf(count),
                        who)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
