package witnessmark.casefile.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.h2.store.fs.FileUtils;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.gearbox.Layout;

/**
 * Whatever a power cut leaves of what was not yet synced, nothing acknowledged is lost: the store opens, or says that it
 * can be made anew from its journal, and then holds it all. Each state is a cut after any write, sync or renaming, with
 * each page of 4096 bytes not yet synced kept or lost by chance.
 */
@Timeout(value = 60, unit = TimeUnit.MINUTES)
class PowerCutTest {
    private static final CaseId ID = new CaseId("long-notes");
    private static final int NOTES = 45;

    @TempDir
    Path folder;

    @Test
    void nothing_acknowledged_is_lost_in_some_states() throws Exception {
        replay(60, 1);
    }

    @Test
    @Tag("long")
    void nothing_acknowledged_is_lost_in_many_states() throws Exception {
        replay(2_400, 2);
    }

    private void replay(int states, long seed) throws Exception {
        RecordingDisk disk = recorded();
        Random chance = new Random(seed);
        Map<String, Integer> outcomes = new TreeMap<>();
        for (int i = 0; i < states; i++) {
            Path state = Files.createDirectories(folder.resolve("state"));
            int cut = 1 + chance.nextInt(disk.steps());
            double kept = List.of(0.0, 0.5, 0.5, 0.5, 0.9, 1.0).get(chance.nextInt(6));
            int told = disk.layOut(cut, kept, chance, state);
            outcomes.merge(outcome(state, told, "state " + i + ", cut " + cut + ", kept " + kept), 1, Integer::sum);
            FileUtils.deleteRecursive(state.toString(), true);
        }
        System.out.println("power cuts: " + outcomes);
        assertThat(outcomes.values().stream().mapToInt(n -> n).sum()).isEqualTo(states);
        assertThat(outcomes.keySet()).isSubsetOf("opened", "made anew by itself", "made anew", "nothing kept yet");
        assertThat(outcomes.get("made anew by itself")).isPositive();
    }

    /** A first start, notes short and long, several cases at once, a later start. */
    private RecordingDisk recorded() throws IOException {
        Path root = Files.createDirectories(folder.resolve("recorded"));
        RecordingDisk disk = new RecordingDisk(root);
        disk.begin();
        int kept = 0;
        for (int from : new int[] {0, 30}) {
            try (CaseStore store = new CaseStore(StoreLocation.in(root), Clock.systemUTC(), disk)) {
                if (from == 0) {
                    store.open(new Opened(ID, "t", "", Vehicle.unknown(), Layout.unknown()), "anna");
                    disk.told(++kept);
                }
                for (int i = from; i < (from == 0 ? 30 : NOTES); i++) {
                    store.append(ID, new NoteAdded(note(i)), "anna");
                    disk.told(++kept);
                    if (i % 15 == 7) {
                        store.importAll(List.of(imported(i, "a"), imported(i, "b"), imported(i, "c")), "anna");
                    }
                }
            }
        }
        return disk;
    }

    private static String note(int i) {
        return i + (i % 3 == 0 ? " short" : " long".repeat(100 * (1 + i % 5)));
    }

    private static CaseDocument imported(int i, String name) {
        CaseSheet sheet = new CaseSheet(new CaseId("imported-" + i + name));
        for (int f = 0; f < 30; f++) {
            sheet.finding(new FindingEntry("finding-" + f, FindingState.PRESENT, "seen ".repeat(30)));
        }
        return CaseDocument.of(sheet.toCaseFile());
    }

    private static String outcome(Path state, int told, String which) throws IOException {
        try (CaseStore store = new CaseStore(StoreLocation.in(state), Clock.systemUTC())) {
            String how = "opened";
            try {
                check(store, told, which);
            } catch (StoreUnavailable e) {
                assertThat(e.mend()).as(which + ": " + e.getMessage()).contains("store rebuild");
                store.rebuild();
                check(store, told, which);
                how = "made anew";
            }
            if (Files.list(state).anyMatch(f -> f.toString().contains("before-rebuild")) && how.equals("opened")) {
                how = "made anew by itself";
            }
            return told == 0 ? "nothing kept yet" : how;
        }
    }

    private static void check(CaseStore store, int told, String which) {
        List<String> expected = new ArrayList<>();
        for (int i = 0; i + 1 < told; i++) {
            expected.add(note(i));
        }
        assertThat(store.verifyAll()).as(which).isEmpty();
        boolean there = store.ids("long-notes", 1).contains(ID);
        if (told > 0 || there) {
            List<String> notes = store.read(ID).present().notes();
            assertThat(notes.subList(0, Math.min(notes.size(), expected.size())))
                    .as(which)
                    .isEqualTo(expected);
            assertThat(store.verify(ID)).as(which).isInstanceOf(ChainCheck.Intact.class);
        }
        for (CaseId id : store.ids("imported-", 100)) {
            assertThat(store.read(id).present().findings()).as(which).hasSize(30);
        }
        // and it goes on
        store.open(
                new Opened(new CaseId("later-" + System.nanoTime()), "", "", Vehicle.unknown(), Layout.unknown()),
                "ben");
    }
}
