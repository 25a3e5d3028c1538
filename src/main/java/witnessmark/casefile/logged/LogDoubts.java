package witnessmark.casefile.logged;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CheckedText;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.TimeSpan;

/**
 * Why logs may not be of the truck, or the time, of a case. Only what can be decided is asked: whether its ratios fit,
 * when it was recorded, what its odometer read, and whose name it bears. A log that passes may still be of another truck.
 */
public final class LogDoubts {
    /** Share of the driving in which a gear must fit; measured on simulated drives, the right truck stays above 0.9. */
    private static final double LEAST_SHARE = 0.8;

    private static final double LEAST_TELLING_HOURS = 1.0 / 60;
    /** Clocks and the case's entry are seldom exact to the day. */
    private static final Duration LEEWAY = Duration.ofDays(1);
    /** Dashboard and bus count apart: common practice, no source. */
    private static final double ODOMETER_SHARE = 0.01;

    private static final double ODOMETER_KM = 100;
    /** Below this a distance may be that of a trip, not of the truck's life. */
    private static final double LIFE_KM = 1000;

    private static final Pattern DIGITS = Pattern.compile("\\d+");

    private final CaseFile file;
    private final LogRecord record;
    private final List<String> doubts = new ArrayList<>();

    private LogDoubts(CaseFile file, LogRecord record) {
        this.file = file;
        this.record = record;
    }

    /**
     * The doubts, one sentence each; empty where nothing speaks against it.
     *
     * @param opened when the case was opened, as far as it is known
     * @param record what the logs held, read with the numbers of the case's truck
     * @param names the units that the logs' names tell of, as {@code unit-31}
     * @param now the present time
     */
    public static List<String> of(
            CaseFile file, Optional<Instant> opened, LogRecord record, List<String> names, Instant now) {
        LogDoubts doubts = new LogDoubts(file, record);
        doubts.ratios();
        doubts.dates(opened, now);
        record.odometer().ifPresent(doubts::odometer);
        file.evidence().values().forEach(e -> e.record().ifPresent(kept -> doubts.order(e.id(), kept)));
        names.stream()
                .filter(name -> isAnother(name, file.vehicle().unit()))
                .distinct()
                .forEach(name -> doubts.add("its name says " + name + ", the truck of the case is "
                        + file.vehicle().unit()));
        return List.copyOf(doubts.doubts);
    }

    private void add(String form, Object... values) {
        String text = values.length == 0 ? form : String.format(Locale.ROOT, form, values);
        doubts.add(text.length() > CheckedText.LONGEST_LINE ? text.substring(0, CheckedText.LONGEST_LINE) : text);
    }

    /** Of all logs together where none alone is in doubt: in few and short ones it may show only so. */
    private void ratios() {
        if (record.doubts().isEmpty()
                && record.tellingHours() >= LEAST_TELLING_HOURS
                && record.gearShare() < LEAST_SHARE) {
            add(
                    "the ratios of this truck fit in only %.0f %% of the driving time: another truck, axle or tyre, or a"
                            + " speed signal that is wrong",
                    100 * record.gearShare());
        }
    }

    private void dates(Optional<Instant> opened, Instant now) {
        Optional<Instant> last = dated(record).map(TimeSpan::to).max(Instant::compareTo);
        if (last.isEmpty()) {
            return;
        }
        if (last.get().isAfter(now.plus(LEEWAY))) {
            add("its clock says " + day(last.get()) + ", which is still to come");
        } else if (opened.isPresent() && last.get().isAfter(opened.get().plus(LEEWAY))) {
            add("it was recorded until " + day(last.get()) + ", the case was opened on " + day(opened.get())
                    + ": it is of the time after the damage, or of another truck");
        }
    }

    private static String day(Instant time) {
        return time.toString().substring(0, 10);
    }

    private void odometer(Odometer log) {
        OptionalDouble known = file.vehicle().odometerKm();
        if (known.isEmpty()) {
            return;
        }
        double now = known.getAsDouble();
        double leeway = ODOMETER_KM + ODOMETER_SHARE * now;
        if (log.toKm() > now + leeway) {
            add("its odometer reads %.0f km, that of the case %.0f km", log.toKm(), now);
        } else if (log.toKm() >= LIFE_KM) {
            since(log, now, leeway, file.vehicle().kmSinceNew(), "this gearbox was new");
            since(log, now, leeway, file.vehicle().kmSinceRepair(), "its last repair");
        }
    }

    private void since(Odometer log, double now, double leeway, OptionalDouble run, String what) {
        if (run.isPresent() && log.fromKm() < now - run.getAsDouble() - leeway) {
            add(
                    "its odometer begins at %.0f km, before %s (at about %.0f km)",
                    log.fromKm(), what, Math.max(0, now - run.getAsDouble()));
        }
    }

    /** A truck's odometer only grows: against logs of the case that were recorded wholly before or after these. */
    private void order(String where, LogRecord kept) {
        if (isReversed(record, kept) || isReversed(kept, record)) {
            add("its odometer and dates go against those of evidence " + where + ": later, yet fewer km");
        }
    }

    /** Whether the second was recorded later than the first and yet begins with fewer km than the first began with. */
    private static boolean isReversed(LogRecord first, LogRecord second) {
        Optional<Instant> end = dated(first).map(TimeSpan::to).max(Instant::compareTo);
        Optional<Instant> begin = dated(second).map(TimeSpan::from).min(Instant::compareTo);
        return end.isPresent()
                && begin.isPresent()
                && !begin.get().isBefore(end.get())
                && first.odometer().isPresent()
                && second.odometer().isPresent()
                && first.odometer().get().fromKm() >= LIFE_KM
                && second.odometer().get().toKm() < first.odometer().get().fromKm() - ODOMETER_KM;
    }

    private static Stream<TimeSpan> dated(LogRecord record) {
        return record.spans().stream().filter(TimeSpan::isDated);
    }

    /** Whether two names of the same form, as {@code unit-31} and {@code Unit 32}, differ in their number. */
    private static boolean isAnother(String one, String other) {
        String oneWord = word(one);
        return !oneWord.isEmpty()
                && oneWord.equals(word(other))
                && !number(one).isEmpty()
                && !number(other).isEmpty()
                && !number(one).equals(number(other));
    }

    private static String word(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]", "");
    }

    private static String number(String name) {
        return DIGITS.matcher(name)
                .results()
                .map(r -> r.group().replaceFirst("^0+(?=.)", ""))
                .reduce("", (a, b) -> a.isEmpty() ? b : a + " " + b);
    }
}
