package witnessmark.casefile.store;

import java.nio.file.Path;
import java.time.Clock;

/** A shell of its own for the tests: copies a store to another. */
public final class CopyingProcess {
    private CopyingProcess() {}

    /** Arguments: where from, where to, each a folder or a database file. */
    public static void main(String[] args) {
        try (CaseStore from = new CaseStore(StoreLocation.existing(Path.of(args[0])), Clock.systemUTC());
                CaseStore to = new CaseStore(StoreLocation.at(Path.of(args[1])), Clock.systemUTC())) {
            System.out.println(from.copyTo(to, (done, all) -> {}).entries());
        }
    }

    static Process start(Path from, Path to) throws java.io.IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        CopyingProcess.class.getName(),
                        from.toString(),
                        to.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
