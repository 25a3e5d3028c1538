package witnessmark.triplog;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.read.ColumnMapping;

/**
 * One log to read.
 *
 * @param file CSV or candump text, plain or gzip
 * @param table the truck's numbers
 * @param limits where events begin
 * @param mapping of a CSV log's columns; empty to guess it from the header
 * @param hash whether to take the file's SHA-256
 * @param seconds takes what is in hand second by second, in order, perhaps on another thread; empty if nobody asks
 */
public record TripRequest(
        Path file,
        GearTable table,
        HabitLimits limits,
        Optional<ColumnMapping> mapping,
        boolean hash,
        Optional<Consumer<GearSecond>> seconds) {

    public static TripRequest of(Path file, GearTable table) {
        return new TripRequest(file, table, HabitLimits.usual(), Optional.empty(), false, Optional.empty());
    }

    public TripRequest withHash() {
        return new TripRequest(file, table, limits, mapping, true, seconds);
    }
}
