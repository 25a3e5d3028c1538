package witnessmark.fleet.spark;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.event.HabitLimits;

/**
 * What a job is to read, and where its tables go; places are folders or URIs that Hadoop knows.
 *
 * @param logs folder of the fleet's logs
 * @param out folder of the tables
 * @param truck a ready example, or the place of a profile, for the trucks that have none of their own
 * @param profiles folder of the trucks' own profiles, {@code NAME.yaml} for the truck of that name
 * @param mapping place of one mapping for all CSV logs
 * @param load what is known of the load
 * @param takeOver whether the mark of a job that died is to be passed over
 */
public record FleetOptions(
        String logs,
        String out,
        Optional<String> truck,
        Optional<String> profiles,
        Optional<String> mapping,
        HabitLimits.Load load,
        boolean takeOver) {
    static final String USAGE = "--logs PLACE --out PLACE [--truck NAME|PLACE.yaml] [--profiles PLACE]"
            + " [--mapping PLACE.yaml] [--load empty|loaded] [--take-over]";
    private static final List<String> KNOWN = List.of("logs", "out", "truck", "profiles", "mapping", "load");

    /** @throws Refused with the option and the mend */
    static FleetOptions of(String[] words) {
        Map<String, String> given = new HashMap<>();
        boolean takeOver = false;
        for (int i = 0; i < words.length; i++) {
            String name = words[i].replaceFirst("^--", "");
            if (words[i].equals("--take-over")) {
                takeOver = true;
            } else if (!words[i].startsWith("--") || !KNOWN.contains(name) || i + 1 == words.length) {
                throw new Refused("'" + words[i] + "' is not known or lacks its value; " + USAGE);
            } else if (given.put(name, words[++i]) != null) {
                throw new Refused(words[i - 1] + " is given twice");
            }
        }
        if (!given.containsKey("logs") || !given.containsKey("out")) {
            throw new Refused("name the logs and where the tables go: " + USAGE);
        }
        return new FleetOptions(
                given.get("logs"),
                given.get("out"),
                Optional.ofNullable(given.get("truck")),
                Optional.ofNullable(given.get("profiles")),
                Optional.ofNullable(given.get("mapping")),
                load(given.getOrDefault("load", "unknown")),
                takeOver);
    }

    private static HabitLimits.Load load(String word) {
        return Arrays.stream(HabitLimits.Load.values())
                .filter(l -> l.name().toLowerCase(Locale.ROOT).equals(word))
                .findFirst()
                .orElseThrow(() -> new Refused("--load '" + word + "' is not known; empty or loaded"));
    }
}
