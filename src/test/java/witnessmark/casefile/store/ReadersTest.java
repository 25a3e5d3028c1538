package witnessmark.casefile.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Shells that look at cases in every way, while others on the same store are ended or killed and the line to the server
 * breaks, at whatever moment: those that go on never see anything of it. How often: the system property
 * {@code witnessmark.kills}; another course of chance by {@code witnessmark.kills.seed}.
 */
@Tag("long")
@Timeout(value = 120, unit = TimeUnit.MINUTES)
class ReadersTest {
    private static final int SHELLS = 3;

    @TempDir
    Path folder;

    private final Random random = new Random(Long.getLong("witnessmark.kills.seed", 20260302));
    private final List<Shell> shells = new ArrayList<>();

    private record Shell(Process process, Path said) {
        long done() throws IOException {
            try (var lines = Files.lines(said)) {
                return lines.filter("done"::equals).count();
            }
        }

        String amiss() throws IOException {
            try (var lines = Files.lines(said)) {
                return String.join("\n", lines.filter(l -> !l.equals("done")).toList());
            }
        }
    }

    @AfterEach
    void end() throws Exception {
        for (Shell shell : shells) {
            shell.process.destroyForcibly().waitFor();
        }
    }

    private void start(Path place) throws IOException {
        Path said = Files.createTempFile(folder, "said", ".txt");
        shells.add(new Shell(ReadingProcess.start(place, random.nextLong(), said), said));
    }

    /** Waits until each shell has looked at something more. */
    private void goOn() throws Exception {
        long[] before = new long[shells.size()];
        for (int i = 0; i < before.length; i++) {
            before[i] = shells.get(i).done();
        }
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(120);
        for (int i = 0; i < before.length; i++) {
            Shell shell = shells.get(i);
            while (shell.done() < before[i] + 2) {
                assertThat(shell.process.isAlive()).as(shell.amiss()).isTrue();
                assertThat(System.nanoTime()).as("a shell that hangs").isLessThan(until);
                Thread.sleep(5);
            }
            assertThat(shell.amiss()).isEmpty();
        }
        Thread.sleep(random.nextInt(60));
    }

    @Test
    void shells_of_a_folder_go_on_when_the_one_that_holds_the_database_ends() throws Exception {
        int ends = Integer.getInteger("witnessmark.kills", 30);
        Path place = folder.resolve("store");
        try (CaseStore store = new CaseStore(StoreLocation.in(place), Clock.systemUTC())) {
            ReadingProcess.fill(store);
        }
        for (int i = 0; i < SHELLS; i++) {
            start(place);
        }
        for (int i = 0; i < ends; i++) {
            goOn();
            Shell one = shells.remove(random.nextInt(SHELLS));
            switch (i % 3) {
                case 0 -> one.process.toHandle().destroyForcibly();
                case 1 -> one.process.toHandle().destroy();
                default -> one.process.outputWriter().append('\n').close();
            }
            goOn();
            one.process.waitFor();
            if (i % 3 == 2) {
                assertThat(one.amiss()).isEmpty();
            }
            start(place);
        }
        System.out.println("ended while others looked: " + ends);
    }

    @Test
    void shells_on_a_server_go_on_when_their_line_breaks_or_the_server_is_killed() throws Exception {
        int breaks = Integer.getInteger("witnessmark.kills", 30);
        try (PostgresServer server = PostgresServer.start()) {
            String database = server.emptyStore();
            try (CaseStore store = new CaseStore(server.location(database, "anna"), Clock.systemUTC())) {
                ReadingProcess.fill(store);
            }
            Path place =
                    PostgresServer.file(folder.resolve("shop"), server.url(database), "anna", PostgresServer.PASSWORD);
            for (int i = 0; i < SHELLS; i++) {
                start(place);
            }
            for (int i = 0; i < breaks; i++) {
                goOn();
                if (i % 10 == 9) {
                    server.kill();
                    server.begin();
                } else {
                    server.admin(
                            "postgres",
                            "select pg_terminate_backend(pid) from pg_stat_activity where usename = 'anna'");
                }
            }
            goOn();
        }
        System.out.println("lines broken while shells looked: " + breaks);
    }

    @Test
    void a_copy_goes_on_when_the_line_to_either_store_breaks() throws Exception {
        int breaks = Integer.getInteger("witnessmark.kills", 30);
        try (PostgresServer server = PostgresServer.start();
                CaseStore from = new CaseStore(StoreLocation.in(folder.resolve("from")), Clock.systemUTC())) {
            ReadingProcess.fill(from);
            int broken = 0;
            for (int round = 0; broken < breaks; round++) {
                String database = server.emptyStore();
                Path there = folder.resolve("back" + round);
                try (CaseStore shared = new CaseStore(server.location(database, "anna"), Clock.systemUTC());
                        CaseStore back = new CaseStore(StoreLocation.in(there), Clock.systemUTC())) {
                    Thread copy = new Thread(() -> {
                        from.copyTo(shared, (done, all) -> {});
                        shared.copyTo(back, (done, all) -> {});
                    });
                    List<Throwable> faults = new ArrayList<>();
                    copy.setUncaughtExceptionHandler((thread, fault) -> faults.add(fault));
                    copy.start();
                    while (copy.isAlive()) {
                        Thread.sleep(100 + random.nextInt(400));
                        server.admin(
                                "postgres",
                                "select pg_terminate_backend(pid) from pg_stat_activity where usename = 'anna'");
                        broken++;
                    }
                    copy.join();
                    assertThat(faults).isEmpty();
                    assertThat(back.head()).isEqualTo(from.head());
                }
            }
            System.out.println("lines broken while stores were copied: " + broken);
        }
    }
}
