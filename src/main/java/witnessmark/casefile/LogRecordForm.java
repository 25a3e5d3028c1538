package witnessmark.casefile;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.summary.TimeSpan;

/** How the counts of logs are written in a case: maps of text, number and list. */
final class LogRecordForm {
    private LogRecordForm() {}

    static Map<String, Object> of(LogRecord record) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("km", record.km());
        form.put("covered-hours", record.coveredHours());
        form.put("moving-hours", record.movingHours());
        form.put("telling-hours", record.tellingHours());
        form.put("fitting-hours", record.fittingHours());
        form.put("coast-km", record.coastKm());
        record.odometer().ifPresent(o -> form.put("odometer-km", List.of(o.fromKm(), o.toKm())));
        if (!record.spans().isEmpty()) {
            form.put("times", record.spans().stream().map(LogRecordForm::span).toList());
        }
        Map<String, Object> tallies = new LinkedHashMap<>();
        record.tallies().forEach((finding, tally) -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("count", (double) tally.count());
            one.put("weight", tally.weight());
            one.put("chances", tally.chances());
            if (tally.open() > 0) {
                one.put("open", (double) tally.open());
            }
            tallies.put(finding, one);
        });
        if (!tallies.isEmpty()) {
            form.put("tallies", tallies);
        }
        if (!record.doubts().isEmpty()) {
            form.put("doubts", record.doubts());
        }
        if (!record.marks().hashes().isEmpty()) {
            form.put("rows", record.marks().hashes());
        }
        return form;
    }

    private static Map<String, Object> span(TimeSpan span) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("from", written(span.from()));
        form.put("to", written(span.to()));
        return form;
    }

    /** To the microsecond, as it is read again; a log without a date counts from 1970. */
    private static String written(Instant time) {
        return time.toString();
    }
}
