package witnessmark.triplog;

import java.util.List;
import witnessmark.triplog.summary.SpeedMap;
import witnessmark.triplog.summary.TripSummary;

/**
 * All logs of one truck, read.
 *
 * @param truck its name: that of the folder, or the file names' part before the first underscore
 * @param summary over all its logs
 * @param speedMap over all its logs
 * @param trips each log that could be read, by file name
 * @param failures one line for each log that could not
 */
public record TruckResult(
        String truck, TripSummary summary, SpeedMap speedMap, List<TripResult> trips, List<String> failures) {

    public boolean isPartial() {
        return trips.stream().anyMatch(TripResult::isPartial);
    }
}
