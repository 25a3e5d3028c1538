package witnessmark.shell.print;

import java.io.Console;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;

/** What is known of the place the output goes to. */
public final class Terminal {

    private Terminal() {}

    /** Text from outside with control characters shown as '?', so that it cannot steer the terminal. */
    public static String harmless(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            boolean format = Character.getType(c) == Character.FORMAT && c != 0x200D;
            boolean control = Character.isISOControl(c) && c != '\n' && c != '\t';
            plain.appendCodePoint(control || format ? '?' : c);
        });
        return plain.toString();
    }

    /** Whether letters were replaced on the way, as those are that the locale does not know or that are no UTF-8. */
    public static boolean lostLetters(String text) {
        return text.indexOf('\uFFFD') >= 0;
    }

    /** Text from outside as it may stand in a message of one line. */
    public static String shortened(String text) {
        int longest = 200;
        return text.codePointCount(0, text.length()) <= longest
                ? text
                : text.substring(0, text.offsetByCodePoints(0, longest)) + " ...";
    }

    /** Whether somebody sits at a terminal and can be asked. */
    public static boolean canAsk() {
        Console console = System.console();
        return console != null && isTerminal(console);
    }

    /** Whether messages appear at the terminal of whoever is asked. */
    public static boolean showsMessages() {
        return canAsk() && isErrorShown();
    }

    /** Where the system says what standard error is, it must be a terminal; elsewhere it is taken for the one asked at. */
    private static boolean isErrorShown() {
        try {
            String place = Files.readSymbolicLink(Path.of("/proc/self/fd/2")).toString();
            return place.startsWith("/dev/pts/") || place.startsWith("/dev/tty") || place.equals("/dev/console");
        } catch (IOException | UnsupportedOperationException e) {
            return true;
        }
    }

    /** From Java 22 there is a console without a terminal too, and a method that tells them apart. */
    private static boolean isTerminal(Console console) {
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException before22) {
            return true;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether output may be coloured: a terminal, and nobody asked for none. */
    static boolean coloured() {
        return canAsk() && System.getenv("NO_COLOR") == null && !"dumb".equals(System.getenv("TERM"));
    }

    /** Columns as the environment says them; 0 where it does not. */
    public static int columns() {
        String columns = System.getenv("COLUMNS");
        return columns != null && columns.matches("\\d{1,4}") ? Integer.parseInt(columns) : 0;
    }

    public static void line(PrintWriter out, String text) {
        out.println(harmless(text));
    }
}
