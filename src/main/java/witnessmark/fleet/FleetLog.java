package witnessmark.fleet;

import java.util.Comparator;
import java.util.List;
import witnessmark.fleet.TruckDay.SourceLog;

/**
 * One log of the fleet, read.
 *
 * @param path from the fleet's folder on
 * @param asDay what it held, the record of one log
 * @param acts the acts that it shows, in order; empty where they are kept elsewhere
 */
public record FleetLog(String path, TruckDay asDay, List<FleetAct> acts) implements ReadOutcome {
    /** By truck and path: the order in which logs are pooled. */
    public static final Comparator<FleetLog> ORDER = Comparator.comparing(FleetLog::truck, FleetFile::compareNames)
            .thenComparing(FleetLog::path, FleetFile::compareNames);

    public FleetLog {
        acts = List.copyOf(acts);
        if (asDay.logs().size() != 1) {
            throw new IllegalArgumentException(
                    path + ": the record of " + asDay.logs().size() + " logs");
        }
    }

    public String truck() {
        return asDay.truck();
    }

    public String sha256() {
        return asDay.logs().get(0).sha256();
    }

    /** The same content found under another path; the truck is the one that the path tells of. */
    public FleetLog at(FleetFile file) {
        SourceLog named = new SourceLog(sha256(), file.name());
        return new FleetLog(
                file.path(),
                new TruckDay(
                        file.truck(),
                        asDay.day(),
                        asDay.profile(),
                        asDay.gearbox(),
                        asDay.acts(),
                        asDay.record(),
                        List.of(named),
                        asDay.remarks()),
                acts);
    }
}
