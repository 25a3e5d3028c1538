package witnessmark.casefile.logged;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.WeighRecord;

/** Weighs each record once, for as long as one question is worked at. Not for several threads. */
public final class WeighOnce {
    private final Map<LogRecord, List<LogEvidence>> weighed = new HashMap<>();

    /** What the record says; none for what it cannot show. */
    public List<LogEvidence> said(LogRecord record) {
        return weighed.computeIfAbsent(record, WeighRecord::weigh);
    }
}
