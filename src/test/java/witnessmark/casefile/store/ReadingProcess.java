package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Random;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.yaml.CaseDocument;

/** A shell of its own for the tests: looks at cases in every way, seldom adds something, and says after each that it is done. */
public final class ReadingProcess {
    private static final int CASES = 20;

    private ReadingProcess() {}

    /** Arguments: the folder or database file of the store, the course of chance. It ends where its input ends. */
    public static void main(String[] args) throws IOException {
        Random random = new Random(Long.parseLong(args[1]));
        try (CaseStore store = new CaseStore(StoreLocation.at(Path.of(args[0])), Clock.systemUTC())) {
            while (System.in.available() == 0) {
                System.out.println(look(store, random));
            }
        }
    }

    static String look(CaseStore store, Random random) {
        CaseId id = id(random.nextInt(CASES));
        switch (random.nextInt(18)) {
            case 0, 1, 2 -> require(
                    store.list(CaseQuery.all().withPage(1_000, 0)).size() >= CASES, "list");
            case 3, 4 -> require(
                    store.count(CaseQuery.all().withFinding("finding-3", FindingState.PRESENT)) == CASES, "search");
            case 5 -> require(store.ids("c", 1_000).size() == CASES, "ids");
            case 6, 7, 8 -> require(store.read(id).entries().size() > 60, "read");
            case 9, 10 -> require(store.verify(id) instanceof ChainCheck.Intact, "verify");
            case 11 -> require(store.verifyStore().isWhole(), "verify all");
            case 12, 13, 14 -> {
                CaseFile present = store.export(id).present();
                present.attachments().forEach(a -> require(store.readAttachment(id, a).length == a.size(), "picture"));
            }
            case 15 -> require(store.verifyFiles(id).isEmpty(), "files");
            case 16 -> store.attach(
                    id, "more", "text/plain", String.valueOf(random.nextLong()).getBytes(UTF_8), "anna");
            default -> store.append(id, new NoteAdded("note " + random.nextLong()), "anna");
        }
        return "done";
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new IllegalStateException(what + " is not what was kept");
        }
    }

    private static CaseId id(int number) {
        return new CaseId("c" + number);
    }

    /** Puts in what is looked at: cases of many entries, each with a picture. */
    static void fill(CaseStore store) {
        for (int c = 0; c < CASES; c++) {
            byte[] picture = new byte[50_000 + 1_000 * c];
            new Random(c).nextBytes(picture);
            String hash = CanonicalText.sha256(picture);
            CaseSheet sheet = new CaseSheet(id(c));
            for (int f = 0; f < 60; f++) {
                sheet.finding(new FindingEntry("finding-" + f, FindingState.PRESENT, "found by " + c));
            }
            sheet.attachment(new Attachment("photo.jpg", "image/jpeg", hash, picture.length));
            store.importCase(CaseDocument.of(sheet.toCaseFile()), Map.of(hash, picture), "anna");
        }
    }

    static Process start(Path place, long chance, Path said) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        ReadingProcess.class.getName(),
                        place.toString(),
                        String.valueOf(chance))
                .redirectError(ProcessBuilder.Redirect.appendTo(said.toFile()))
                .redirectOutput(ProcessBuilder.Redirect.appendTo(said.toFile()))
                .start();
    }
}
