package witnessmark.fleet;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.fleet.TruckDay.SourceLog;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.TimeSpan;

/**
 * The record of a truck and day as a row of {@link FleetTable#DAYS}, and back. Times are {@code from/to}, tallies
 * {@code finding=count/weight/chances/open} (without the last in tables of earlier builds), logs {@code sha256:name} with the name percent-encoded, each parted by blanks;
 * sentences are parted by {@code " | "}.
 */
public final class TruckDayRow {
    private static final int FIGURES = 6;
    private static final int MOST_PARTS = 30_000;
    private static final int LONGEST_SENTENCE = 200;
    private static final String BETWEEN = " | ";
    private static final List<String> COLUMNS = FleetTable.DAYS.header();

    private final List<String> cells;

    private TruckDayRow(List<String> cells) {
        this.cells = cells;
    }

    /** The cells of a record. */
    public static List<Object> cells(TruckDay day) {
        LogRecord r = day.record();
        return List.of(
                day.truck(),
                day.day(),
                day.profile(),
                (long) day.gearbox().forwardRatios().orElse(0),
                day.gearbox().splitter().map(EnumWord::of).orElse(""),
                (long) day.logs().size(),
                day.acts(),
                rounded(r.km()),
                rounded(r.coveredHours()),
                rounded(r.movingHours()),
                rounded(r.tellingHours()),
                rounded(r.fittingHours()),
                rounded(r.coastKm()),
                r.odometer().<Object>map(o -> rounded(o.fromKm())).orElse(""),
                r.odometer().<Object>map(o -> rounded(o.toKm())).orElse(""),
                r.spans().stream().map(s -> s.from() + "/" + s.to()).collect(Collectors.joining(" ")),
                r.tallies().entrySet().stream()
                        .map(e -> e.getKey() + "=" + tally(e.getValue()))
                        .collect(Collectors.joining(" ")),
                day.logs().stream()
                        .map(l -> l.sha256() + ":" + encoded(l.name()))
                        .collect(Collectors.joining(" ")),
                sentences(day.remarks()),
                sentences(r.doubts()));
    }

    private static String tally(Tally t) {
        return t.count() + "/" + rounded(t.weight()) + "/" + rounded(t.chances()) + "/" + t.open();
    }

    private static double rounded(double value) {
        return FleetColumn.rounded(value, FIGURES);
    }

    private static String encoded(String name) {
        return URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    }

    private static String sentences(List<String> all) {
        return all.stream().map(s -> s.replace('|', '/')).collect(Collectors.joining(BETWEEN));
    }

    /**
     * The record that a row holds.
     *
     * @param cells as texts, in the order of the columns; an empty one where nothing is known
     * @throws IllegalArgumentException with the column and the fault
     */
    public static TruckDay read(List<String> cells) {
        if (cells.size() != COLUMNS.size()) {
            throw new IllegalArgumentException(cells.size() + " columns instead of " + COLUMNS.size());
        }
        return new TruckDayRow(cells).read();
    }

    private TruckDay read() {
        List<SourceLog> logs = parts("files").map(this::log).toList();
        if (logs.isEmpty()) {
            throw fault("files", "names no log");
        }
        return new TruckDay(
                required("truck"),
                day(),
                cell("profile"),
                gearbox(),
                whole("acts"),
                record(),
                logs,
                sentences("remarks"));
    }

    private LogRecord record() {
        Map<String, Tally> tallies = new LinkedHashMap<>();
        parts("tallies").forEach(part -> {
            if (tallies.put(part.replaceFirst("=.*", ""), tally(part)) != null) {
                throw fault("tallies", "a finding stands twice: " + part);
            }
        });
        return new LogRecord(
                parts("times").map(this::span).toList(),
                odometer(),
                amount("km"),
                amount("covered_hours"),
                amount("moving_hours"),
                amount("telling_hours"),
                amount("fitting_hours"),
                amount("coast_km"),
                tallies,
                sentences("doubts"));
    }

    private String day() {
        String day = required("day");
        try {
            return day.equals(TruckDay.UNDATED) ? day : LocalDate.parse(day).toString();
        } catch (DateTimeParseException e) {
            throw fault("day", "'" + day + "' is no date as 2026-03-14, and not " + TruckDay.UNDATED);
        }
    }

