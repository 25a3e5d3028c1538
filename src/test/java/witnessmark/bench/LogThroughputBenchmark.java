package witnessmark.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.GearTable;
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
                        file,
                        run,
                        report.lines(),
                        report.rows(),
                        report.brokenLines(),
                        seconds,
                        report.bytes() / 1e6 / seconds);
            }
            for (int run = 0; run < 6; run++) {
                long begin = cpuNanos();
                TripResult trip = ReadTrip.read(TripRequest.of(Path.of(file), table()), Progress.SILENT);
                double seconds = (cpuNanos() - begin) / 1e9;
                System.out.printf(
                        "whole trip %s run %d: %,.0f km, %d shifts, %d events, %.3f s, %.0f MB/s%n",
                        file,
                        run,
                        trip.summary().km(),
                        trip.summary().shifts(),
                        trip.summary().events(),
                        seconds,
                        trip.report().bytes() / 1e6 / seconds);
            }
        }
    }

    private static GearTable table() {
        double[] ratios = {11.1, 8.1, 6.0, 4.4, 3.3, 2.5, 1.82, 1.35, 1.0, 0.74};
        List<Gear> gears = new ArrayList<>();
        for (int i = 0; i < ratios.length; i++) {
            gears.add(new Gear(
                    String.valueOf(i + 1),
                    ratios[i],
                    i < 5 ? Gear.Range.LOW : Gear.Range.HIGH,
                    Gear.Splitter.NONE,
                    i % 5 + 1));
        }
        return new GearTable(gears, 312, 3.5, 1900, 600, 1000, 4.44, Optional.empty(), Optional.empty());
    }
}
