package witnessmark.casefile.logged;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.Evidence;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.summary.RowMarks;
import witnessmark.triplog.summary.TimeSpan;

/**
 * The logs that stand in a case already, and those on their way into it. Each stretch of driving may count once: the same
 * file is known by its hash, the same time in another file by its dates, the same rows with other times or none by their marks.
 */
public final class LogsOfCase {
    /** One log, where it is, when it was recorded (empty where not known), and the marks of its rows. */
    public record Log(String name, String sha256, List<TimeSpan> spans, RowMarks marks) {}

    private record Counted(String where, List<TimeSpan> spans, RowMarks marks, List<String> hashes) {}

    private final List<Counted> counted = new ArrayList<>();

    /** @param evidence of the case, without what the new logs will replace */
    public LogsOfCase(Collection<Evidence> evidence) {
        for (Evidence e : evidence) {
            if (e.kind() == Evidence.Kind.LOGGED) {
                counted.add(new Counted(
                        "evidence " + e.id() + " of this case",
                        e.record().map(LogRecord::spans).orElse(List.of()),
                        e.record().map(LogRecord::marks).orElse(RowMarks.NONE),
                        hashes(e)));
            }
        }
    }

    /** The hashes of the logs that the evidence rests on. */
    public static List<String> hashes(Evidence evidence) {
        List<String> hashes = new ArrayList<>();
        evidence.file().ifPresent(f -> hashes.add(f.sha256()));
        evidence.inputs().forEach((name, value) -> {
            if (name.matches("log-\\d+")) {
                hashes.add(value.replaceFirst(" .*", ""));
            }
        });
        return hashes;
    }

    public boolean isEmpty() {
        return counted.isEmpty();
    }

    /** Takes the logs in; one sentence for each that is there already or covers the same time as another. */
    public List<String> add(List<Log> logs) {
        List<String> refusals = new ArrayList<>();
        for (Log log : logs) {
            counted.stream().flatMap(h -> clash(log, h).stream()).findFirst().ifPresent(refusals::add);
            counted.add(new Counted("'" + log.name() + "'", log.spans(), log.marks(), List.of(log.sha256())));
        }
        return refusals;
    }

    private static Optional<String> clash(Log log, Counted other) {
        if (other.hashes().contains(log.sha256())) {
            return Optional.of("'" + log.name() + "' is the same log as " + other.where()
                    + "; it would count twice, leave it out (or take the evidence off first)");
        }
        for (TimeSpan one : log.spans()) {
            for (TimeSpan two : other.spans()) {
                if (one.isSameDriving(two)) {
                    return Optional.of("'" + log.name() + "' covers the same time as " + other.where() + " ("
                            + second(later(one.from(), two.from())) + " to " + second(earlier(one.to(), two.to()))
                            + "); it would count twice, leave it out (or take the evidence off first)");
                }
            }
        }
        return log.marks().isSameDriving(other.marks())
                ? Optional.of("'" + log.name() + "' holds rows of " + other.where()
                        + "; they would count twice, leave it out (or take the evidence off first)")
                : Optional.empty();
    }

    private static Instant later(Instant one, Instant two) {
        return one.isAfter(two) ? one : two;
    }

    private static Instant earlier(Instant one, Instant two) {
        return one.isBefore(two) ? one : two;
    }

    private static Instant second(Instant time) {
        return time.truncatedTo(ChronoUnit.SECONDS);
    }
}
