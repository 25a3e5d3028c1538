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
import java.util.Objects;
import java.util.Random;
import java.util.Set;
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
 * kept is lost, no case is torn. How many: the system property {@code witnessmark.kills}, 60 without it.
 */
@Tag("long")
@Timeout(value = 120, unit = TimeUnit.MINUTES)
class KillsTest {
    @TempDir
    Path folder;

    @Test
    void nothing_acknowledged_is_lost_and_no_case_is_torn() throws Exception {
        int kills = Integer.getInteger("witnessmark.kills", 60);
        Random random = new Random(20260302);
        List<String> told = new ArrayList<>();
        try (CaseStore store = new CaseStore(StoreLocation.in(folder), Clock.systemUTC())) {
            store.open(new Opened(WorkingProcess.ID, "t", "", Vehicle.unknown(), Layout.unknown()), "anna");
        }
        for (int i = 0; i < kills; i++) {
            told.addAll(killed(WorkingProcess.start(folder, "run" + i), random));
            if (i % 10 == 9) {
                check(told);
            }
        }
        check(told);
        System.out.println("kills: " + kills + ", acknowledged: " + told.size());
        assertThat(told).hasSizeGreaterThan(kills);
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
