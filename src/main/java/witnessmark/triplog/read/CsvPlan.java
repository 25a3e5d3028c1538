package witnessmark.triplog.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import witnessmark.triplog.signal.Signal;

/** A mapping resolved against the header of one file: what to do with each column, by position. */
final class CsvPlan {
    static final int SKIP = -1;
    static final int TIME = -2;
    static final int DATE = -3;

    final ColumnMapping mapping;
    /** One entry per column up to the last that matters: a signal's ordinal, or one of the constants above. */
    final int[] actions;
    /** For each signal four numbers: multiplier, addend, lowest and highest value that a vehicle can have. */
    final double[] scales = new double[4 * Signal.count()];

    final TimeForm timeForm;
    final Optional<TimeForm> dateForm;

    private CsvPlan(ColumnMapping mapping, int[] actions, TimeForm timeForm, Optional<TimeForm> dateForm) {
        this.mapping = mapping;
        this.actions = actions;
        this.timeForm = timeForm;
        this.dateForm = dateForm;
        mapping.columns().forEach((signal, column) -> {
            double[] line = column.line(signal);
            int at = 4 * signal.ordinal();
            scales[at] = line[0];
            scales[at + 1] = line[1];
            scales[at + 2] = signal.lowest();
            scales[at + 3] = signal.highest();
        });
    }

    /** @throws UnreadableLog if the header lacks a column of the mapping; every missing one is named */
    static CsvPlan of(String file, ColumnMapping mapping, List<String> header) {
        List<String> faults = new ArrayList<>();
        int[] actions = new int[Math.max(header.size(), 1024)];
        Arrays.fill(actions, SKIP);
        ColumnMapping.Time time = mapping.time();
        place(actions, TIME, "time", time.column(), header, file, faults);
        time.dateColumn().ifPresent(c -> place(actions, DATE, "time.date-column", c, header, file, faults));
        mapping.columns()
                .forEach((signal, column) -> place(
                        actions, signal.ordinal(), "columns." + signal.id(), column.column(), header, file, faults));
        if (!faults.isEmpty()) {
            throw new UnreadableLog(faults);
        }
        int last = actions.length;
        while (actions[last - 1] == SKIP) {
            last--;
        }
        TimeForm timeForm = TimeForm.of(time.form(), time.zone())
                .orElseThrow(() -> new UnreadableLog(
                        file + ": time.form: '" + time.form() + "' is not a time form",
                        "write it as yyyy-MM-dd HH:mm:ss"));
        Optional<TimeForm> dateForm = time.dateForm().flatMap(f -> TimeForm.of(f, time.zone()));
        return new CsvPlan(mapping, Arrays.copyOf(actions, last), timeForm, dateForm);
    }

    private static void place(
            int[] actions,
            int action,
            String where,
            String column,
            List<String> header,
            String file,
            List<String> faults) {
        int at = position(column, header);
        if (at < 0 || at >= actions.length) {
            faults.add(file + ": " + where + ": no column '" + column + "' in the header; it has "
                    + String.join(", ", header.stream().limit(40).toList()));
        } else if (actions[at] != SKIP) {
            faults.add(file + ": " + where + ": column '" + column + "' is already used for another signal");
        } else {
            actions[at] = action;
        }
    }

    private static int position(String column, List<String> header) {
        if (column.matches("#\\d{1,4}")) {
            return Integer.parseInt(column.substring(1)) - 1;
        }
        for (int i = 0; i < header.size(); i++) {
            if (header.get(i).equalsIgnoreCase(column.strip())) {
                return i;
            }
        }
        return -1;
    }
}
