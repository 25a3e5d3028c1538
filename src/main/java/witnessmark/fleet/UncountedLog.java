package witnessmark.fleet;

import java.util.Comparator;
import java.util.List;

/** A log that counts nowhere, and why; one line. */
public record UncountedLog(String truck, String path, String reason) implements ReadOutcome {
    static final Comparator<UncountedLog> ORDER = Comparator.comparing(UncountedLog::truck, FleetFile::compareNames)
            .thenComparing(UncountedLog::path, FleetFile::compareNames);

    static UncountedLog of(FleetFile file, String reason) {
        return new UncountedLog(file.truck(), file.path(), reason);
    }

    static UncountedLog of(FleetLog log, String reason) {
        return new UncountedLog(log.truck(), log.path(), reason);
    }

    /** A truck's folder that cannot be looked into, so that it is not known what logs it holds. */
    public static UncountedLog folder(String name, String why) {
        FleetFile folder = new FleetFile(name + "/", 0, 0);
        return of(
                folder,
                "this folder cannot be listed (" + why.replaceAll("\\s+", " ").strip() + ")");
    }

    /** Its row in {@link FleetTable#NOT_COUNTED}. */
    public List<Object> cells() {
        return List.of(truck, path, reason);
    }
}
