package witnessmark.shell.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.gear.FrozenSignal;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.summary.TimeSpan;

/** What is to be known of how the reading of one log went, in plain sentences. */
final class LogRemarks {
    private LogRemarks() {}

    /** What a person should know of how the reading went; empty if all went well. */
    static List<String> of(TripResult trip) {
        List<String> remarks = new ArrayList<>();
        if (trip.isPartial()) {
            remarks.add("stopped before its end");
        }
        if (trip.report().newestFirst()) {
            remarks.add("its newest row comes first: read from its end");
        }
        trip.mappingNotes().forEach(n -> remarks.add("columns guessed: " + n));
        trip.report().broken().forEach(b -> remarks.add(b.sentence()));
        trip.frozen().forEach(f -> remarks.add(frozen(f)));
        if (isAlwaysStanding(trip)) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "road speed is 0 from beginning to end, the engine up to %.0f rpm: the truck stood all the time, or"
                            + " that column tells nothing",
                    trip.summary().highestRpm()));
        }
        clock(trip, remarks);
        double away = 100 * (trip.factor().factor() - 1);
        if (trip.factor().isKnown() && Math.abs(away) >= 1) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "the ratios fit if the output turns %.0f %% %s than road speed and tyre say; reckoned with that",
                    Math.abs(away),
                    away > 0 ? "faster" : "slower"));
        }
        if (trip.factor().isBeyondTyres()) {
            remarks.add("that is more than tyres explain; check ratios, axle, tyre and the unit of road speed");
        }
        if (trip.factor().misfit()) {
            remarks.add("the gears fit poorly; check ratios, axle, tyre and the unit of road speed");
        }
        if (trip.factor().isAmbiguous()) {
            remarks.add("two tyre sizes fit the ratios nearly as well; check tyre and axle in the truck's profile");
        }
        if (trip.eventsLeftOut() > 0) {
            remarks.add(trip.eventsLeftOut() + " events are counted but not listed");
        }
        return remarks;
    }

    /** The same; where a log is not the only one of its case, also that nobody can tell whether it overlaps another. */
    static List<String> of(TripResult trip, boolean alone) {
        List<String> remarks = new ArrayList<>(of(trip));
        if (!alone && !trip.times().spans().stream().allMatch(TimeSpan::isDated)) {
            remarks.add("its times have no date, so nobody can tell whether it covers the same time as another log");
        }
        return remarks;
    }

    /** Whether road speed is given, never above 0, and not for having been taken out where it stood still. */
    private static boolean isAlwaysStanding(TripResult trip) {
        return trip.report().signals().containsKey(Signal.ROAD_SPEED)
                && trip.summary().highestKmh() == 0
                && trip.frozen().stream().noneMatch(f -> f.signal() == Signal.ROAD_SPEED);
    }

    private static String frozen(FrozenSignal f) {
        return String.format(
                Locale.ROOT,
                "%s stood still at %s for %.0f s from %s while others moved: not used there",
                f.signal().words(),
                ScreenFigures.plain(f.value())
                        + f.signal().unit().map(u -> " " + u.symbol()).orElse(""),
                f.seconds(),
                EventTable.moment(f.fromMicros()));
    }

    private static void clock(TripResult trip, List<String> remarks) {
        var clock = trip.clock();
        if (clock.gaps() > 0) {
            remarks.add(String.format(
                    Locale.ROOT,
                    clock.gaps() == 1
                            ? "%d gap of %.0f s without rows: nothing is assumed of that time"
                            : "%d gaps without rows, %.0f s together: nothing is assumed of that time",
                    clock.gaps(),
                    clock.gapSeconds()));
        }
        remark(remarks, clock.duplicates(), "rows with the time of the row before, left out");
        remark(remarks, clock.backward(), "rows a little older than the row before, left out");
        remark(remarks, clock.setBack(), "times the clock was set back; the reading starts afresh there");
        remark(remarks, clock.jumpsAhead(), "times the clock went ahead by more than a day; that counts as no time");
    }

    private static void remark(List<String> remarks, long count, String what) {
        if (count > 0) {
            remarks.add(count + " " + (count == 1 ? what.replaceFirst("^(row|time)s", "$1") : what));
        }
    }
}
