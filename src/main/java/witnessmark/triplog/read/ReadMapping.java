package witnessmark.triplog.read;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.signal.Signal;

/** Reads a mapping file and names every fault in it at once. */
public final class ReadMapping {
    private static final int LONGEST_FILE = 64 * 1024;
    private static final Set<String> ROOT_KEYS = Set.of("separator", "decimal", "header-lines", "time", "columns");

    private final String label;
    private final List<String> faults = new ArrayList<>();

    private ReadMapping(String label) {
        this.label = label;
    }

    /** The mapping in a file; throws as {@link #from(String, String)} does, and where the file cannot be read. */
    public static ColumnMapping from(Path file) {
        try {
            if (!Files.isRegularFile(file)) {
                throw new UnreadableLog(
                        file + ": no such mapping file",
                        "have one written with: log look LOG" + " --save-mapping FILE.yaml");
            }
            if (Files.size(file) > LONGEST_FILE) {
                throw new UnreadableLog(file + ": more than 65,536 bytes", "it is no mapping file");
            }
            return from(file.toString(), Files.readString(file));
        } catch (CharacterCodingException e) {
            throw new UnreadableLog(file + ": not UTF-8 text", "save it as UTF-8");
        } catch (IOException e) {
            throw new UnreadableLog(file + ": cannot be read (" + e.getMessage() + ")", "check that you may read it");
        }
    }

    /**
     * @param label name of the file, for messages
     * @throws UnreadableLog with one line for each fault
     */
    public static ColumnMapping from(String label, String yaml) {
        if (yaml.length() > LONGEST_FILE) {
            throw new UnreadableLog(label + ": " + yaml.length() + " characters", "a mapping file has at most 65,536");
        }
        return new ReadMapping(label).read(yaml);
    }

    private ColumnMapping read(String yaml) {
        Map<?, ?> root = map("the file", parse(yaml));
        root.keySet().stream()
                .filter(k -> !ROOT_KEYS.contains(String.valueOf(k)))
                .forEach(k -> fault(k + ": not a key of a mapping file; allowed are " + sorted(ROOT_KEYS)));
        char separator = separator(root.get("separator"));
        char decimal = oneOf("decimal", root.get("decimal"), ".", ",").charAt(0);
        int headerLines = headerLines(root.get("header-lines"));
        ColumnMapping.Time time = time(map("time", root.get("time")));
        Map<Signal, ColumnMapping.Column> columns = columns(map("columns", root.get("columns")));
        if (!faults.isEmpty()) {
            throw new UnreadableLog(faults);
        }
        return new ColumnMapping(separator, decimal, headerLines, time, columns);
    }

    private @Nullable Object parse(String yaml) {
        try {
            return new Load(LoadSettings.builder()
                            .setLabel(label)
                            // The library fails on a character of two halves at the edge of its buffer: the text fits
                            // in whole.
                            .setBufferSize(yaml.length() + 1)
                            .setMaxAliasesForCollections(0)
                            .build())
                    .loadFromString(yaml);
        } catch (YamlEngineException e) {
            throw new UnreadableLog(
                    label + ": not YAML: " + String.valueOf(e.getMessage()).replaceAll("\\s+", " "));
        }
    }

    private void fault(String words) {
        faults.add(label + ": " + words);
    }

    private Map<?, ?> map(String where, @Nullable Object value) {
        if (value instanceof Map<?, ?> map) {
            return map;
        }
        fault(where + ": a block of 'key: value' lines is expected");
        return Map.of();
    }

    private static String sorted(Set<String> words) {
        return String.join(", ", words.stream().sorted().toList());
    }

    private char separator(@Nullable Object value) {
        String text = value == null ? "," : String.valueOf(value);
        if (text.equals("tab") || text.equals("\t")) {
            return '\t';
        }
        if (text.length() == 1 && ",;|: ".contains(text)) {
            return text.charAt(0);
        }
        fault("separator: '" + text + "' is none of , ; | : tab or blank");
        return ',';
    }

    private String oneOf(String key, @Nullable Object value, String... allowed) {
        String text = value == null ? allowed[0] : String.valueOf(value);
        if (List.of(allowed).contains(text)) {
            return text;
        }
        fault(key + ": '" + text + "' is none of " + String.join(" ", allowed));
        return allowed[0];
    }

