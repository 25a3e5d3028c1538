package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.yaml.CaseDocument;

/** A shell of its own for the tests: notes, pictures and cases from outside, turn about, and says what it was told is kept. */
public final class WorkingProcess {
    static final CaseId ID = new CaseId("worked-on");

    private WorkingProcess() {}

    /** Arguments: the folder or database file of the store, a name for this run. */
    public static void main(String[] args) {
        try (CaseStore store = new CaseStore(StoreLocation.at(Path.of(args[0])), Clock.systemUTC())) {
            for (int i = 0; ; i++) {
                String name = args[1] + "-" + i;
                switch (i % 4) {
                    case 0 -> store.attach(ID, name, "text/plain", name.getBytes(StandardCharsets.UTF_8), "anna");
                    case 1 -> store.importCase(imported(name), contents(name), "anna");
                    default -> store.append(ID, new NoteAdded(name), "anna");
                }
                System.out.println(name);
            }
        }
    }

    /** A case of many entries with three files, as a packet brings it. */
    private static CaseDocument imported(String name) {
        CaseSheet sheet = new CaseSheet(new CaseId(name));
        for (int f = 0; f < 20; f++) {
            sheet.finding(new FindingEntry("finding-" + f, FindingState.PRESENT, "seen"));
        }
        contents(name)
                .forEach((hash, bytes) ->
                        sheet.attachment(new Attachment(hash.substring(0, 8), "text/plain", hash, bytes.length)));
        return CaseDocument.of(sheet.toCaseFile());
    }

    private static Map<String, byte[]> contents(String name) {
        byte[] one = (name + " one").getBytes(StandardCharsets.UTF_8);
        byte[] two = (name + " two").repeat(10_000).getBytes(StandardCharsets.UTF_8);
        return Map.of(CanonicalText.sha256(one), one, CanonicalText.sha256(two), two);
    }

    static Process start(Path folder, String name) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        WorkingProcess.class.getName(),
                        folder.toString(),
                        name)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
