package witnessmark.triplog.read;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.signal.Signal;

/** Proposes a mapping from the first lines of a CSV log; a person confirms it before it counts. */
public final class GuessMapping {
    private static final int LONGEST_LINE = 16_384;
    /** So many lines at most may stand above the columns' names. */
    private static final int MOST_ABOVE = 50;

    private static final String SEPARATORS = ",;\t|";
    private static final List<String> DATE_TIMES = List.of(
            "yyyy-MM-dd HH:mm:ssX",
            "yyyy-MM-dd HH:mm:ss",
            "yyyy/MM/dd HH:mm:ss",
            "dd.MM.yyyy HH:mm:ss",
            "dd/MM/yyyy HH:mm:ss",
            "MM/dd/yyyy HH:mm:ss",
            "dd-MM-yyyy HH:mm:ss",
            "MM/dd/yyyy hh:mm:ss a",
            "dd/MM/yyyy hh:mm:ss a",
            "yyyy-MM-dd HH:mm",
            "dd.MM.yyyy HH:mm",
            "HH:mm:ss",
            "HH:mm");
    private static final List<String> DATES =
            List.of("yyyy-MM-dd", "yyyy/MM/dd", "dd.MM.yyyy", "dd/MM/yyyy", "MM/dd/yyyy", "dd-MM-yyyy");

    /**
     * @param mapping what the header seems to say
     * @param notes what a person should look at, one sentence each
     * @param preview the first rows of the file by column name, for the confirmation
     * @param couldBe columns that were not taken, with the signal that each could be
     */
    public record Guess(
            ColumnMapping mapping,
            List<String> notes,
            List<Map<String, String>> preview,
            Map<String, Signal> couldBe) {}

    private final String file;
    private final List<String> notes = new ArrayList<>();
    private List<String> header = List.of();
    private List<List<String>> rows = List.of();
    private List<ColumnMeanings.Heading> headings = List.of();
    private final Map<String, Signal> doubts = new LinkedHashMap<>();

    private GuessMapping(String file) {
        this.file = file;
    }

    /**
     * @param file name for messages
     * @param head the first lines of the file
     * @throws UnreadableLog if no column looks like a time, or no signal is recognized
     */
    public static Guess from(String file, String head) {
        return new GuessMapping(file).guess(head);
    }

    /** The columns that the first line names, as the separator cuts it. */
    static List<String> header(String firstLine, char separator) {
        return records(firstLine, separator).stream().findFirst().orElse(List.of());
    }

    static List<List<String>> records(String text, char separator) {
        List<List<String>> records = new ArrayList<>();
        try (var reader = de.siegmar.fastcsv.reader.CsvReader.builder()
                .fieldSeparator(separator)
                .allowExtraCharsAfterClosingQuote(true)
                .ofCsvRecord(text)) {
            for (CsvRecord line : reader) {
                records.add(line.getFields().stream().map(String::strip).toList());
            }
        } catch (IOException | CsvParseException broken) {
            // What was read before the broken line is enough for a proposal.
            return records;
        }
        return records;
    }

    private Guess guess(String text) {
        char separator = separator(text);
        int above = linesAboveNames(text, separator);
        String head = text.lines().skip(above).collect(Collectors.joining("\n"));
        List<List<String>> all = records(head, separator);
        if (all.size() < 2) {
            throw new UnreadableLog(file + ": a header line and at least one row are needed", whyNoRows(head, all));
        }
        header = all.get(0);
        boolean unitLine = isUnitLine(all.get(1));
        headings = headings(unitLine ? all.get(1) : List.of());
        rows = all.subList(unitLine ? 2 : 1, all.size());
        char decimal = hasCommaDecimals() && (separator != ',' || !partsThousands()) ? ',' : '.';
        ColumnMapping.Time time = time(decimal);
        Map<Signal, ColumnMapping.Column> columns = columns(time, decimal);
        if (columns.isEmpty()) {
            throw new UnreadableLog(
                    file + ": no column is recognized as a signal",
                    "write a mapping file. The header has " + String.join(", ", header));
        }
        ColumnMapping mapping = new ColumnMapping(separator, decimal, above + (unitLine ? 2 : 1), time, columns);
        return new Guess(mapping, List.copyOf(notes), preview(), doubts);
    }

