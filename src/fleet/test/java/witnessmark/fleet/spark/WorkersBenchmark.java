package witnessmark.fleet.spark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * One job on clusters of one and of two workers of a core each: seconds by the clock, and processor time of the workers'
 * processes, which other work on the machine hardly lengthens. Arguments: an empty folder to work in, how many logs (24),
 * legs of each (200, about 10 MB).
 */
public final class WorkersBenchmark {
    private WorkersBenchmark() {}

    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args[0]).toAbsolutePath();
        int count = args.length > 1 ? Integer.parseInt(args[1]) : 24;
        int legs = args.length > 2 ? Integer.parseInt(args[2]) : 200;
        Path logs = Files.createDirectories(folder.resolve("logs"));
        InventedFleet fleet = new InventedFleet(logs);
        for (int i = 0; i < count; i++) {
            fleet.proper("haul-" + i % 6 + "/log-" + i + ".candump", i, i, 4, legs);
        }
        double megabytes = size(logs) / 1e6;
        System.out.printf(Locale.ROOT, "%d logs, %.0f MB%n", count, megabytes);
        for (int workers = 1; workers <= 2; workers++) {
            measure(folder.resolve("workers-" + workers), logs, workers, megabytes);
        }
    }

    private static void measure(Path place, Path logs, int workers, double megabytes) throws Exception {
        try (SparkCluster cluster = new SparkCluster(place, workers)) {
            long start = System.nanoTime();
            Process job = cluster.submit(
                    "job",
                    List.of(
                            "--logs",
                            logs.toUri().toString(),
                            "--out",
                            place.resolve("out").toUri().toString(),
                            "--truck",
                            "thirteen-ratio"));
            Duration busy = Duration.ZERO;
            // What an executor has used is gone with it, so that it is asked again and again.
            while (job.isAlive()) {
                Thread.sleep(200);
                Duration now = cluster.busy();
                busy = now.compareTo(busy) > 0 ? now : busy;
            }
            if (job.exitValue() != 0) {
                throw new IllegalStateException(cluster.said("job"));
            }
            double seconds = (System.nanoTime() - start) / 1e9;
            System.out.printf(
                    Locale.ROOT,
                    "%d workers: %.0f s by the clock (%.1f MB/s), processor time of workers and executors %.0f s%n",
                    workers,
                    seconds,
                    megabytes / seconds,
                    busy.toMillis() / 1e3);
        }
    }

    private static long size(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .mapToLong(f -> f.toFile().length())
                    .sum();
        }
    }
}
