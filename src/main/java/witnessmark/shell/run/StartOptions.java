package witnessmark.shell.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.shell.print.WrongUsage;

/**
 * The options that hold for a whole run, wherever on the line they stand, split from the command's own words.
 *
 * @param properties Spring properties they set
 * @param words the command's own words, as typed
 */
public record StartOptions(Map<String, Object> properties, List<String> words) {
    private static final Map<String, String> WITH_VALUE = Map.of(
            "--store", "witnessmark.store",
            "--database", "witnessmark.database",
            "--knowledge", "witnessmark.knowledge",
            "--who", "witnessmark.who",
            "--role", "witnessmark.role",
            "--units", "witnessmark.units");
    private static final Map<String, String> FLAGS = Map.of("--lines", "witnessmark.lines");

    /** Splits the arguments; throws {@link WrongUsage} where a value is missing. */
    public static StartOptions of(String... args) {
        Map<String, Object> properties = new HashMap<>();
        List<String> words = new ArrayList<>();
        for (int i = 0; i < args.length; i++) {
            String name = args[i].contains("=") ? args[i].substring(0, args[i].indexOf('=')) : args[i];
            if (FLAGS.containsKey(args[i])) {
                properties.put(FLAGS.get(args[i]), "true");
            } else if (!WITH_VALUE.containsKey(name)) {
                words.add(args[i]);
            } else if (!name.equals(args[i])) {
                properties.put(WITH_VALUE.get(name), args[i].substring(name.length() + 1));
            } else if (i + 1 < args.length) {
                properties.put(WITH_VALUE.get(name), args[++i]);
            } else {
                throw new WrongUsage(name + " needs a value: " + name + " VALUE");
            }
        }
        return new StartOptions(properties, List.copyOf(words));
    }
}
