package witnessmark.shell.log;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import witnessmark.fleet.TruckDay;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;

/** The days asked for, both ends among them; undated records lie in it only where neither end is given. */
record DayRange(Optional<LocalDate> from, Optional<LocalDate> to) {

    static DayRange of(String from, String to) {
        DayRange range = new DayRange(day("from", from), day("to", to));
        if (range.from.isPresent() && range.to.isPresent() && range.from.get().isAfter(range.to.get())) {
            throw new WrongUsage("--from " + from + " is after --to " + to, "give the earlier day first");
        }
        return range;
    }

    private static Optional<LocalDate> day(String option, String text) {
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            throw new WrongUsage(
                    "--" + option + " '" + Terminal.harmless(text) + "' is no date", "write it as 2026-03-01");
        }
    }

    boolean holds(String day) {
        if (day.equals(TruckDay.UNDATED)) {
            return from.isEmpty() && to.isEmpty();
        }
        LocalDate date = LocalDate.parse(day);
        return !from.filter(date::isBefore).isPresent()
                && !to.filter(date::isAfter).isPresent();
    }
}
