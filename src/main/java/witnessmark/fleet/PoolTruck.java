package witnessmark.fleet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.WeighRecord;
import witnessmark.triplog.summary.TimeSpan;

/**
 * Makes one witness of the logs of one truck. Each stretch of driving counts once: of logs with the same content, or of
 * the same time, only the first by path counts.
 */
public final class PoolTruck {
    private final List<FleetLog> counted = new ArrayList<>();
    private final List<UncountedLog> setAside = new ArrayList<>();

    private PoolTruck() {}

    /**
     * What the logs of a truck come to.
     *
     * @param counted those that count, by path
     * @param days by day, undated last
     * @param findings what all of them say together
     * @param setAside those that do not count
     */
    public record Pooled(
            List<FleetLog> counted, List<TruckDay> days, List<TruckFinding> findings, List<UncountedLog> setAside) {}

    /** @param logs of one truck, in any order */
    public static Pooled of(List<FleetLog> logs) {
        PoolTruck pool = new PoolTruck();
        pool.choose(logs.stream().sorted(FleetLog.ORDER).toList());
        Map<String, TruckDay> days = new TreeMap<>();
        pool.counted.forEach(log -> days.merge(log.asDay().day(), log.asDay(), TruckDay::plus));
        return new Pooled(pool.counted, List.copyOf(days.values()), pool.findings(days), pool.setAside);
    }

    private void choose(List<FleetLog> logs) {
        Map<String, FleetLog> byContent = new HashMap<>();
        for (FleetLog log : logs) {
            Optional<String> reason = Optional.ofNullable(byContent.get(log.sha256()))
                    .map(first -> "the same log as " + first.path() + "; it would count twice")
                    .or(() -> sameTime(log));
            if (reason.isPresent()) {
                setAside.add(UncountedLog.of(log, reason.get()));
            } else {
                byContent.put(log.sha256(), log);
                counted.add(log);
            }
        }
    }

    private Optional<String> sameTime(FleetLog log) {
        return counted.stream()
                .filter(other -> TimeSpan.isSameDriving(
                        log.asDay().record().spans(), other.asDay().record().spans()))
                .map(other -> "covers the same time as " + other.path() + "; it would count twice")
                .findFirst();
    }

    private List<TruckFinding> findings(Map<String, TruckDay> days) {
        return days.values().stream()
                .map(TruckDay::record)
                .reduce(LogRecord::plus)
                .map(WeighRecord::weigh)
                .orElse(List.of())
                .stream()
                .map(said -> new TruckFinding(counted.get(0).truck(), said, counted.size()))
                .sorted(Comparator.comparing(f -> f.said().finding()))
                .toList();
    }
}
