package witnessmark.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Optional;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.read.LogHead;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadLog;
import witnessmark.triplog.read.ReadReport;
import witnessmark.triplog.road.WriteBusyLog;

/**
 * Prints MB/s of reading given log files, several times over, by the clock on the wall and by the processor time of all
 * threads. Logs for it are written by {@link WriteBusyLog}.
 */
public final class LogThroughputBenchmark {
    private static final int RUNS = 6;

    private LogThroughputBenchmark() {}

    /** Reads each file by the reader alone, then as a whole trip. */
    public static void main(String[] files) {
        for (String file : files) {
            Path path = Path.of(file);
            for (int run = 0; run < RUNS; run++) {
                Clock clock = new Clock();
                double[] sum = new double[1];
                ReadReport report =
                        ReadLog.read(LogHead.of(path), Optional.empty(), Progress.SILENT, row -> sum[0] += row.at(0));
                System.out.printf(
                        "read only  %s run %d: %,d rows, %d broken, %s%n",
                        path.getFileName(), run, report.rows(), report.brokenLines(), clock.speed(report.bytes()));
            }
            for (int run = 0; run < RUNS; run++) {
                Clock clock = new Clock();
                TripResult trip = ReadTrip.read(TripRequest.of(path, WriteBusyLog.table()), Progress.SILENT);
                System.out.printf(
                        "whole trip %s run %d: %,.0f km, %d shifts, %d events, %s%n",
                        path.getFileName(),
                        run,
                        trip.summary().km(),
                        trip.summary().shifts(),
                        trip.summary().events(),
                        clock.speed(trip.report().bytes()));
            }
        }
    }

    private static final class Clock {
        private final OperatingSystemMXBean system =
                (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        private final long wall = System.nanoTime();
        private final long processor = system.getProcessCpuTime();

        String speed(long bytes) {
            double wallSeconds = (System.nanoTime() - wall) / 1e9;
            double processorSeconds = (system.getProcessCpuTime() - processor) / 1e9;
            return String.format(
                    "%.2f s = %.0f MB/s, %.2f s of processor = %.0f MB/s",
                    wallSeconds, bytes / 1e6 / wallSeconds, processorSeconds, bytes / 1e6 / processorSeconds);
        }
    }
}
