package witnessmark.triplog;

import java.util.Optional;
import java.util.function.Function;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.ColumnMapping;

/**
 * What holds for all logs of one job.
 *
 * @param tableOf the numbers of each truck, by name
 * @param limits where events begin
 * @param mapping of the columns of all CSV logs; empty to take each folder's own mapping file, or to guess
 * @param hash whether to take the files' SHA-256
 */
public record TripTerms(
        Function<String, GearTable> tableOf, HabitLimits limits, Optional<ColumnMapping> mapping, boolean hash) {

    /** Usual limits, no mapping given, no hash. */
    public static TripTerms of(Function<String, GearTable> tableOf) {
        return new TripTerms(tableOf, HabitLimits.usual(), Optional.empty(), false);
    }
}
