package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;

/** A shell of its own for the tests: makes one new store after another and says which it begins and which it is told is kept. */
public final class StartingProcess {
    static final CaseId ID = new CaseId("first");

    private StartingProcess() {}

    /** Argument: the folder under which the stores are made, named 1, 2, 3 and so on. */
    public static void main(String[] args) {
        for (int i = 1; ; i++) {
            System.out.println("begins " + i);
            try (CaseStore store = new CaseStore(StoreLocation.in(Path.of(args[0], "" + i)), Clock.systemUTC())) {
                store.open(new Opened(ID, "", "", Vehicle.unknown(), Layout.unknown()), "anna");
            }
            System.out.println("kept " + i);
        }
    }

    static Process start(Path folder) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        StartingProcess.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