    private Layout gearbox() {
        Layout none = Layout.unknown();
        int ratios = (int) whole("forward_ratios");
        String splitter = cell("splitter");
        return new Layout(
                ratios == 0 ? OptionalInt.empty() : OptionalInt.of(ratios),
                none.range(),
                splitter.isEmpty()
                        ? Optional.empty()
                        : Optional.of(Arrays.stream(Layout.Splitter.values())
                                .filter(s -> EnumWord.of(s).equals(splitter))
                                .findFirst()
                                .orElseThrow(() -> fault("splitter", "'" + splitter + "' is not known"))),
                none.countershafts(),
                none.linkage(),
                none.oilPump(),
                none.oilCooler(),
                none.powerTakeOff());
    }

    private Optional<Odometer> odometer() {
        if (cell("odometer_from_km").isEmpty() && cell("odometer_to_km").isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Odometer(amount("odometer_from_km"), amount("odometer_to_km")));
    }

    private TimeSpan span(String part) {
        String[] ends = part.split("/");
        try {
            if (ends.length == 2) {
                return new TimeSpan(TimeSpan.micros(Instant.parse(ends[0])), TimeSpan.micros(Instant.parse(ends[1])));
            }
        } catch (DateTimeParseException e) {
            // Said below, for both faults alike.
        }
        throw fault("times", "'" + part + "' is no time as 2026-03-14T06:00:00Z/2026-03-14T09:30:00Z");
    }

    private Tally tally(String part) {
        String[] figures = part.replaceFirst(".*=", "").split("/");
        String open = figures.length == 4 ? figures[3] : "0";
        boolean whole = figures.length >= 3 && figures.length <= 4 && isWhole(figures[0]) && isWhole(open);
        if (!part.matches("[a-z0-9-]+=.*") || !whole) {
            throw fault("tallies", "'" + part + "' is no finding=count/weight/chances/open");
        }
        return new Tally(
                Long.parseLong(figures[0]),
                number("tallies", figures[1]),
                number("tallies", figures[2]),
                Long.parseLong(open));
    }

    private SourceLog log(String part) {
        int colon = part.indexOf(':');
        if (colon != 64) {
            throw fault("files", "'" + part + "' is no sha256:name");
        }
        return new SourceLog(
                part.substring(0, colon), URLDecoder.decode(part.substring(colon + 1), StandardCharsets.UTF_8));
    }

    private double amount(String column) {
        return number(column, required(column));
    }

    private static double number(String column, String text) {
        try {
            double value = Double.parseDouble(text);
            if (value >= 0 && value <= 1e9) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Said below, for both faults alike.
        }
        throw fault(column, "'" + text + "' is no amount from 0 to 1,000,000,000");
    }

    private long whole(String column) {
        String text = required(column);
        if (!isWhole(text)) {
            throw fault(column, "'" + text + "' is no whole number");
        }
        return Long.parseLong(text);
    }

    private static boolean isWhole(String text) {
        return text.matches("\\d{1,12}");
    }

    private Stream<String> parts(String column) {
        String cell = cell(column);
        String[] parts = cell.isBlank() ? new String[0] : cell.strip().split(" +");
        if (parts.length > MOST_PARTS) {
            throw fault(column, "more than " + MOST_PARTS + " entries");
        }
        return Arrays.stream(parts);
    }

    private List<String> sentences(String column) {
        List<String> sentences = new ArrayList<>();
        if (!cell(column).isBlank()) {
            for (String sentence : cell(column).split(" \\| ")) {
                sentences.add(
                        sentence.length() > LONGEST_SENTENCE ? sentence.substring(0, LONGEST_SENTENCE) : sentence);
            }
        }
        return sentences;
    }

    private String required(String column) {
        if (cell(column).isBlank()) {
            throw fault(column, "is empty");
        }
        return cell(column);
    }

    private String cell(String column) {
        return cells.get(COLUMNS.indexOf(column));
    }

    private static IllegalArgumentException fault(String column, String what) {
        return new IllegalArgumentException("column " + column + ": " + what);
    }
}
