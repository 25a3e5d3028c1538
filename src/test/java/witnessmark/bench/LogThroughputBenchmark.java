package witnessmark.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Optional;
import witnessmark.triplog.read.LogHead;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadLog;
import witnessmark.triplog.read.ReadReport;

/** Prints MB/s of reading given log files, several times over, in processor time of the thread it runs on. */
public final class LogThroughputBenchmark {
    private static long cpuNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    public static void main(String[] files) {
        for (String file : files) {
            for (int run = 0; run < 6; run++) {
                long begin = cpuNanos();
                double[] sum = new double[1];
                ReadReport report = ReadLog.read(
                        LogHead.of(Path.of(file)),
                        Optional.empty(),
                        false,
                        Progress.SILENT,
                        row -> sum[0] += row.at(0));
                double seconds = (cpuNanos() - begin) / 1e9;
                System.out.printf(
                        "read only  %s run %d: %,d lines, %,d rows, %d broken, %.3f s, %.0f MB/s%n",
                        file, run, report.lines(), report.rows(), report.brokenLines(), seconds, report.bytes() / 1e6 / seconds);
            }
        }
    }
}