    /**
     * A title or notes may stand above the names: these stand in the first line that has a time among its words, no
     * number, and as many columns as most lines have. None is above where no line is like that.
     */
    private static int linesAboveNames(String text, char separator) {
        List<List<String>> lines =
                text.lines().limit(MOST_ABOVE).map(l -> header(l, separator)).toList();
        int usual =
                usual(lines.stream().mapToLong(List::size).filter(n -> n > 1).toArray());
        for (int i = 0; i < lines.size(); i++) {
            List<String> line = lines.get(i);
            boolean names = line.size() == usual
                    && line.stream().noneMatch(f -> f.matches("-?\\d+([.,]\\d+)?"))
                    && line.stream()
                            .map(ColumnMeanings::heading)
                            .anyMatch(h -> ColumnMeanings.isTime(h) || ColumnMeanings.isDate(h));
            if (names) {
                return i;
            }
        }
        return 0;
    }

    /** The number met most often, the larger of two met alike; 0 where there is none. */
    private static int usual(long[] numbers) {
        Map<Long, Long> times = Arrays.stream(numbers)
                .boxed()
                .collect(Collectors.groupingBy(n -> n, TreeMap::new, Collectors.counting()));
        return times.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(e -> e.getKey().intValue())
                .orElse(0);
    }

