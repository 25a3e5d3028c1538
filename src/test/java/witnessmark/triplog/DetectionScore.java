package witnessmark.triplog;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.event.FindEvents;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.TrackGears;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.read.LogHead;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadLog;
import witnessmark.triplog.signal.RowBlock;

/** Compares found events with the truth of simulated drives, kind by kind. */
public final class DetectionScore {
    private static final double WITHIN_SECONDS = 4;

    private final Map<EventKind, int[]> counts = new EnumMap<>(EventKind.class);

    /** All events that the reading of a file finds. */
    public static List<HabitEvent> events(Path file, GearTable table) {
        List<HabitEvent> events = new ArrayList<>();
        FindEvents[] finder = new FindEvents[1];
        TrackGears tracker = new TrackGears(table, new TrackedRows() {
            @Override
            public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
                finder[0].rows(block, inHand, scatter, from, to);
            }

            @Override
            public void speedJump(long micros, long line, double from, double to, double seconds) {
                finder[0].speedJump(micros, line, from, to, seconds);
            }
        });
        finder[0] = new FindEvents(table, HabitLimits.usual(), tracker::outputRpmPerKmh, events::add);
        ReadLog.read(LogHead.of(file), Optional.empty(), Progress.SILENT, tracker);
        tracker.end();
        finder[0].end();
        return events;
    }

    public void add(SimulatedDrive drive, List<HabitEvent> events, double zero) {
        for (EventKind kind : EventKind.values()) {
            List<SimulatedDrive.Truth> truths =
                    drive.truths().stream().filter(t -> t.kind() == kind).toList();
            List<HabitEvent> found =
                    events.stream().filter(e -> e.kind() == kind).toList();
            Set<Integer> used = new HashSet<>();
            int[] count = counts.computeIfAbsent(kind, k -> new int[4]);
            count[0] += truths.size();
            count[2] += found.size();
            for (SimulatedDrive.Truth truth : truths) {
                boolean hit = false;
                for (int i = 0; i < found.size(); i++) {
                    double from = found.get(i).startMicros() / 1e6 - zero;
                    double to = from + found.get(i).seconds();
                    if (from < truth.toSeconds() + WITHIN_SECONDS && to > truth.fromSeconds() - WITHIN_SECONDS) {
                        hit = true;
                        used.add(i);
                    }
                }
                if (hit) {
                    count[1]++;
                } else if (Boolean.getBoolean("show")) {
                    System.out.println("missed " + truth);
                }
            }
            count[3] += used.size();
            for (int i = 0; i < found.size() && Boolean.getBoolean("show"); i++) {
                if (!used.contains(i)) {
                    System.out.printf(
                            "false  %.1f %s %s%n",
                            found.get(i).startMicros() / 1e6 - zero,
                            found.get(i).kind(),
                            found.get(i).sentence());
                }
            }
        }
    }

    public int truths(EventKind kind) {
        return counts.getOrDefault(kind, new int[4])[0];
    }

    /** Share of true events that were found; 1 if there were none. */
    public double recall(EventKind kind) {
        int[] count = counts.getOrDefault(kind, new int[4]);
        return count[0] == 0 ? 1 : (double) count[1] / count[0];
    }

    /** Share of found events that were true; 1 if none was found. */
    public double precision(EventKind kind) {
        int[] count = counts.getOrDefault(kind, new int[4]);
        return count[2] == 0 ? 1 : (double) count[3] / count[2];
    }

    public int found(EventKind kind) {
        return counts.getOrDefault(kind, new int[4])[2];
    }
}
