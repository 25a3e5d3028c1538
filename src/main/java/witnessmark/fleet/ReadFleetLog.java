package witnessmark.fleet;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.fleet.TruckDay.SourceLog;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.TruckProfile;
import witnessmark.triplog.ReadTrip;
import witnessmark.triplog.TripRequest;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.TabulateGears;
import witnessmark.triplog.read.BrokenLines;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.LogBytes;
import witnessmark.triplog.read.Progress;
import witnessmark.triplog.read.ReadMapping;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.summary.TimeSpan;
import witnessmark.truck.TruckYaml;
import witnessmark.yaml.FaultyInput;

/**
 * Reads logs of a fleet one by one, each as a stream and in memory that does not grow with it. What is wrong with one
 * log, its mapping or its truck's profile is the reason why it does not count, and stops no other. Not for several
 * threads at once.
 */
public final class ReadFleetLog {
    private final FleetTerms terms;
    private final Map<String, Truck> trucks = new HashMap<>();

    public ReadFleetLog(FleetTerms terms) {
        this.terms = terms;
    }

    /** A truck's numbers, parsed once. */
    private record Truck(String id, Layout gearbox, GearTable table) {}

    /** What the log holds, or why it does not count. */
    public ReadOutcome read(FleetFile file, LogBytes bytes, Progress progress) {
        try {
            Path name = file.place();
            Truck truck = truck(file.truck());
            Optional<ColumnMapping> mapping = terms.mapping(file)
                    .map(text -> ReadMapping.from(FleetFile.MAPPING_FILE, text.orRefused("its mapping file")));
            TripRequest request = new TripRequest(
                    name, truck.table, HabitLimits.usual().with(terms.load()), mapping, true, Optional.empty());
            return taken(file, truck, ReadTrip.read(request, bytes, progress));
        } catch (UnreadableLog e) {
            return UncountedLog.of(file, reason(file, String.join("; ", e.faults())));
        } catch (FaultyInput e) {
            return UncountedLog.of(file, reason(file, e.getMessage()));
        } catch (RuntimeException e) {
            // One log must not stop a fleet's; what is told here is a fault to be mended.
            return UncountedLog.of(file, oneLine("fault inside the program: " + e));
        }
    }

    private Truck truck(String name) {
        String yaml = terms.profile(name)
                .orElseThrow(() -> new UnreadableLog("no profile for this truck: keep one named '" + name
                        + "' beside the others, or give one for all trucks"))
                .orRefused("its truck's profile");
        return trucks.computeIfAbsent(yaml, y -> {
            TruckProfile profile = profile(name, y);
            return new Truck(profile.id(), profile.layout(), TabulateGears.of(profile));
        });
    }

    private static TruckProfile profile(String name, String yaml) {
        try {
            return TruckYaml.read(name + ".yaml", yaml);
        } catch (FaultyInput e) {
            throw new UnreadableLog("its truck's profile is refused: " + e.getMessage());
        }
    }

    private static ReadOutcome taken(FleetFile file, Truck truck, TripResult trip) {
        if (trip.isPartial()) {
            return UncountedLog.of(file, "the reading was stopped before its end");
        }
        if (!trip.mappingNotes().isEmpty()) {
            return UncountedLog.of(
                    file,
                    oneLine("the columns are guessed, and one is in doubt: " + String.join("; ", trip.mappingNotes())
                            + "; have the mapping written with log look FILE --save-mapping, check it, and put it beside"
                            + " the log as " + FleetFile.MAPPING_FILE));
        }
        LogRecord record = trip.record().with(trip.doubts(file.name()));
        List<FleetAct> acts = FleetAct.of(trip.events());
        TruckDay asDay = new TruckDay(
                file.truck(),
                day(record),
                truck.id,
                truck.gearbox,
                acts.size(),
                record,
                List.of(new SourceLog(trip.report().sha256().orElseThrow(), file.name())),
                remarks(file, trip));
        return new FleetLog(file.path(), asDay, acts);
    }

    private static String day(LogRecord record) {
        return record.spans().stream()
                .findFirst()
                .filter(TimeSpan::isDated)
                .map(span -> span.from().toString().substring(0, 10))
                .orElse(TruckDay.UNDATED);
    }

    private static List<String> remarks(FleetFile file, TripResult trip) {
        List<String> remarks = new ArrayList<>();
        trip.report().broken().stream()
                .map(BrokenLines.Tally::sentence)
                .map(s -> file.name() + ": " + s)
                .forEach(remarks::add);
        if (trip.eventsLeftOut() > 0) {
            remarks.add(file.name() + ": " + trip.eventsLeftOut() + " events are counted but not listed");
        }
        return remarks;
    }

    /** Without the name that the table gives in a column of its own, and on one line. */
    private static String reason(FleetFile file, String message) {
        String said = message.startsWith(file.name() + ": ")
                ? message.substring(file.name().length() + 2)
                : message;
        return oneLine(said);
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }
}
