package witnessmark.fleet.spark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar on a cluster of a master and two workers: killed in the midst of the reading, nothing is lost. */
class WorkerKilledIT {
    private static final int LOGS = 48;

    @TempDir
    Path folder;

    private Path fleet() throws IOException {
        InventedFleet fleet = new InventedFleet(Files.createDirectories(folder.resolve("logs")));
        for (int i = 0; i < LOGS; i++) {
            // One truck has half of all logs.
            String truck = i % 2 == 0 ? "haul-many" : "haul-" + i;
            fleet.bus(truck + "/log-" + i + ".candump", 200 + i % 5, i, 6);
        }
        return fleet.folder();
    }

    @Test
    void a_worker_killed_in_mid_job_and_then_the_job_itself_lose_nothing() throws Exception {
        Path logs = fleet();
        Path one = new OneMachine(folder).tables(logs, "--truck", "thirteen-ratio");
        try (SparkCluster cluster = new SparkCluster(folder.resolve("cluster"), 2)) {
            Path out = folder.resolve("out");
            List<String> options = List.of(
                    "--logs", logs.toUri().toString(), "--out", out.toUri().toString(), "--truck", "thirteen-ratio");

            Process job = cluster.submit("job", options);
            awaitFirstTask(job, out);
            cluster.killWorker(0);

            assertThat(job.waitFor(15, TimeUnit.MINUTES)).isTrue();
            assertThat(job.exitValue()).as(cluster.said("job")).isZero();
            assertThat(cluster.said("job")).contains(LOGS + " logs, " + LOGS + " of them read now");
            String killed = cluster.worker(0);
            assertThat(cluster.said("master").lines())
                    .as("the worker was there and went")
                    .anyMatch(line -> line.contains("Registering worker " + killed + " with"))
                    .anyMatch(line -> line.contains("Removing worker ") && line.contains(" on " + killed));
            OneMachine.assertSame(out, one);

            killedJob(cluster, logs, one);
        }
    }

    /** What the killed job left unfinished is thrown away, and the next one comes to the same tables. */
    private void killedJob(SparkCluster cluster, Path logs, Path one) throws Exception {
        Path out = folder.resolve("out-of-killed-job");
        List<String> options = List.of(
                "--logs", logs.toUri().toString(), "--out", out.toUri().toString(), "--truck", "thirteen-ratio");
        Process killed = cluster.submit("killed", options);
        awaitFirstTask(killed, out);
        killed.destroyForcibly().waitFor(10, TimeUnit.SECONDS);

        Process refused = cluster.submit("refused", options);
        assertThat(refused.waitFor(15, TimeUnit.MINUTES)).isTrue();
        assertThat(cluster.said("refused")).contains("--take-over");
        assertThat(refused.exitValue()).isEqualTo(2);

        Process again = cluster.submit(
                "again",
                Stream.concat(options.stream(), Stream.of("--take-over")).toList());
        assertThat(again.waitFor(15, TimeUnit.MINUTES)).isTrue();
        assertThat(again.exitValue()).as(cluster.said("again")).isZero();
        OneMachine.assertSame(out, one);
    }

    /** Until the first task of the reading has handed in its part, so that others are under way. */
    private static void awaitFirstTask(Process job, Path out) throws IOException, InterruptedException {
        for (int tries = 0; tries < 12_000; tries++) {
            if (Files.isDirectory(out.resolve("kept"))) {
                try (Stream<Path> files = Files.walk(out.resolve("kept"), 5)) {
                    if (files.anyMatch(f -> f.getFileName().toString().startsWith("task_"))) {
                        assertThat(job.isAlive()).isTrue();
                        return;
                    }
                } catch (java.io.UncheckedIOException e) {
                    // A folder went away while it was walked; look again.
                }
            }
            Thread.sleep(50);
        }
        throw new AssertionError("no task ended within ten minutes");
    }
}
