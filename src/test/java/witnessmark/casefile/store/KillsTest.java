package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;

/**
 * Shells are killed again and again on one store in the middle of notes, pictures and imports: nothing that one was told is
 * kept is lost, no case is torn. How many: the system property {@code witnessmark.kills}, 60 without it; another course of
 * chance by {@code witnessmark.kills.seed}.
 */
@Tag("long")
@Timeout(value = 120, unit = TimeUnit.MINUTES)
class KillsTest {
    @TempDir
    Path folder;

    private final Map<String, Integer> underWay = new TreeMap<>();

    @Test
    void nothing_acknowledged_is_lost_and_no_case_is_torn() throws Exception {
        int kills = Integer.getInteger("witnessmark.kills", 60);
        Random random = new Random(Long.getLong("witnessmark.kills.seed", 20260302));
        List<String> told = new ArrayList<>();
        try (CaseStore store = new CaseStore(StoreLocation.in(folder), Clock.systemUTC())) {
            store.open(new Opened(WorkingProcess.ID, "t", "", Vehicle.unknown(), Layout.unknown()), "anna");
        }
        for (int i = 0; i < kills; i++) {
            List<String> kept = killed(WorkingProcess.start(folder, "run" + i), random);
            underWay.merge(kept.isEmpty() ? "opening or a picture" : work(kept.size()), 1, Integer::sum);
            told.addAll(kept);
            if (i % 10 == 9) {
                check(told);
            }
        }
        check(told);
        System.out.println("kills: " + kills + " " + underWay + ", acknowledged: " + told.size());
        assertThat(told).hasSizeGreaterThan(kills);
    }

    /** What the shell was at when it had done so much; see {@link WorkingProcess}. */
    private static String work(int done) {
        return switch (done % 4) {
            case 0 -> "a picture";
            case 1 -> "an import with files";
            default -> "a note";
        };
    }

    private static List<String> killed(Process process, Random random) throws Exception {
        List<String> told = new ArrayList<>();
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), UTF_8))) {
            int before = random.nextInt(20);
            while (told.size() < before) {
                told.add(Objects.requireNonNull(out.readLine(), "the shell ended by itself"));
            }
            Thread.sleep(random.nextInt(30));
            process.toHandle().destroyForcibly();
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                told.add(line);
            }
        } finally {
            process.destroyForcibly().waitFor();
        }
        return told;
    }

    private void check(List<String> told) {
        try (CaseStore store = new CaseStore(StoreLocation.in(folder), Clock.systemUTC())) {
            StoreCheck check = store.verifyStore();
            assertThat(check.isWhole()).as(check.toString()).isTrue();
            CaseFile now = store.read(WorkingProcess.ID).present();
            Set<String> kept = new HashSet<>(now.notes());
            now.attachments().stream().map(Attachment::name).forEach(kept::add);
            store.ids("run", 1_000_000).stream().map(CaseId::text).forEach(kept::add);
            assertThat(kept).containsAll(told);
        }
    }
}
