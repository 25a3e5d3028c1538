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
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
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
 * Shells and the server are killed again and again in the middle of notes, pictures and imports: nothing that a shell was
 * told is kept is lost, no case is torn. How many kills of each: the system property {@code witnessmark.kills}, 20 and 10
 * without it.
 */
@Tag("long")
@Timeout(value = 120, unit = TimeUnit.MINUTES)
class SharedStoreKillsTest {
    private static final int SHELLS = 3;

    @TempDir
    Path folder;

    private final Random random = new Random(20260302);
    private final ConcurrentLinkedQueue<String> told = new ConcurrentLinkedQueue<>();
    private final List<Process> shells = new ArrayList<>();
    private final List<Thread> listeners = new ArrayList<>();
    private PostgresServer server;
    private StoreLocation location;
    private Path file;

    @BeforeEach
    void begin() throws Exception {
        server = PostgresServer.start();
        String database = server.emptyStore();
        location = server.location(database, "anna");
        file = PostgresServer.file(folder.resolve("shop"), server.url(database), "anna", PostgresServer.PASSWORD);
        try (CaseStore store = new CaseStore(location, Clock.systemUTC())) {
            store.open(new Opened(WorkingProcess.ID, "t", "", Vehicle.unknown(), Layout.unknown()), "anna");
        }
    }

    @AfterEach
    void end() throws Exception {
        for (Process shell : shells) {
            shell.destroyForcibly().waitFor();
        }
        server.close();
    }

    /** Starts a shell and takes down what it is told is kept. */
    private Process shell(String name) throws Exception {
        Process process = WorkingProcess.start(file, name);
        shells.add(process);
        Thread listener = new Thread(() -> {
            try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), UTF_8))) {
                for (String line = out.readLine(); line != null; line = out.readLine()) {
                    told.add(line);
                }
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        listener.start();
        listeners.add(listener);
        return process;
    }

    private void waitForMore(int count) throws Exception {
        int enough = told.size() + count;
        long until = System.currentTimeMillis() + 60_000;
        while (told.size() < enough) {
            assertThat(System.currentTimeMillis()).as("the shells went on").isLessThan(until);
            Thread.sleep(5);
        }
        Thread.sleep(random.nextInt(40));
    }

    @Test
    void shells_killed_in_mid_stream_lose_nothing_they_were_told_is_kept() throws Exception {
        int kills = Integer.getInteger("witnessmark.kills", 20);
        for (int i = 0; i < kills; i++) {
            Process one = shell("run" + i);
            waitForMore(1 + random.nextInt(20));
            // by its handle, since the process itself would close the stream that still holds acknowledgements
            one.toHandle().destroyForcibly();
            one.waitFor();
            if (i % 10 == 9) {
                check();
            }
        }
        endAll();
        check();
        System.out.println("kills of shells: " + kills + ", acknowledged: " + told.size());
        assertThat(told).hasSizeGreaterThan(kills);
    }

    @Test
    void a_server_killed_in_mid_stream_loses_nothing_it_has_acknowledged() throws Exception {
        int kills = Integer.getInteger("witnessmark.kills", 10);
        for (int i = 0; i < SHELLS; i++) {
            shell("shell" + i);
        }
        for (int i = 0; i < kills; i++) {
            waitForMore(1 + random.nextInt(30));
            server.kill();
            server.begin();
            if (i % 10 == 9) {
                check();
            }
        }
        assertThat(shells).as("shells that waited for the server and went on").allMatch(Process::isAlive);
        endAll();
        check();
        System.out.println("kills of the server: " + kills + ", acknowledged: " + told.size());
        assertThat(told).hasSizeGreaterThan(kills);
    }

    private void endAll() throws Exception {
        shells.forEach(s -> s.toHandle().destroyForcibly());
        for (Thread listener : listeners) {
            listener.join();
        }
    }

    private void check() {
        Set<String> acknowledged = new HashSet<>(told);
        try (CaseStore store = new CaseStore(location, Clock.systemUTC())) {
            StoreCheck check = store.verifyStore();
            assertThat(check.isWhole()).as(check.toString()).isTrue();
            CaseFile now = store.read(WorkingProcess.ID).present();
            Set<String> kept = new HashSet<>(now.notes());
            now.attachments().stream().map(Attachment::name).forEach(kept::add);
            store.ids("", 1_000_000).stream().map(CaseId::text).forEach(kept::add);
            assertThat(kept).containsAll(acknowledged);
        }
    }
}
