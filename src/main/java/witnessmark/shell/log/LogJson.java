package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;
import witnessmark.shell.print.Json;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.event.Severity;
import witnessmark.triplog.summary.CountInterval;
import witnessmark.triplog.summary.LogVerdict;
import witnessmark.triplog.summary.TripSummary;

/** What logs came to, for a program. */
record LogJson(boolean partial, List<Truck> trucks, String caution) {
    static LogJson of(LogJob.Done done, WhichEvents which) {
        return new LogJson(
                done.stopped(),
                done.results().stream().map(r -> Truck.of(done, r, which)).toList(),
                LogText.NAMES_A_TRUCK);
    }

    /** @param events where all of them are asked for */
    record Truck(
            String truck,
            String profile,
            boolean partial,
            @Json.Inlined Summary summary,
            List<Event> worst,
            Optional<List<Event>> events,
            List<Log> logs,
            List<String> notRead) {
        static Truck of(LogJob.Done done, TruckResult truck, WhichEvents which) {
            return new Truck(
                    truck.truck(),
                    done.profiles().getOrDefault(truck.truck(), done.truck()).id(),
                    truck.isPartial(),
                    Summary.of(truck.summary()),
                    truck.worst().stream()
                            .map(s -> Event.of(s.trip(), s.event()))
                            .toList(),
                    which == WhichEvents.ALL ? Optional.of(all(truck)) : Optional.empty(),
                    truck.trips().stream().map(Log::of).toList(),
                    truck.failures());
        }

        private static List<Event> all(TruckResult truck) {
            return truck.trips().stream()
                    .flatMap(t -> t.events().stream().map(e -> Event.of(t, e)))
                    .toList();
        }
    }

    record Summary(
            double km,
            Optional<Double> odometerKm,
            double coveredHours,
            double movingHours,
            double engineHours,
            double highestKmh,
            double highestRpm,
            Number shifts,
            Number leverShifts,
            Number rangeShifts,
            double gearKnownShare,
            Map<String, Double> hoursInHand,
            List<OfKind> kinds) {
        static Summary of(TripSummary s) {
            return new Summary(
                    s.km(),
                    s.odometerKm(),
                    s.coveredHours(),
                    s.movingHours(),
                    s.engineHours(),
                    s.highestKmh(),
                    s.highestRpm(),
                    s.shifts(),
                    s.leverShifts(),
                    s.rangeShifts(),
                    s.gearKnownShare(),
                    s.hoursInHand(),
                    s.verdicts().stream().map(v -> OfKind.of(s, v)).toList());
        }
    }

    /** What the logs show of one kind of event; a rate with its interval where it could be seen. */
    record OfKind(
            String kind,
            LogVerdict.State state,
            Number count,
            double chances,
            String chanceOf,
            String reason,
            Optional<Double> per100km,
            Optional<Double> lower95,
            Optional<Double> upper95) {
        static OfKind of(TripSummary s, LogVerdict v) {
            Optional<CountInterval> rate = Optional.ofNullable(s.per100km().get(v.kind()));
            return new OfKind(
                    v.kind().id(),
                    v.state(),
                    v.count(),
                    v.chances(),
                    EnumWord.of(v.kind().chance()),
                    v.reason(),
                    rate.map(CountInterval::rate),
                    rate.map(CountInterval::lower),
                    rate.map(CountInterval::upper));
        }
    }

    record Event(
            String kind,
            String file,
            String start,
            double seconds,
            double roadKmh,
            double engineRpm,
            Optional<String> gearBefore,
            Optional<String> gearAfter,
            int act,
            Optional<String> follows,
            double severity,
            Severity grade,
            double confidence,
            long firstLine,
            long lastLine,
            Map<String, Double> figures,
            String sentence) {
        static Event of(TripResult trip, HabitEvent e) {
            return new Event(
                    e.kind().id(),
                    trip.report().file().toString(),
                    EventTable.moment(e.startMicros()),
                    e.seconds(),
                    e.roadKmh(),
                    e.engineRpm(),
                    e.gearBefore(),
                    e.gearAfter(),
                    e.act().number(),
                    e.act().follows().map(k -> k.id()),
                    e.severity(),
                    e.grade(),
                    e.confidence(),
                    e.firstLine(),
                    e.lastLine(),
                    e.figures().byName(),
                    e.sentence());
        }
    }

    record Log(
            String file,
            String form,
            long bytes,
            long rows,
            double km,
            boolean partial,
            double speedFactor,
            List<String> remarks,
            Map<String, Long> signals) {
        static Log of(TripResult trip) {
            return new Log(
                    trip.report().file().toString(),
                    EnumWord.of(trip.report().format()),
                    trip.report().bytes(),
                    trip.report().rows(),
                    trip.summary().km(),
                    trip.isPartial(),
                    trip.factor().factor(),
                    LogRemarks.of(trip),
                    trip.report().signals().entrySet().stream()
                            .collect(Collectors.toMap(
                                    e -> e.getKey().id(), e -> e.getValue().valid(), (a, b) -> a, LinkedHashMap::new)));
        }
    }
}
