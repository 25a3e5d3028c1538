package witnessmark.shell.print;

import java.io.PrintWriter;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import witnessmark.gearbox.Units;

/** Where the answer of a command goes, and what is known of that place: its columns and the units read there. */
public final class Screen extends PrintWriter {
    private static final int USUAL = 80;
    private static final int NARROWEST = 50;
    private static final int WIDEST = 200;

    private final IntSupplier columns;
    private final Supplier<Units> units;

    /**
     * @param columns columns of the terminal, asked at each page, since a window can be drawn wider; 0 where not known
     */
    public Screen(PrintWriter out, IntSupplier columns, Supplier<Units> units) {
        super(out);
        this.columns = columns;
        this.units = units;
    }

    /** Columns to write in at {@code out}. */
    static int width(PrintWriter out) {
        int columns = out instanceof Screen screen ? screen.columns.getAsInt() : 0;
        return within(columns);
    }

    /** Columns to write in where the terminal says so many; 0 where it does not say. */
    public static int within(int columns) {
        return columns <= 0 ? USUAL : Math.max(NARROWEST, Math.min(WIDEST, columns));
    }

    static Units units(PrintWriter out) {
        return out instanceof Screen screen ? screen.units.get() : Units.BOTH;
    }
}
