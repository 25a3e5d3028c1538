package witnessmark.casefile.yaml;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.casefile.CheckedText;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.RowMarks;
import witnessmark.triplog.summary.TimeSpan;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads the counts of logs that a case keeps; empty, with the faults noted, if they cannot be taken. */
final class LogRecordReader {
    private static final double MOST_AMOUNT = 1e9;
    private static final int MOST_TALLIES = 200;
    private static final int MOST_SPANS = 30_000;
    private static final int MOST_DOUBTS = 50;
    private static final int MOST_MARKS = 100_000;
    private static final List<String> AMOUNTS =
            List.of("km", "covered-hours", "moving-hours", "telling-hours", "fitting-hours", "coast-km");
    private static final List<String> KEYS = keys();

    private LogRecordReader() {}

    private static List<String> keys() {
        List<String> keys = new ArrayList<>(AMOUNTS);
        keys.addAll(List.of("odometer-km", "times", "tallies", "doubts", "rows"));
        return List.copyOf(keys);
    }

    static Optional<LogRecord> record(YamlNode node) {
        YamlMap map = node.map("record", KEYS);
        Map<String, Double> amounts = new LinkedHashMap<>();
        for (String amount : AMOUNTS) {
            map.require(amount, "12.5").flatMap(v -> amount(amount, v)).ifPresent(v -> amounts.put(amount, v));
        }
        Optional<Odometer> odometer = map.get("odometer-km").flatMap(LogRecordReader::odometer);
        List<TimeSpan> spans = items(map, "times", MOST_SPANS).stream()
                .flatMap(n -> span(n).stream())
                .toList();
        Map<String, Tally> tallies = tallies(map);
        List<String> doubts = items(map, "doubts", MOST_DOUBTS).stream()
                .flatMap(n -> n.written("doubt").flatMap(d -> doubt(n, d)).stream())
                .toList();
        if (amounts.size() < AMOUNTS.size()) {
            return Optional.empty();
        }
        return Optional.of(new LogRecord(
                spans,
                odometer,
                amounts.get("km"),
                amounts.get("covered-hours"),
                amounts.get("moving-hours"),
                amounts.get("telling-hours"),
                amounts.get("fitting-hours"),
                amounts.get("coast-km"),
                tallies,
                doubts,
                marks(map)));
    }

    /** A record kept before rows had marks has none. */
    private static RowMarks marks(YamlMap map) {
        return map.get("rows")
                .flatMap(node -> Built.at(
                        node,
                        () -> new RowMarks(node.items("rows", MOST_MARKS).stream()
                                .flatMap(n -> n.written("mark").stream())
                                .toList())))
                .orElse(RowMarks.NONE);
    }

    private static Optional<String> doubt(YamlNode node, String text) {
        return Built.at(node, () -> CheckedText.filledLine("doubts", text));
    }

    private static List<YamlNode> items(YamlMap map, String key, int most) {
        return map.get(key).map(node -> node.items(key, most)).orElse(List.of());
    }

    private static Optional<Double> amount(String name, YamlNode node) {
        OptionalDouble given = node.number(name);
        if (given.isEmpty()) {
            return Optional.empty();
        }
        double value = given.getAsDouble();
        if (!(value >= 0)) {
            node.fault(name + ": '" + node.shown() + "' is below zero", "give a number of 0 or more");
            return Optional.empty();
        }
        if (value > MOST_AMOUNT) {
            node.fault(
                    name + ": '" + node.shown() + "' is more than any log holds", "bring it back as it was exported");
            return Optional.empty();
        }
        return Optional.of(value);
    }

    private static Optional<Odometer> odometer(YamlNode node) {
        List<Double> readings = node.items("odometer-km", 2).stream()
                .flatMap(n -> amount("odometer-km", n).stream())
                .toList();
        if (readings.size() != 2 || readings.get(0) > readings.get(1)) {
            node.fault("odometer-km: it is not two readings in order", "write it as [500000, 500412]");
            return Optional.empty();
        }
        return Optional.of(new Odometer(readings.get(0), readings.get(1)));
    }

    private static Optional<TimeSpan> span(YamlNode node) {
        YamlMap map = node.map("times", List.of("from", "to"));
        Optional<Instant> from = map.require("from", "\"2026-03-02T08:15:00Z\"").flatMap(LogRecordReader::instant);
        Optional<Instant> to = map.require("to", "\"2026-03-02T09:15:00Z\"").flatMap(LogRecordReader::instant);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        if (to.get().isBefore(from.get())) {
            node.fault("times: it ends before it begins", "exchange from and to");
            return Optional.empty();
        }
        return Optional.of(new TimeSpan(TimeSpan.micros(from.get()), TimeSpan.micros(to.get())));
    }

    private static Optional<Instant> instant(YamlNode node) {
        try {
            return node.written("time").map(Instant::parse).filter(t -> inMicros(node, t));
        } catch (DateTimeParseException e) {
            node.fault("times: '" + node.shown() + "' is not a time", "write it as \"2026-03-02T08:15:00Z\"");
            return Optional.empty();
        }
    }

    private static boolean inMicros(YamlNode node, Instant time) {
        try {
            TimeSpan.micros(time);
            return true;
        } catch (ArithmeticException e) {
            node.fault("times: '" + node.shown() + "' is too far off", "write it as \"2026-03-02T08:15:00Z\"");
            return false;
        }
    }

    private static Map<String, Tally> tallies(YamlMap map) {
        Map<String, Tally> tallies = new LinkedHashMap<>();
        map.get("tallies").ifPresent(node -> node.named("tally", MOST_TALLIES, value -> "")
                .entries()
                .forEach(e -> tally(e.value()).ifPresent(t -> tallies.put(e.name(), t))));
        return tallies;
    }

    private static Optional<Tally> tally(YamlNode node) {
        YamlMap map = node.map("tally", List.of("count", "weight", "chances", "open"));
        Optional<Double> count = map.require("count", "3").flatMap(v -> amount("count", v));
        Optional<Double> weight = map.require("weight", "2.85").flatMap(v -> amount("weight", v));
        Optional<Double> chances = map.require("chances", "6").flatMap(v -> amount("chances", v));
        // A record kept before open events were has none, and weighs as it did.
        double open = map.get("open").flatMap(v -> amount("open", v)).orElse(0.0);
        return count.flatMap(n -> weight.flatMap(w -> chances.map(c -> new Tally(n.longValue(), w, c, (long) open))));
    }
}
