package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;

/** What has been acknowledged is there, whatever happens to the shell that wrote it. */
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class CaseStoreDurabilityTest {
    private static final CaseId ID = new CaseId("hangs-in-range");

    @TempDir
    Path folder;

    private final List<Process> started = new ArrayList<>();

    @AfterEach
    void end_what_was_started() throws Exception {
        for (Process process : started) {
            process.destroyForcibly().waitFor();
        }
    }

    private CaseStore store() {
        return new CaseStore(StoreLocation.in(folder), Clock.systemUTC());
    }

    private void openCase() {
        try (CaseStore store = store()) {
            store.open(new Opened(ID, "Hangs", "", Vehicle.unknown(), Layout.unknown()), "anna");
        }
    }

    private Process start(int count, String who) throws Exception {
        Process process = AppendingProcess.start(folder, ID, count, who);
        started.add(process);
        return process;
    }

    private static List<String> notes(String who, int count) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> who + " " + i).toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 120, 400})
    void a_shell_killed_in_mid_stream_loses_nothing_it_was_told_is_kept(int killedAfter) throws Exception {
        openCase();
        Process shell = start(1_000_000, "ben");
        int acknowledged = 0;
        try (BufferedReader out = new BufferedReader(new InputStreamReader(shell.getInputStream(), UTF_8))) {
            while (acknowledged < killedAfter) {
                acknowledged = Integer.parseInt(out.readLine());
            }
            // by its handle, since the process itself would close the stream that still holds acknowledgements
            shell.toHandle().destroyForcibly();
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                acknowledged = Integer.parseInt(line);
            }
        }

        try (CaseStore store = store()) {
            List<String> kept = store.read(ID).present().notes();
            assertThat(kept).startsWith(notes("ben", acknowledged).toArray(String[]::new));
            assertThat(kept.size() - acknowledged).isBetween(0, 1);
            assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Intact(kept.size() + 1L));
        }
    }

    @Test
    void two_shells_on_one_case_lose_nothing_even_when_the_one_that_holds_the_database_ends_first() throws Exception {
        theHolderEndsFirst();
    }

    /** The line may break within the rows of one answer, which it does about once in ten rounds. */
    @Tag("long")
    @RepeatedTest(20)
    void nor_when_it_ends_while_it_sends_rows_to_the_other() throws Exception {
        theHolderEndsFirst();
    }

    private void theHolderEndsFirst() throws Exception {
        openCase();
        Process first = start(80, "anna");
        assertThat(first.getInputStream().read()).isEqualTo('1');
        Process second = start(160, "ben");

        first.getInputStream().transferTo(OutputStream.nullOutputStream());
        second.getInputStream().transferTo(OutputStream.nullOutputStream());

        assertThat(first.waitFor()).isZero();
        assertThat(second.waitFor()).isZero();
        try (CaseStore store = store()) {
            List<String> kept = store.read(ID).present().notes();
            assertThat(kept).containsSubsequence(notes("anna", 80)).containsSubsequence(notes("ben", 160));
            assertThat(kept).hasSize(240);
            assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Intact(241));
        }
    }

    @Test
    void a_shell_goes_on_when_the_one_that_holds_the_database_is_killed() throws Exception {
        openCase();
        Process holder = start(1_000_000, "anna");
        assertThat(holder.getInputStream().read()).isEqualTo('1');
        Process other = start(200, "ben");
        assertThat(other.getInputStream().read()).isEqualTo('1');

        holder.toHandle().destroyForcibly();
        other.getInputStream().transferTo(OutputStream.nullOutputStream());

        assertThat(other.waitFor()).isZero();
        try (CaseStore store = store()) {
            assertThat(store.read(ID).present().notes()).containsSubsequence(notes("ben", 200));
            assertThat(store.verify(ID)).isInstanceOf(ChainCheck.Intact.class);
        }
    }

    @Test
    void two_shells_may_find_a_new_store_at_the_same_time() throws Exception {
        List<Thread> shells = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            CaseId id = new CaseId("case-" + i);
            shells.add(new Thread(() -> {
                try (CaseStore store = store()) {
                    store.open(new Opened(id, "", "", Vehicle.unknown(), Layout.unknown()), "anna");
                }
            }));
        }

        shells.forEach(Thread::start);
        for (Thread shell : shells) {
            shell.join();
        }

        try (CaseStore store = store()) {
            assertThat(store.ids("", 10)).containsExactly(new CaseId("case-0"), new CaseId("case-1"));
        }
    }

    @Test
    void a_database_that_another_program_holds_for_itself_is_told_in_one_line() throws Exception {
        openCase();
        Process holder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "org.h2.tools.Shell",
                        "-url",
                        "jdbc:h2:file:" + folder.resolve("cases"),
                        "-user",
                        "sa")
                .redirectErrorStream(true)
                .start();
        started.add(holder);
        try (BufferedReader out = new BufferedReader(new InputStreamReader(holder.getInputStream(), UTF_8))) {
            String line = out.readLine();
            while (line != null && !line.contains("help")) {
                line = out.readLine();
            }

            try (CaseStore store = store()) {
                assertThatThrownBy(() -> store.read(ID))
                        .isInstanceOf(StoreUnavailable.class)
                        .hasMessage("case store " + folder + ": another program or computer has it open;"
                                + " close it there, or wait until it has ended");
            }
        }
    }
}
