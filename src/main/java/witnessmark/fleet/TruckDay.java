package witnessmark.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.gearbox.Layout;
import witnessmark.triplog.evidence.LogRecord;

/**
 * What the logs of one truck held that began on one day. They are one witness: what they counted is added.
 *
 * @param truck the name of its folder, or the file names' part before the first underscore
 * @param day the date (UTC) as 2026-03-14 on which the logs begin, or {@link #UNDATED}
 * @param profile name of the profile they were read with
 * @param gearbox the forward ratios and splitter of that profile
 * @param acts how many acts they show
 * @param record the counts
 * @param logs the logs, in the order of their paths
 * @param remarks what is to be known of how the reading went
 */
public record TruckDay(
        String truck,
        String day,
        String profile,
        Layout gearbox,
        long acts,
        LogRecord record,
        List<SourceLog> logs,
        List<String> remarks) {
    /** The day of logs that know no date. */
    public static final String UNDATED = "undated";

    /** A log by its content, unpacked, and its file name. */
    public record SourceLog(String sha256, String name) {
        public SourceLog {
            if (!sha256.matches("[0-9a-f]{64}")) {
                throw new IllegalArgumentException("'" + sha256 + "' is no SHA-256 of 64 hexadecimal digits");
            }
        }
    }

    public TruckDay {
        logs = List.copyOf(logs);
        remarks = List.copyOf(remarks);
    }

    /** These logs and others of the same truck and day; no log may be in both. */
    TruckDay plus(TruckDay other) {
        return new TruckDay(
                truck,
                day,
                profile,
                gearbox,
                acts + other.acts,
                record.plus(other.record),
                joined(logs, other.logs),
                joined(remarks, other.remarks));
    }

    private static <T> List<T> joined(List<T> one, List<T> other) {
        return new ArrayList<>(Stream.concat(one.stream(), other.stream()).toList());
    }
}
