package witnessmark.fleet;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Finds logs that lie under more than one truck: whose they are cannot be told, so they count for none. */
public final class OtherTrucks {
    private OtherTrucks() {}

    /** The contents, by SHA-256, that lie under more than one truck. */
    static Set<String> shared(Collection<FleetLog> logs) {
        Map<String, String> truckOf = new HashMap<>();
        Set<String> shared = new HashSet<>();
        for (FleetLog log : logs) {
            String other = truckOf.putIfAbsent(log.sha256(), log.truck());
            if (other != null && !other.equals(log.truck())) {
                shared.add(log.sha256());
            }
        }
        return shared;
    }

    /** A log whose content lies under another truck too. */
    public static UncountedLog setAside(FleetLog log) {
        return UncountedLog.of(log, "the same log lies under another truck too; whose it is cannot be told");
    }
}
