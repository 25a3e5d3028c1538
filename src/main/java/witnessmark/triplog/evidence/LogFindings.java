package witnessmark.triplog.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import witnessmark.triplog.event.EventKind;
import witnessmark.yaml.CompiledYaml;
import witnessmark.yaml.Faults;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/**
 * The findings that logs can speak for, as {@code log-findings.yaml} of the knowledge base has them.
 *
 * @param rows those that rest on counted events
 * @param ratioFitsNoGear the finding that the ratios in the logs are not this truck's
 * @param speedDataBelievable the finding that the speeds in the logs can be believed
 * @param coastDistanceLong the finding that long ways were rolled out of gear
 */
record LogFindings(
        List<LogFinding> rows,
        OfTheWhole ratioFitsNoGear,
        OfTheWhole speedDataBelievable,
        OfTheWhole coastDistanceLong) {
    /**
     * A finding that rests on the whole of the logs, not on counted events.
     *
     * @param id of the finding
     * @param timesFor how many times likelier it makes logs that show it
     * @param timesAgainst how many times less likely it makes logs that show the contrary
     */
    record OfTheWhole(String id, double timesFor, double timesAgainst) {
        OfTheWhole {
            if (!(timesFor > 1 && timesAgainst > 1)) {
                throw new IllegalArgumentException(
                        id + ": " + timesFor + " times for and " + timesAgainst + " against must be above 1");
            }
        }

        double against() {
            return 1 / timesAgainst;
        }
    }

    private static final String RESOURCE = "/log-findings.compiled";

    private static final Map<String, EventKind> KINDS =
            Arrays.stream(EventKind.values()).collect(Collectors.toMap(EventKind::id, Function.identity()));

    private static final Map<String, EventCondition> TESTS = Arrays.stream(EventCondition.values())
            .collect(Collectors.toMap(t -> t.name().toLowerCase(Locale.ROOT).replace('_', '-'), Function.identity()));

    LogFindings {
        rows = List.copyOf(rows);
    }

    /** The rows that the build put beside the program; read once, when first asked for. */
    static LogFindings shipped() {
        return Shipped.FINDINGS;
    }

    private static final class Shipped {
        static final LogFindings FINDINGS = load();

        private static LogFindings load() {
            Faults faults = new Faults();
            try (InputStream in = LogFindings.class.getResourceAsStream(RESOURCE)) {
                if (in == null) {
                    throw new IllegalStateException("the program was built without its log findings");
                }
                YamlNode root = CompiledYaml.read(ByteBuffer.wrap(in.readAllBytes()), faults)
                        .get(0)
                        .root();
                LogFindings findings = from(root);
                faults.throwIfAny();
                return findings;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    static LogFindings from(YamlNode root) {
        YamlMap map = root.map("the log findings");
        List<LogFinding> rows =
                map.items("log-findings").stream().map(LogFindings::row).toList();
        YamlMap whole = map.require("of-the-whole").orElse(root).map("the findings of the whole");
        return new LogFindings(
                rows,
                whole(whole, "ratio-fits-no-gear"),
                whole(whole, "speed-data-believable"),
                whole(whole, "coast-distance-long"));
    }

    private static OfTheWhole whole(YamlMap map, String key) {
        YamlMap fields = map.require(key)
                .orElseThrow(() -> new IllegalStateException("no finding of the whole: " + key))
                .map("a finding of the whole");
        return new OfTheWhole(fields.text("id"), fields.number("for"), fields.number("against"));
    }

    private static LogFinding row(YamlNode item) {
        YamlMap fields = item.map("a log finding");
        return new LogFinding(
                fields.text("id"),
                fields.require("event")
                        .flatMap(v -> v.one("event", KINDS))
                        .orElseThrow(() -> new IllegalStateException("a log finding without a known event")),
                fields.number("with"),
                fields.number("without"),
                !fields.flagOr("once", false),
                fields.one("only", TESTS),
                fields.one("proof", TESTS),
                fields.one("also-after", KINDS));
    }

    /** The row of a kind of events; the first where several rest on it. */
    LogFinding of(EventKind kind) {
        return rows.stream()
                .filter(r -> r.kind() == kind)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no log finding rests on " + kind.words()));
    }
}