    private static String whyNoRows(String head, List<List<String>> all) {
        List<String> lines = head.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            boolean open = lines.get(i).chars().filter(c -> c == '"').count() % 2 == 1;
            if (open && lines.subList(i + 1, lines.size()).stream().noneMatch(l -> l.contains("\""))) {
                return "the quote opened in line " + (i + 1) + " is never closed";
            }
        }
        if (head.length() > LONGEST_LINE && lines.size() == 1) {
            return "the first line is longer than " + LONGEST_LINE + " characters";
        }
        return "found " + all.size() + " line" + (all.size() == 1 ? "" : "s");
    }

    /**
     * The mark that cuts the lines into the most columns, and into equally many from the names on. The line of the names
     * has no number, so a comma within numbers begins to cut only after it.
     */
    private static char separator(String head) {
        List<String> lines =
                head.lines().filter(l -> !l.isBlank()).limit(MOST_ABOVE).toList();
        char best = ',';
        long bestScore = 0;
        for (char mark : SEPARATORS.toCharArray()) {
            long[] counts = lines.stream()
                    .mapToLong(l -> l.chars().filter(c -> c == mark).count())
                    .toArray();
            long columns = usual(Arrays.stream(counts).filter(c -> c > 0).toArray());
            int first = 0;
            while (first < counts.length && counts[first] != columns) {
                first++;
            }
            boolean even = Arrays.stream(counts).skip(first).allMatch(c -> c == columns);
            long score = (even ? columns * 100 : columns) * MOST_ABOVE - (first < counts.length ? first : MOST_ABOVE);
            boolean inNumbers = mark == ',' && first > 0 && first < counts.length && !hasWords(lines.get(first));
            if (columns > 0 && !inNumbers && score > bestScore) {
                best = mark;
                bestScore = score;
            }
        }
        return best;
    }

    private static boolean hasWords(String line) {
        return line.chars().filter(Character::isLetter).count()
                > line.chars().filter(Character::isDigit).count();
    }

    private static boolean isUnitLine(List<String> line) {
        return line.stream().noneMatch(f -> f.matches(".*\\d{2,}.*|\\d"))
                && line.stream().anyMatch(f -> ColumnMeanings.unit(f.replaceAll("[\\[\\]()]", ""))
                        .isPresent());
    }

    private List<ColumnMeanings.Heading> headings(List<String> unitLine) {
        List<ColumnMeanings.Heading> list = new ArrayList<>();
        for (int i = 0; i < header.size(); i++) {
            ColumnMeanings.Heading own = ColumnMeanings.heading(header.get(i));
            String below = i < unitLine.size() ? unitLine.get(i).replaceAll("[\\[\\]()]", "") : "";
            boolean take = own.unit().isEmpty() && !below.isBlank();
            list.add(take ? new ColumnMeanings.Heading(own.plain(), Optional.of(below)) : own);
        }
        return list;
    }

    private boolean hasCommaDecimals() {
        long comma = fields().filter(f -> f.matches("-?\\d+,\\d+")).count();
        return comma > fields().filter(f -> f.matches("-?\\d+\\.\\d+")).count();
    }

    /** Whether each comma within quotes may stand before three whole digits and no decimals: then nobody knows. */
    private boolean partsThousands() {
        return fields().filter(f -> f.contains(",")).allMatch(f -> f.matches("-?[1-9]\\d{0,2},\\d{3}"));
    }

    private Stream<String> fields() {
        return rows.stream().limit(50).flatMap(List::stream);
    }

    private List<String> column(int at) {
        return rows.stream()
                .limit(200)
                .filter(r -> r.size() > at && !r.get(at).isBlank())
                .map(r -> r.get(at))
                .toList();
    }

    private ColumnMapping.Time time(char decimal) {
        int at = first(ColumnMeanings::isTime);
        int date = first(ColumnMeanings::isDate);
        if (at < 0 && date >= 0) {
            at = date;
            date = -1;
        }
        if (at < 0) {
            throw new UnreadableLog(
                    file + ": no column looks like a time",
                    "write a mapping file. The header has " + String.join(", ", header));
        }
        String form = timeForm(at, decimal);
        boolean apart = date >= 0 && date != at && !form.contains("y");
        Optional<String> dateForm = apart ? Optional.of(pattern(date, DATES)) : Optional.empty();
        return new ColumnMapping.Time(
                header.get(at),
                form,
                apart ? Optional.of(header.get(date)) : Optional.empty(),
                dateForm,
                ZoneOffset.UTC);
    }

    private int first(Predicate<ColumnMeanings.Heading> test) {
        for (int i = 0; i < headings.size(); i++) {
            if (test.test(headings.get(i))) {
                return i;
            }
        }
        return -1;
    }

    private String timeForm(int at, char decimal) {
        List<String> values = column(at).stream()
                .map(v -> decimal == ',' ? v.replace(',', '.') : v)
                .toList();
        boolean numbers = !values.isEmpty() && values.stream().allMatch(v -> v.matches("-?\\d+(\\.\\d+)?"));
        if (!numbers) {
            return pattern(at, DATE_TIMES);
        }
        double[] times = values.stream().mapToDouble(Double::parseDouble).toArray();
        String unit = headings.get(at).unit().orElse("");
        return switch (unit.toLowerCase(Locale.ROOT)) {
            case "ms" -> "milliseconds";
            case "us" -> "microseconds";
            case "min" -> "minutes";
            case "s", "sec", "seconds" -> "seconds";
            default -> numberForm(times);
        };
    }

    private String numberForm(double[] times) {
        double first = Math.abs(times[0]);
        if (first > 1e14) {
            return "microseconds";
        }
        if (first > 1e11) {
            return "milliseconds";
        }
        if (first > 1e8) {
            return "seconds";
        }
        List<Double> steps = new ArrayList<>();
        for (int i = 1; i < times.length; i++) {
            steps.add(times[i] - times[i - 1]);
        }
        Collections.sort(steps);
        double median = steps.isEmpty() ? 1 : steps.get(steps.size() / 2);
        boolean whole = Arrays.stream(times).allMatch(t -> t == Math.rint(t));
        boolean millis = whole && median >= 10;
        notes.add("time: no unit is given; steps of " + Math.round(median * 1e6) / 1e6 + " were taken as "
                + (millis ? "milliseconds" : "seconds"));
        return millis ? "milliseconds" : "seconds";
    }

    private String pattern(int at, List<String> patterns) {
        List<String> values = column(at);
        List<String> fitting = patterns.stream()
                .filter(p -> values.stream().allMatch(v -> fits(p, v)))
                .toList();
        if (values.isEmpty() || fitting.isEmpty()) {
            throw new UnreadableLog(
                    file + ": column '" + header.get(at) + "': the form of '" + odd(values, patterns)
                            + "' is not known",
                    "give time.form in a mapping file, such as yyyy-MM-dd HH:mm:ss");
        }
        boolean twoWays = fitting.stream().anyMatch(p -> p.startsWith("dd/MM"))
                && fitting.stream().anyMatch(p -> p.startsWith("MM/dd"));
        if (twoWays) {
            notes.add("time: day and month of '" + values.get(0) + "' cannot be told apart; " + fitting.get(0)
                    + " was taken");
        }
        return fitting.get(0);
    }

    /** The first value that is not like most of them, or the first one where they have nothing in common. */
    private static String odd(List<String> values, List<String> patterns) {
        List<Predicate<String>> forms = new ArrayList<>();
        forms.add(v -> v.matches("-?\\d+([.,]\\d+)?"));
        patterns.forEach(p -> forms.add(v -> fits(p, v)));
        return forms.stream()
                .filter(form -> 2 * values.stream().filter(form).count() >= values.size())
                .findFirst()
                .flatMap(form -> values.stream().filter(form.negate()).findFirst())
                .orElse(values.isEmpty() ? "" : values.get(0));
    }

    private static boolean fits(String pattern, String value) {
        byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
        TimeForm form = TimeForm.of(pattern, ZoneOffset.UTC).orElseThrow();
        return !TimeForm.isBad(form.read(bytes, 0, bytes.length));
    }

    private Map<Signal, ColumnMapping.Column> columns(ColumnMapping.Time time, char decimal) {
        Map<Signal, ColumnMapping.Column> columns = new EnumMap<>(Signal.class);
        for (int i = 0; i < header.size(); i++) {
            ColumnMeanings.Heading heading = headings.get(i);
            boolean isTime = header.get(i).equals(time.column())
                    || time.dateColumn().filter(header.get(i)::equals).isPresent();
            Optional<HeaderTokens.Meaning> meant = isTime ? Optional.empty() : ColumnMeanings.meaning(heading);
            if (meant.isEmpty()) {
                continue;
            }
            ColumnValues values = new ColumnValues(column(i), decimal);
            Optional<HeaderTokens.Meaning> meaning = values.fitting(meant.get(), heading.unit());
            if (meaning.isEmpty()) {
                ask(i, meant.get().signal(), "its values are not those of one");
            } else if (columns.containsKey(meaning.get().signal())) {
                ask(i, meaning.get().signal(), "another column was taken for it");
            } else if (!meaning.get().sure()) {
                ask(i, meaning.get().signal(), "its name has a word that is not known");
            } else {
                Signal signal = meaning.get().signal();
                ColumnMapping.Column read = column(i, signal, heading, decimal);
                boolean inverted = meaning.get().inverted();
                columns.put(signal, new ColumnMapping.Column(read.column(), read.unit(), read.factor(), inverted));
                if (inverted) {
                    notes.add(
                            signal.id() + ": column '" + header.get(i) + "' was taken the other way round (1 is low)");
                }
            }
        }
        return columns;
    }

    /** A guess in doubt is asked, never taken. */
    private void ask(int at, Signal signal, String why) {
        doubts.put(header.get(at), signal);
        notes.add(signal.id() + ": column '" + header.get(at) + "' could be it, but " + why
                + "; write it into a mapping if it is");
    }

    private ColumnMapping.Column column(int at, Signal signal, ColumnMeanings.Heading heading, char decimal) {
        if (signal.unit().isEmpty()) {
            return ColumnMapping.Column.plain(header.get(at));
        }
        Unit own = signal.unit().get();
        Optional<Unit> given = heading.unit()
                .or(() -> Optional.of(heading.plain()).filter(p -> p.matches("mph|kph|km h|rpm")))
                .flatMap(ColumnMeanings::unit)
                .filter(u -> u.quantity() == own.quantity());
        if (given.isEmpty() && own != Unit.RPM) {
            notes.add(signal.id() + ": column '" + header.get(at) + "' gives no unit; " + own.symbol() + " was taken");
        }
        boolean open = own == Unit.PERCENT && given.isEmpty();
        double highest = open ? highest(at, decimal) : 100;
        boolean fraction = highest > 0 && highest <= 1;
        if (highest == 0) {
            notes.add(signal.id() + ": the first rows of column '" + header.get(at)
                    + "' are all 0, which says nothing of its unit");
        }
        if (fraction) {
            notes.add(signal.id() + ": values up to 1 were taken as shares, 1 as 100 %");
        }
        return ColumnMapping.Column.upright(header.get(at), Optional.of(given.orElse(own)), fraction ? 100 : 1);
    }

    private double highest(int at, char decimal) {
        return rows.stream()
                .filter(r -> r.size() > at && !r.get(at).isBlank())
                .map(r -> r.get(at))
                .map(v -> decimal == ',' ? v.replace(',', '.') : v)
                .filter(v -> v.matches("-?\\d+(\\.\\d+)?"))
                .mapToDouble(Double::parseDouble)
                .max()
                .orElse(100);
    }

    private List<Map<String, String>> preview() {
        List<Map<String, String>> preview = new ArrayList<>();
        for (List<String> row : rows.stream().limit(3).toList()) {
            Map<String, String> cells = new LinkedHashMap<>();
            for (int i = 0; i < Math.min(row.size(), header.size()); i++) {
                cells.put(header.get(i), row.get(i));
            }
            preview.add(cells);
        }
        return preview;
    }
}
