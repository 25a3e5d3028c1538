package witnessmark.triplog.read;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

/** Reads the beginning of a log so that a person can check how it is understood before it counts. */
public final class PeekLog {
    private static final int ROWS = 3;

    private PeekLog() {}

    /**
     * The beginning of a log.
     *
     * @param head form of the file
     * @param mapping of the columns; empty for a candump log, which needs none
     * @param guessed whether the mapping was guessed
     * @param notes what a person should look at in a guessed mapping
     * @param unused columns that no signal is read from
     * @param written the first rows by column name, as they stand in the file; empty for a candump log
     * @param read the first rows as they are read, in the signals' own units; signals not given are left out
     * @param report on the beginning that was read
     * @param couldBe unused columns with the signal that each could be
     */
    public record Peek(
            LogHead head,
            Optional<ColumnMapping> mapping,
            boolean guessed,
            List<String> notes,
            List<String> unused,
            List<Map<String, String>> written,
            List<Map<Signal, Double>> read,
            ReadReport report,
            Map<String, Signal> couldBe) {}

    /**
     * @param given a mapping to try; empty to guess one
     * @throws UnreadableLog if the file is no log, or the mapping does not fit it
     */
    public static Peek at(Path file, Optional<ColumnMapping> given) {
        LogHead head = LogHead.of(file);
        if (head.format() == LogFormat.CANDUMP) {
            return peek(head, Optional.empty(), false, List.of(), Map.of());
        }
        if (given.isPresent()) {
            return peek(head, given, false, List.of(), Map.of());
        }
        GuessMapping.Guess guess = head.guess();
        return peek(head, Optional.of(guess.mapping()), true, guess.notes(), guess.couldBe());
    }

    private static Peek peek(
            LogHead head,
            Optional<ColumnMapping> mapping,
            boolean guessed,
            List<String> notes,
            Map<String, Signal> couldBe) {
        List<Map<Signal, Double>> rows = new ArrayList<>();
        AtomicInteger fills = new AtomicInteger();
        ReadReport report =
                ReadLog.asWritten(head, mapping, (done, total) -> fills.incrementAndGet() <= 1, row -> keep(row, rows));
        List<Map<String, String>> written = mapping.map(m -> written(head, m)).orElse(List.of());
        List<String> unused = mapping.map(m -> unused(head, m)).orElse(List.of());
        return new Peek(head, mapping, guessed, notes, unused, written, List.copyOf(rows), report, couldBe);
    }

    private static void keep(SignalRow row, List<Map<Signal, Double>> rows) {
        if (rows.size() < ROWS) {
            Map<Signal, Double> values = new EnumMap<>(Signal.class);
            for (Signal signal : Signal.values()) {
                if (!Double.isNaN(row.get(signal))) {
                    values.put(signal, row.get(signal));
                }
            }
            rows.add(values);
        }
    }

    private static List<Map<String, String>> written(LogHead head, ColumnMapping mapping) {
        String rowsAlone = head.text().lines().skip(mapping.headerLines()).collect(Collectors.joining("\n"));
        List<List<String>> records = GuessMapping.records(rowsAlone, mapping.separator());
        List<String> header = head.columnNames(mapping);
        List<Map<String, String>> rows = new ArrayList<>();
        for (List<String> fields : records.stream().limit(ROWS).toList()) {
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < fields.size(); i++) {
                row.put(i < header.size() ? header.get(i) : "#" + (i + 1), fields.get(i));
                row.put("#" + (i + 1), fields.get(i));
            }
            rows.add(row);
        }
        return rows;
    }

    private static List<String> unused(LogHead head, ColumnMapping mapping) {
        Set<String> used = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        mapping.columns().values().forEach(c -> used.add(c.column()));
        used.add(mapping.time().column());
        mapping.time().dateColumn().ifPresent(used::add);
        List<String> header = head.columnNames(mapping);
        List<String> unused = new ArrayList<>();
        for (int i = 0; i < header.size(); i++) {
            if (!used.contains(header.get(i)) && !used.contains("#" + (i + 1))) {
                unused.add(header.get(i));
            }
        }
        return unused;
    }
}
