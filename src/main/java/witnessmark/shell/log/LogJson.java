package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.summary.CountInterval;
import witnessmark.triplog.summary.TripSummary;
import witnessmark.triplog.summary.Verdict;

/** What logs came to, for a program. */
final class LogJson {
    private LogJson() {}

    static Map<String, Object> of(LogJob.Done done, boolean allEvents) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("partial", done.stopped());
        map.put(
                "trucks",
                done.results().stream().map(r -> truck(done, r, allEvents)).toList());
        map.put("caution", LogText.NAMES_A_TRUCK);
        return map;
    }

    private static Map<String, Object> truck(LogJob.Done done, TruckResult truck, boolean allEvents) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("truck", truck.truck());
        map.put(
                "profile",
                done.profiles().getOrDefault(truck.truck(), done.truck()).id());
        map.put("partial", truck.isPartial());
        map.putAll(summary(truck.summary()));
        map.put(
                "worst",
                truck.worst().stream().map(s -> event(s.trip(), s.event())).toList());
        if (allEvents) {
            map.put(
                    "events",
                    truck.trips().stream()
                            .flatMap(t -> t.events().stream().map(e -> event(t, e)))
                            .toList());
        }
        map.put("logs", truck.trips().stream().map(LogJson::log).toList());
        map.put("notRead", truck.failures());
        return map;
    }

    static Map<String, Object> summary(TripSummary s) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("km", s.km());
        s.odometerKm().ifPresent(km -> map.put("odometerKm", km));
        map.put("coveredHours", s.coveredHours());
        map.put("movingHours", s.movingHours());
        map.put("engineHours", s.engineHours());
        map.put("highestKmh", s.highestKmh());
        map.put("highestRpm", s.highestRpm());
        map.put("shifts", s.shifts());
        map.put("leverShifts", s.leverShifts());
        map.put("rangeShifts", s.rangeShifts());
        map.put("gearKnownShare", s.gearKnownShare());
        map.put("hoursInHand", s.hoursInHand());
        map.put("kinds", s.verdicts().stream().map(v -> verdict(s, v)).toList());
        return map;
    }

    private static Map<String, Object> verdict(TripSummary s, Verdict v) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("kind", v.kind().id());
        map.put("state", v.state().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        map.put("count", v.count());
        map.put("chances", v.chances());
        map.put("chanceOf", v.kind().chance().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        map.put("reason", v.reason());
        CountInterval rate = s.per100km().get(v.kind());
        if (rate != null) {
            map.put("per100km", rate.rate());
            map.put("lower95", rate.lower());
            map.put("upper95", rate.upper());
        }
        return map;
    }

    private static Map<String, Object> event(TripResult trip, HabitEvent e) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("kind", e.kind().id());
        map.put("file", trip.report().file().toString());
        map.put("start", EventTable.moment(e.startMicros()));
        map.put("seconds", e.seconds());
        map.put("roadKmh", e.roadKmh());
        map.put("engineRpm", e.engineRpm());
        e.gearBefore().ifPresent(g -> map.put("gearBefore", g));
        e.gearAfter().ifPresent(g -> map.put("gearAfter", g));
        map.put("act", e.act().number());
        e.act().follows().ifPresent(k -> map.put("follows", k.id()));
        map.put("severity", e.severity());
        map.put("grade", e.grade().name().toLowerCase(Locale.ROOT));
        map.put("confidence", e.confidence());
        map.put("firstLine", e.firstLine());
        map.put("lastLine", e.lastLine());
        map.put("figures", e.figures().byName());
        map.put("sentence", e.sentence());
        return map;
    }

    private static Map<String, Object> log(TripResult trip) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("file", trip.report().file().toString());
        map.put("form", trip.report().format().name().toLowerCase(Locale.ROOT));
        map.put("bytes", trip.report().bytes());
        map.put("rows", trip.report().rows());
        map.put("km", trip.summary().km());
        map.put("partial", trip.isPartial());
        map.put("speedFactor", trip.factor().factor());
        map.put("remarks", LogRemarks.of(trip));
        map.put(
                "signals",
                trip.report().signals().entrySet().stream()
                        .collect(Collectors.toMap(
                                e -> e.getKey().id(), e -> e.getValue().valid(), (a, b) -> a, LinkedHashMap::new)));
        return map;
    }
}
