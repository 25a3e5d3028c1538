package witnessmark.triplog.summary;

import java.util.List;
import java.util.Optional;

/**
 * When one log was recorded.
 *
 * @param spans the times it covers, parted where the record stops for more than an hour or the clock goes back
 * @param odometer its first and last reading, where the log has it
 * @param marks by what its rows are known again in another file, with other times or none
 */
public record RecordedTimes(List<TimeSpan> spans, Optional<Odometer> odometer, RowMarks marks) {

    /** Two readings of the odometer in km, the first not above the last. */
    public record Odometer(double fromKm, double toKm) {
        public Odometer {
            if (!(fromKm >= 0 && toKm >= fromKm) || Double.isInfinite(toKm)) {
                throw new IllegalArgumentException("odometer from " + fromKm + " to " + toKm + " km");
            }
        }

        /** From the lowest to the highest of both. */
        public Odometer spanning(Odometer other) {
            return new Odometer(Math.min(fromKm, other.fromKm), Math.max(toKm, other.toKm));
        }
    }

    public RecordedTimes {
        spans = List.copyOf(spans);
    }
}
