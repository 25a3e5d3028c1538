package witnessmark.shell.log;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.gearbox.Unit;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.PeekLog.Peek;
import witnessmark.triplog.signal.Signal;

/** How the beginning of a log is understood, for a person to confirm. */
final class LogLookText {
    private final Page page;

    LogLookText(Page page) {
        this.page = page;
    }

    void print(Peek peek) {
        page.line(peek.head().file() + (peek.head().compressed() ? ", gzip" : ""));
        peek.mapping().ifPresentOrElse(m -> csv(peek, m), () -> candump(peek));
        if (!peek.report().broken().isEmpty()) {
            page.heading("Lines that cannot be used, in the beginning that was looked at");
            peek.report().broken().forEach(b -> page.item(b.sentence()));
        }
    }

    private void csv(Peek peek, ColumnMapping mapping) {
        page.line(String.format(
                Locale.ROOT,
                "CSV, columns parted by %s, decimal %s, %d header %s",
                separator(mapping.separator()),
                mapping.decimal() == ',' ? "comma" : "point",
                mapping.headerLines(),
                mapping.headerLines() == 1 ? "line" : "lines"));
        page.heading(
                peek.guessed() ? "Columns, guessed from the header: please confirm" : "Columns, by the mapping given");
        page.drawn(row("what", "column", "written in", "first rows as written"));
        page.drawn(row(
                "time",
                mapping.time().column(),
                form(mapping),
                values(peek, mapping.time().column())));
        mapping.time()
                .dateColumn()
                .ifPresent(date ->
                        page.drawn(row("date", date, mapping.time().dateForm().orElse(""), values(peek, date))));
        mapping.columns()
                .forEach((signal, column) -> page.drawn(
                        row(signal.words(), column.column(), unit(signal, column), values(peek, column.column()))));
        asRead(peek);
        if (!peek.unused().isEmpty()) {
            page.heading("Columns not used");
            page.indented(
                    "  ",
                    "  ",
                    peek.unused().stream()
                            .map(c -> peek.couldBe().containsKey(c)
                                    ? c + " (could be " + peek.couldBe().get(c).words() + ")"
                                    : c)
                            .collect(Collectors.joining(", ")));
        }
        if (peek.report().newestFirst()) {
            page.line("The newest row comes first: the log is read from its end.");
        }
        if (!peek.notes().isEmpty()) {
            page.heading("Look at these");
            page.items(peek.notes());
        }
        page.blank();
        page.line(
                peek.guessed()
                        ? "If a line is wrong: log look FILE --save-mapping MAPPING.yaml, put it right there, and give it with"
                                + " --mapping MAPPING.yaml; named mapping.yaml, it holds for the logs in its folder."
                        : "This mapping fits the file.");
    }

    private void asRead(Peek peek) {
        page.heading("First row as it is read");
        Map<Signal, Double> first =
                peek.read().isEmpty() ? Map.of() : peek.read().get(0);
        if (first.isEmpty()) {
            page.line("  No value could be read from the first row.");
            return;
        }
        page.indented(
                "  ",
                "  ",
                first.entrySet().stream()
                        .map(e -> said(e.getKey(), e.getValue()))
                        .collect(Collectors.joining("; ")));
    }

    private static String said(Signal signal, double value) {
        return signal.words() + " " + rounded(value)
                + signal.unit().map(u -> " " + u.symbol()).orElse("");
    }

    /** To a hundredth: what units or the steps of a bus leave behind it says nothing. */
    private static String rounded(double value) {
        return ScreenFigures.plain(Math.rint(value * 100) / 100);
    }

    private void candump(Peek peek) {
        page.line("candump text, SAE J1939 frames; it needs no mapping");
        page.heading("Signals found in the beginning");
        if (peek.report().signals().isEmpty()) {
            page.line(
                    "  None: no frame of the groups that are read (engine speed and torque, pedals, shaft speeds, gear,"
                            + " road speed, distance, oil temperatures).");
            return;
        }
        page.drawn(row("what", "values", "unit", "first rows as read"));
        peek.report()
                .signals()
                .forEach((signal, counts) -> page.drawn(row(
                        signal.words(),
                        String.valueOf(counts.valid()),
                        signal.unit().map(Unit::symbol).orElse(signal.highest() > 1 ? "number" : "1 is on"),
                        peek.read().stream()
                                        .map(r -> r.containsKey(signal) ? rounded(r.get(signal)) : "-")
                                        .collect(Collectors.joining("  "))
                                + (counts.valid() == 0 ? "  never valid" : ""))));
    }

    private static String row(String what, String column, String unit, String values) {
        return String.format(
                        Locale.ROOT, "  %-18s %-20s %-13s %s", what, cut(column, 20), cut(unit, 13), cut(values, 24))
                .stripTrailing();
    }

    private static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most - 2) + "..";
    }

    private static String values(Peek peek, String column) {
        List<String> values = peek.written().stream()
                .map(row -> row.entrySet().stream()
                        .filter(e -> e.getKey().equalsIgnoreCase(column))
                        .map(Map.Entry::getValue)
                        .findFirst()
                        .orElse("-"))
                .toList();
        return String.join("  ", values);
    }

    private static String form(ColumnMapping mapping) {
        return mapping.time().form();
    }

    private static String unit(Signal signal, ColumnMapping.Column column) {
        String without = signal.highest() > 1 ? "number" : column.inverted() ? "0 is on" : "1 is on";
        String unit = column.unit().map(Unit::symbol).orElse(without);
        return column.factor() == 1 ? unit : ScreenFigures.plain(column.factor()) + " x " + unit;
    }

    private static String separator(char separator) {
        return switch (separator) {
            case ',' -> "commas";
            case ';' -> "semicolons";
            case '\t' -> "tabs";
            case ' ' -> "blanks";
            default -> "'" + separator + "'";
        };
    }
}
