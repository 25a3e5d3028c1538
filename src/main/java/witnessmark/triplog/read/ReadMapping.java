package witnessmark.triplog.read;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.signal.Signal;
import witnessmark.yaml.Faults;
import witnessmark.yaml.FaultyInput;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;
import witnessmark.yaml.YamlReader;

/** Reads a mapping file and names every fault in it at once, each with its place. */
public final class ReadMapping {
    private static final YamlReader YAML = new YamlReader(64 * 1024);
    private static final List<String> KEYS = List.of("separator", "decimal", "header-lines", "time", "columns");
    private static final List<String> TIME_KEYS = List.of("column", "form", "date-column", "date-form", "zone");
    private static final List<String> COLUMN_KEYS = List.of("column", "unit", "factor", "inverted");
    private static final List<String> SIGNALS =
            Arrays.stream(Signal.values()).map(Signal::id).toList();
    private static final String SEPARATORS = ",;|: ";
    private static final int MOST_HEADER_LINES = 1000;

    private ReadMapping() {}

    /**
     * The mapping in a file; throws as {@link #from(String, String)} does.
     *
     * @throws UnreadableLog if there is no such file
     */
    public static ColumnMapping from(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new UnreadableLog(
                    file + ": no such mapping file", "have one written with: log look LOG --save-mapping FILE.yaml");
        }
        Faults faults = new Faults();
        return mapping(YAML.read(file, faults), faults);
    }

    /**
     * @param label name of the file, for messages
     * @throws FaultyInput with every fault
     */
    public static ColumnMapping from(String label, String yaml) {
        Faults faults = new Faults();
        return mapping(YAML.read(label, yaml.getBytes(StandardCharsets.UTF_8), faults), faults);
    }

    private static ColumnMapping mapping(Optional<YamlNode> root, Faults faults) {
        Optional<ColumnMapping> read = root.map(r -> mapping(r.map("a mapping file", KEYS)));
        faults.throwIfAny();
        return read.orElseThrow();
    }

    private static ColumnMapping mapping(YamlMap root) {
        return new ColumnMapping(
                root.get("separator").map(ReadMapping::separator).orElse(','),
                root.get("decimal").flatMap(ReadMapping::decimal).orElse('.'),
                root.get("header-lines").map(ReadMapping::headerLines).orElse(1),
                time(root),
                columns(root));
    }

    /** Not stripped, since a tab or a blank is one too. */
    private static char separator(YamlNode node) {
        String text = node.written("separator").orElse(",");
        if (text.equals("tab") || text.equals("\t")) {
            return '\t';
        }
        if (text.length() == 1 && SEPARATORS.contains(text)) {
            return text.charAt(0);
        }
        node.fault("separator: '" + node.shown() + "' is no separator of columns", "use one of , ; | : tab or ' '");
        return ',';
    }

    private static Optional<Character> decimal(YamlNode node) {
        return node.one(
                "decimal",
                text -> text.equals(".") || text.equals(",") ? Optional.of(text.charAt(0)) : Optional.empty(),
                "a sign between whole and decimals",
                "'.' or ','");
    }

    private static int headerLines(YamlNode node) {
        OptionalDouble lines = node.number("header-lines");
        if (lines.isPresent()
                && (lines.getAsDouble() != Math.rint(lines.getAsDouble())
                        || lines.getAsDouble() < 0
                        || lines.getAsDouble() > MOST_HEADER_LINES)) {
            node.fault(
                    "header-lines: '" + node.shown() + "' lines cannot stand before the first row",
                    "give a whole number from 0 to " + MOST_HEADER_LINES);
        }
        return (int) lines.orElse(1);
    }

    private static ColumnMapping.Time time(YamlMap root) {
        YamlMap yaml = root.require("time", "{ column: NAME }")
                .map(node -> node.map("time", TIME_KEYS))
                .orElse(root);
        if (yaml == root) {
            return new ColumnMapping.Time("", "seconds", Optional.empty(), Optional.empty(), ZoneOffset.UTC);
        }
        ZoneId zone = yaml.get("zone").map(ReadMapping::zone).orElse(ZoneOffset.UTC);
        Optional<String> dateColumn = yaml.get("date-column").flatMap(node -> node.written("time.date-column"));
        Optional<String> dateForm = yaml.get("date-form").flatMap(node -> form("time.date-form", node, zone));
        if (yaml.has("date-column") != yaml.has("date-form")) {
            yaml.owner().fault("time: date-column and date-form belong together", "give both or none");
        }
        return new ColumnMapping.Time(
                column("time", yaml, "#1"),
                yaml.get("form").flatMap(node -> form("time.form", node, zone)).orElse("seconds"),
                dateColumn,
                dateForm,
                zone);
    }

    private static Optional<String> form(String key, YamlNode node, ZoneId zone) {
        Optional<String> form = node.written(key);
        if (form.isPresent() && TimeForm.of(form.get(), zone).isEmpty()) {
            node.fault(
                    key + ": '" + node.shown() + "' is no form of a time",
                    "use seconds, milliseconds, microseconds, minutes, hours, days"
                            + " or a pattern such as yyyy-MM-dd HH:mm:ss");
        }
        return form;
    }

    private static ZoneId zone(YamlNode node) {
        try {
            return ZoneId.of(node.text("time.zone").orElse("UTC")).normalized();
        } catch (DateTimeException e) {
            node.fault(
                    "time.zone: '" + node.shown() + "' is not a time zone", "use UTC, +01:00 or America/Chicago, say");
            return ZoneOffset.UTC;
        }
    }

    private static Map<Signal, ColumnMapping.Column> columns(YamlMap root) {
        Map<Signal, ColumnMapping.Column> columns = new EnumMap<>(Signal.class);
        root.require("columns", "{ engine-speed: NAME }").ifPresent(node -> {
            YamlMap yaml = node.map("columns", SIGNALS);
            yaml.entries().forEach(entry -> Signal.named(entry.name())
                    .ifPresent(signal -> columns.put(signal, column(signal, entry.value()))));
        });
        return columns;
    }

    private static ColumnMapping.Column column(Signal signal, YamlNode node) {
        String where = "columns." + signal.id();
        if (node.isText()) {
            return ColumnMapping.Column.upright(node.written(where).orElse(""), signal.unit(), 1);
        }
        YamlMap yaml = node.map(where, COLUMN_KEYS);
        OptionalDouble factor = yaml.numberIfGiven("factor");
        if (factor.isPresent() && factor.getAsDouble() == 0) {
            yaml.get("factor").ifPresent(zero -> zero.fault(where + ".factor: it is 0", "give any other number"));
        }
        return new ColumnMapping.Column(
                column(where, yaml, "#3"),
                yaml.get("unit").map(unit -> unit(where, signal, unit)).orElse(signal.unit()),
                factor.orElse(1),
                yaml.flagOr("inverted", false));
    }

    /** The column's name; a number with a sign is its place in the row. */
    private static String column(String where, YamlMap yaml, String number) {
        if (!yaml.has("column")) {
            yaml.owner().fault(where + ".column: missing", "name the column, or give its number as " + number);
        }
        return yaml.written("column");
    }

    private static Optional<Unit> unit(String where, Signal signal, YamlNode node) {
        if (signal.unit().isEmpty()) {
            return Optional.empty();
        }
        Unit own = signal.unit().get();
        return node.one(
                where + ".unit",
                text -> Unit.parse(text).filter(unit -> unit.quantity() == own.quantity()),
                "a unit for " + signal.words(),
                Arrays.stream(Unit.values())
                        .filter(unit -> unit.quantity() == own.quantity())
                        .map(Unit::symbol)
                        .collect(Collectors.joining(", ")));
    }
}
