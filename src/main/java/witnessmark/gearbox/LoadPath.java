package witnessmark.gearbox;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which pair of gears carries load in which main-box gear of a countershaft box with constant-mesh gears: in an indirect
 * gear the head pair (input gear and countershaft drive gear) and the pair of that gear; in direct no pair at all, the
 * countershafts turn unloaded; in reverse the head pair and the reverse pair with its idler. Textbook mechanics, from
 * memory.
 */
public final class LoadPath {
    /** How a gear is written. */
    public static final String WORDS = "a main-box gear from 1 to 9, R for reverse, direct, or head for the head pair";

    /** How the two gears of one rail are written. */
    public static final String RAIL_WORDS = "two neighbouring gears of one rail, such as 3-4 or R-1";

    private static final Pattern RAIL = Pattern.compile("([1-9r])\\s*[-/]\\s*([1-9r])");
    private static final Pattern LEVER = Pattern.compile("[1-9]");
    private static final String REVERSE = "R";
    private static final String DIRECT = "direct";
    private static final String HEAD = "head";

    private LoadPath() {}

    /** The gear as it is kept; empty if it is none. */
    public static Optional<String> parse(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        if (plain.equals("r") || plain.equals("reverse")) {
            return Optional.of(REVERSE);
        }
        return plain.equals(DIRECT)
                        || plain.equals(HEAD)
                        || LEVER.matcher(plain).matches()
                ? Optional.of(plain)
                : Optional.empty();
    }

    /** The two gears of one rail as they are kept, the lower first; empty if they are no neighbours. */
    public static Optional<String> parseRail(String text) {
        Matcher two = RAIL.matcher(text.strip().toLowerCase(Locale.ROOT));
        if (!two.matches()) {
            return Optional.empty();
        }
        int one = place(two.group(1));
        int other = place(two.group(2));
        return Math.abs(one - other) == 1
                ? Optional.of(name(Math.min(one, other)) + "-" + name(Math.max(one, other)))
                : Optional.empty();
    }

    /** Reverse lies beside first. */
    private static int place(String lever) {
        return lever.equals("r") ? 0 : Integer.parseInt(lever);
    }

    private static String name(int place) {
        return place == 0 ? REVERSE : String.valueOf(place);
    }

    /**
     * Whether a pair carries load while a gear is in.
     *
     * @param gear the main-box gear in, R or direct
     * @param pair the pair of a main-box gear, R or head
     * @throws IllegalArgumentException if either is no gear
     */
    public static boolean carries(String gear, String pair) {
        String in = parse(gear).orElseThrow(() -> new IllegalArgumentException("gear '" + gear + "': " + WORDS));
        String loaded = parse(pair).orElseThrow(() -> new IllegalArgumentException("pair '" + pair + "': " + WORDS));
        if (in.equals(DIRECT)) {
            return loaded.equals(DIRECT);
        }
        return loaded.equals(HEAD) || in.equals(HEAD) || loaded.equals(in);
    }
}
