package witnessmark.triplog.read;

import java.time.ZoneId;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.signal.Signal;
import witnessmark.yaml.WriteYaml;

/**
 * Which column of a CSV log holds which signal, in which unit, and how numbers and times are written.
 *
 * @param separator between columns
 * @param decimal point or comma in numbers
 * @param headerLines lines before the first row; the one of them that holds the time's column names the columns
 * @param time where the time stands
 * @param columns where each signal stands
 */
public record ColumnMapping(char separator, char decimal, int headerLines, Time time, Map<Signal, Column> columns) {

    /**
     * @param column name of the column, or its number as {@code #1}
     * @param dateColumn a second column with the date, if date and time stand apart
     * @param form of the time: a unit or a pattern (see the mapping page)
     * @param dateForm pattern of the date column
     * @param zone of times written without one
     */
    public record Time(
            String column, String form, Optional<String> dateColumn, Optional<String> dateForm, ZoneId zone) {}

    /**
     * @param column name of the column, or its number as {@code #3}
     * @param unit in which the column is written; empty where the signal has none
     * @param factor by which the number is multiplied before the unit is applied
     * @param inverted whether a switch is written the other way round (0 for pressed)
     */
    public record Column(String column, Optional<Unit> unit, double factor, boolean inverted) {
        /** With a switch, if it is one, the usual way round. */
        static Column upright(String column, Optional<Unit> unit, double factor) {
            return new Column(column, unit, factor, false);
        }

        public static Column plain(String column) {
            return upright(column, Optional.empty(), 1);
        }

        public static Column in(String column, Unit unit) {
            return upright(column, Optional.of(unit), 1);
        }

        /** Multiplier and addend that turn the column's number into the signal's own unit. */
        double[] line(Signal signal) {
            if (inverted) {
                return new double[] {-factor, 1};
            }
            if (unit.isEmpty() || signal.unit().isEmpty()) {
                return new double[] {factor, 0};
            }
            Unit own = signal.unit().get();
            double zero = unit.get().convert(0, own);
            double slope = unit.get() == own ? 1 : unit.get().convert(1, own) - zero;
            return new double[] {factor * slope, zero};
        }
    }

    public ColumnMapping {
        columns = Collections.unmodifiableMap(columns.isEmpty() ? new EnumMap<>(Signal.class) : new EnumMap<>(columns));
    }

    /** The mapping as the YAML text that a person can read, change and give back. */
    public String toYaml() {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("separator", separator == '\t' ? "tab" : String.valueOf(separator));
        root.put("decimal", String.valueOf(decimal));
        root.put("header-lines", headerLines);
        Map<String, Object> clock = new LinkedHashMap<>();
        clock.put("column", time.column());
        clock.put("form", time.form());
        time.dateColumn().ifPresent(c -> clock.put("date-column", c));
        time.dateForm().ifPresent(f -> clock.put("date-form", f));
        clock.put("zone", time.zone().getId());
        root.put("time", clock);
        Map<String, Object> signals = new LinkedHashMap<>();
        columns.forEach((signal, column) -> signals.put(signal.id(), columnYaml(column)));
        root.put("columns", signals);
        return WriteYaml.block(root);
    }

    private static Map<String, Object> columnYaml(Column column) {
        Map<String, Object> yaml = new LinkedHashMap<>();
        yaml.put("column", column.column());
        column.unit().ifPresent(u -> yaml.put("unit", u.symbol()));
        if (column.factor() != 1) {
            yaml.put("factor", column.factor());
        }
        if (column.inverted()) {
            yaml.put("inverted", true);
        }
        return yaml;
    }
}
