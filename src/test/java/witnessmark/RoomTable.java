package witnessmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The table of rooms in DEVELOPERS.md: a row {@code | `room` | what lives there | `room`, `room` |} for each. */
final class RoomTable {
    private static final Pattern ROW = Pattern.compile("\\| `([a-z.]+)` \\|.*\\|([^|]*)\\|");
    private static final Pattern NAME = Pattern.compile("`([a-z.]+)`");

    private RoomTable() {}

    /** Each room with the rooms that it may use. */
    static Map<String, Set<String>> read(Path page) {
        Map<String, Set<String>> table = new LinkedHashMap<>();
        try {
            for (String line : Files.readAllLines(page)) {
                Matcher row = ROW.matcher(line);
                if (row.matches()) {
                    Set<String> allowed = new TreeSet<>();
                    NAME.matcher(row.group(2)).results().forEach(m -> allowed.add(m.group(1)));
                    table.put(row.group(1), allowed);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return table;
    }

    /** The room that a package belongs to: the longest that is the package or lies above it; empty for none. */
    static String room(String packageName, Collection<String> rooms) {
        String inside = packageName.replaceFirst("^witnessmark\\.", "");
        String longest = "";
        for (String room : rooms) {
            boolean above = inside.equals(room) || inside.startsWith(room + ".");
            longest = above && room.length() > longest.length() ? room : longest;
        }
        return longest;
    }

    /** Whether a row allows the arrow; the start of the program, which is in no room, may use the shell and tells refusals. */
    static boolean allows(Map<String, Set<String>> table, String from, String to) {
        return from.isEmpty()
                ? to.equals("shell") || to.startsWith("shell.") || to.equals("refusal")
                : table.get(from).contains(to);
    }
}
