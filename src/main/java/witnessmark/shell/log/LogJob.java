package witnessmark.shell.log;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.TruckProfile;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.Refused;
import witnessmark.shell.truck.TruckText;
import witnessmark.shell.truck.Trucks;
import witnessmark.triplog.ReadTrips;
import witnessmark.triplog.TripTerms;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.gear.TabulateGears;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.ReadMapping;

/** Reads the logs that a command names, with the numbers of the truck that it names. */
@Component
public class LogJob {
    private final ObjectProvider<Trucks> trucks;

    LogJob(ObjectProvider<Trucks> trucks) {
        this.trucks = trucks;
    }

    /**
     * What to read.
     *
     * @param truck the profile the logs are read with, unless a truck of theirs has one of its own
     * @param places log files and folders
     * @param mapping file for the CSV logs; empty for none
     * @param load what is known of the load
     * @param hashes whether the files' hashes are wanted
     */
    public record Order(
            TruckProfile truck, List<String> places, GivenPath mapping, HabitLimits.Load load, Hashes hashes) {}

    /** Whether each file's SHA-256 is taken while it is read. */
    public enum Hashes {
        TAKEN,
        LEFT_OUT
    }

    /**
     * What was read.
     *
     * @param truck the profile named
     * @param results one for each truck of the logs, at least one
     * @param profiles the profile that each was read with, by the truck's name in the results
     * @param stopped whether Ctrl-C ended it early
     */
    public record Done(
            TruckProfile truck, List<TruckResult> results, Map<String, TruckProfile> profiles, boolean stopped) {

        /** All logs that could not be read, one line each. */
        List<String> failures() {
            return results.stream().flatMap(r -> r.failures().stream()).toList();
        }

        boolean nothingRead() {
            return results.stream().allMatch(r -> r.trips().isEmpty());
        }

        String title(TruckResult result) {
            return TruckText.title(profiles.getOrDefault(result.truck(), truck));
        }
    }

    /** The profile of a ready truck, a kept one or a file; throws {@link Refused} where there is none. */
    TruckProfile truck(String nameOrFile) {
        return trucks.getObject().find(nameOrFile);
    }

    /** Reads it all; throws {@link Refused} where not one log could be read. */
    public Done run(Order order) {
        TruckProfile named = order.truck();
        Optional<ColumnMapping> mapping = order.mapping().isEmpty()
                ? Optional.empty()
                : Optional.of(ReadMapping.from(order.mapping().path()));
        Map<String, TruckProfile> profiles = new LinkedHashMap<>();
        TripTerms terms = new TripTerms(
                name -> TabulateGears.of(profiles.computeIfAbsent(name, n -> profile(n, named))),
                HabitLimits.usual().with(order.load()),
                mapping,
                order.hashes() == Hashes.TAKEN);
        List<Path> places = order.places().stream().map(Path::of).toList();
        try (WatchReading watch = WatchReading.onTerminal()) {
            List<TruckResult> results = ReadTrips.read(places, named.id(), terms, watch);
            Done done = new Done(named, results, profiles, watch.isStopped());
            if (done.nothingRead()) {
                throw new Refused(String.join("\n", done.failures()));
            }
            return done;
        }
    }

    /** The profile kept under a unit's name, where it is not the one the logs were read with. */
    Optional<String> ownProfile(String unit, TruckProfile readWith) {
        String name =
                unit.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return !name.isEmpty()
                        && !name.equals(readWith.id())
                        && trucks.getObject().kept().holds(name)
                ? Optional.of(name)
                : Optional.empty();
    }

    /** A truck whose own profile is kept under the name its logs bear is read with that; all others with the one named. */
    private TruckProfile profile(String name, TruckProfile named) {
        return !name.equals(named.id()) && trucks.getObject().kept().holds(name)
                ? trucks.getObject().kept().read(name)
                : named;
    }
}
