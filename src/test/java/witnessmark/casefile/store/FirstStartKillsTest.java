package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;

/**
 * A shell killed while it makes its store leaves one that opens, with all that it was told is kept. How many in the long
 * suite: {@code witnessmark.kills}; another course of chance by {@code witnessmark.kills.seed}.
 */
@Timeout(value = 20, unit = TimeUnit.MINUTES)
class FirstStartKillsTest {
    @TempDir
    Path folder;

    @Test
    void a_kill_while_a_store_is_made_leaves_one_that_opens() throws Exception {
        killWhileStarting(2);
    }

    @Test
    @Tag("long")
    void a_hundred_kills_while_a_store_is_made_leave_stores_that_open() throws Exception {
        killWhileStarting(Integer.getInteger("witnessmark.kills", 120));
    }

    /** Kills a fresh process in its first store, cold, or in a later one, where all goes faster. */
    private void killWhileStarting(int times) throws Exception {
        Random random = new Random(Long.getLong("witnessmark.kills.seed", 20260302));
        int inTheMaking = 0;
        for (int i = 0; i < times; i++) {
            Path here = Files.createDirectories(folder.resolve("kill-" + i));
            String last = killed(StartingProcess.start(here), 1 + i % 4, i % 4 == 0 ? 900 : 120, random);
            Path store = here.resolve(last.replaceAll("\\D", ""));
            try (CaseStore opened = new CaseStore(StoreLocation.in(store), Clock.systemUTC())) {
                List<CaseId> kept = opened.ids("", 10);
                assertThat(kept).isIn(List.of(), List.of(StartingProcess.ID));
                if (last.startsWith("kept")) {
                    assertThat(kept).containsExactly(StartingProcess.ID);
                }
                opened.open(new Opened(new CaseId("second"), "", "", Vehicle.unknown(), Layout.unknown()), "anna");
                inTheMaking += kept.isEmpty() ? 1 : 0;
            }
        }
        System.out.println("kills in a first start: " + times + ", before a case was kept: " + inTheMaking);
        assertThat(inTheMaking).as("kills before the first case was kept").isPositive();
    }

    /** Kills the process some time after it began its n-th store; returns the last line it said. */
    private static String killed(Process process, int nth, int longest, Random random) throws Exception {
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), UTF_8))) {
            String last = out.readLine();
            while (!last.equals("begins " + nth)) {
                last = out.readLine();
            }
            Thread.sleep(random.nextInt(longest));
            process.toHandle().destroyForcibly();
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                last = line;
            }
            return last;
        } finally {
            process.destroyForcibly().waitFor();
        }
    }
}