    private int headerLines(@Nullable Object value) {
        if (value == null) {
            return 1;
        }
        if (value instanceof Integer lines && lines >= 0 && lines <= 1000) {
            return lines;
        }
        fault("header-lines: '" + value + "' is not a number from 0 to 1000");
        return 1;
    }

    private ColumnMapping.Time time(Map<?, ?> yaml) {
        String column = text(yaml.get("column")).orElse("");
        String form = text(yaml.get("form")).orElse("seconds");
        if (column.isEmpty()) {
            fault("time.column: missing; name the column with the time, or its number as #1");
        }
        ZoneId zone = zone(yaml.get("zone"));
        Optional<String> dateColumn = text(yaml.get("date-column"));
        Optional<String> dateForm = text(yaml.get("date-form"));
        checkForm("time.form", form, zone);
        dateForm.ifPresent(f -> checkForm("time.date-form", f, zone));
        if (dateColumn.isPresent() != dateForm.isPresent()) {
            fault("time: date-column and date-form belong together; give both or none");
        }
        return new ColumnMapping.Time(column, form, dateColumn, dateForm, zone);
    }

    private void checkForm(String key, String form, ZoneId zone) {
        if (TimeForm.of(form, zone).isEmpty()) {
            fault(key + ": '" + form + "' is neither seconds, milliseconds, microseconds, minutes, hours, days"
                    + " nor a pattern such as yyyy-MM-dd HH:mm:ss");
        }
    }

    private ZoneId zone(@Nullable Object value) {
        try {
            return value == null
                    ? ZoneOffset.UTC
                    : ZoneId.of(String.valueOf(value)).normalized();
        } catch (DateTimeException e) {
            fault("time.zone: '" + value + "' is not a time zone such as UTC, +01:00 or America/Chicago");
            return ZoneOffset.UTC;
        }
    }

    private static Optional<String> text(@Nullable Object value) {
        return value == null ? Optional.empty() : Optional.of(String.valueOf(value));
    }

    private Map<Signal, ColumnMapping.Column> columns(Map<?, ?> yaml) {
        Map<Signal, ColumnMapping.Column> columns = new EnumMap<>(Signal.class);
        yaml.forEach((key, value) -> {
            Optional<Signal> signal = Signal.named(String.valueOf(key));
            if (signal.isEmpty()) {
                fault("columns." + key + ": not a signal; known are "
                        + String.join(
                                ", ",
                                Arrays.stream(Signal.values()).map(Signal::id).toList()));
            } else {
                columns.put(signal.get(), column(signal.get(), value));
            }
        });
        return columns;
    }

    private ColumnMapping.Column column(Signal signal, @Nullable Object value) {
        if (!(value instanceof Map<?, ?> yaml)) {
            return new ColumnMapping.Column(String.valueOf(value), signal.unit(), 1, false);
        }
        String where = "columns." + signal.id();
        String column = text(yaml.get("column")).orElse("");
        if (column.isEmpty()) {
            fault(where + ".column: missing; name the column, or its number as #3");
        }
        double factor = 1;
        if (yaml.get("factor") instanceof Number number
                && Double.isFinite(number.doubleValue())
                && number.doubleValue() != 0) {
            factor = number.doubleValue();
        } else if (yaml.get("factor") != null) {
            fault(where + ".factor: '" + yaml.get("factor") + "' is not a number other than 0");
        }
        boolean inverted = Boolean.TRUE.equals(yaml.get("inverted"));
        return new ColumnMapping.Column(column, unit(where, signal, yaml.get("unit")), factor, inverted);
    }

    private Optional<Unit> unit(String where, Signal signal, @Nullable Object value) {
        if (value == null || signal.unit().isEmpty()) {
            return signal.unit();
        }
        Optional<Unit> unit = Unit.parse(String.valueOf(value));
        Unit own = signal.unit().get();
        if (unit.isEmpty() || unit.get().quantity() != own.quantity()) {
            fault(where + ".unit: '" + value + "' is not a unit for " + signal.words() + "; " + own.symbol()
                    + " would be one");
            return signal.unit();
        }
        return unit;
    }
}
