package witnessmark.fleet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import witnessmark.fleet.PoolTruck.Pooled;

/** What all logs of a fleet came to, held in memory: about a kilobyte for each act. */
public final class FleetResult {
    private final List<UncountedLog> uncounted = new ArrayList<>();
    private final Map<String, Pooled> trucks = new TreeMap<>(FleetFile::compareNames);

    private FleetResult() {}

    /** @param outcomes of all logs, in any order */
    public static FleetResult of(List<ReadOutcome> outcomes) {
        FleetResult result = new FleetResult();
        List<FleetLog> read = new ArrayList<>();
        for (ReadOutcome outcome : outcomes) {
            if (outcome instanceof FleetLog log) {
                read.add(log);
            } else if (outcome instanceof UncountedLog log) {
                result.uncounted.add(log);
            }
        }
        result.pool(read);
        result.uncounted.sort(UncountedLog.ORDER);
        return result;
    }

    private void pool(List<FleetLog> read) {
        Set<String> shared = OtherTrucks.shared(read);
        Map<String, List<FleetLog>> byTruck = new HashMap<>();
        for (FleetLog log : read) {
            if (shared.contains(log.sha256())) {
                uncounted.add(OtherTrucks.setAside(log));
            } else {
                byTruck.computeIfAbsent(log.truck(), t -> new ArrayList<>()).add(log);
            }
        }
        byTruck.forEach((truck, logs) -> trucks.put(truck, PoolTruck.of(logs)));
        trucks.values().forEach(pooled -> uncounted.addAll(pooled.setAside()));
    }

    /** The trucks of which a log counts, by name. */
    public Map<String, Pooled> trucks() {
        return trucks;
    }

    public List<UncountedLog> uncounted() {
        return uncounted;
    }

    /** The rows of a table, in its order. */
    public List<List<Object>> rows(FleetTable table) {
        return switch (table) {
            case ACTS -> trucks.values().stream()
                    .flatMap(t -> t.counted().stream())
                    .flatMap(log -> log.acts().stream().map(act -> actCells(log, act)))
                    .toList();
            case DAYS -> trucks.values().stream()
                    .flatMap(t -> t.days().stream())
                    .map(TruckDayRow::cells)
                    .toList();
            case FINDINGS -> trucks.values().stream()
                    .flatMap(t -> t.findings().stream())
                    .map(TruckFinding::cells)
                    .toList();
            case NOT_COUNTED -> uncounted.stream().map(UncountedLog::cells).toList();
        };
    }

    private static List<Object> actCells(FleetLog log, FleetAct act) {
        List<Object> cells = new ArrayList<>(
                List.of(log.truck(), log.path(), act.number(), log.asDay().day()));
        cells.addAll(act.ownCells());
        return cells;
    }
}
