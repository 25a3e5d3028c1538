package witnessmark.triplog.event;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * One event found in a log. It says what the gearbox did, not what the hand asked, and names no driver.
 *
 * @param kind what happened
 * @param startMicros time of its first row
 * @param seconds how long it took
 * @param firstLine first line of the file that shows it
 * @param lastLine last line of the file that shows it
 * @param roadKmh road speed, at its highest during the event
 * @param engineRpm engine speed, at its highest during the event
 * @param gearBefore gear in hand before, where there was one
 * @param gearAfter gear in hand after, or during
 * @param severity figure of its hardness: 1 is serious, 2 severe
 * @param confidence how sure it is that this happened, 0 to 1
 * @param figures further figures, unit in the name
 * @param sentence all of it for a person
 */
public record HabitEvent(
        EventKind kind,
        long startMicros,
        double seconds,
        long firstLine,
        long lastLine,
        double roadKmh,
        double engineRpm,
        Optional<String> gearBefore,
        Optional<String> gearAfter,
        double severity,
        double confidence,
        Map<String, Double> figures,
        String sentence) {

    public HabitEvent {
        if (!(confidence >= 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence " + confidence + " is not between 0 and 1");
        }
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    }

    public Severity grade() {
        return Severity.of(severity);
    }
}
