package witnessmark.casefile.yaml;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Claim;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.AttachmentRemoved;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.ClaimSet;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.EvidenceRemoved;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.GearboxSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;
import witnessmark.yaml.Faults;
import witnessmark.yaml.FaultyInput;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;
import witnessmark.yaml.YamlReader;

/** Reads a change as the canonical text writes it; JSON is YAML, so one reader serves files and store. */
public final class ChangeReader {
    private static final List<String> FROM_TO = List.of("from", "to");

    private ChangeReader() {}

    /**
     * The change that the canonical text states.
     *
     * @param where what the text belongs to, for messages
     * @throws FaultyInput if it states none
     */
    public static Change read(String where, String text) {
        Faults faults = new Faults();
        Optional<Change> change = new YamlReader(CaseReader.MOST_BYTES)
                .read(where, text.getBytes(StandardCharsets.UTF_8), faults)
                .flatMap(ChangeReader::change);
        faults.throwIfAny();
        return change.orElseThrow();
    }

    static Optional<Change> change(YamlNode node) {
        String kind = node.member("kind").map(YamlNode::shown).orElse("");
        return switch (kind) {
            case "opened" -> opened(node);
            case "text-set" -> textSet(node);
            case "vehicle-set" -> vehicleSet(map(node, kind, FROM_TO));
            case "gearbox-set" -> gearboxSet(map(node, kind, FROM_TO));
            case "claim-set" -> claimSet(map(node, kind, FROM_TO));
            case "finding-set", "finding-cleared" -> finding(node, kind);
            case "measurement-set", "measurement-cleared" -> measurement(node, kind);
            case "evidence-set", "evidence-removed" -> evidence(node, kind);
            case "note-added" -> noteAdded(map(node, kind, List.of("note")));
            case "attachment-added" -> attachment(node, kind).map(AttachmentAdded::new);
            case "attachment-removed" -> attachment(node, kind).map(AttachmentRemoved::new);
            case "signed-off" -> Optional.of(new SignedOff(SignedReader.read(map(node, kind, SignedReader.FIELDS))));
            case "corrected-after-sign-off" -> corrected(map(node, kind, List.of("reason", "change")));
            default -> {
                node.fault("'" + kind + "' is not a kind of change", "restore the entry");
                yield Optional.empty();
            }
        };
    }

    private static YamlMap map(YamlNode node, String kind, List<String> keys) {
        List<String> known = new ArrayList<>(List.of("kind"));
        known.addAll(keys);
        return node.map("change '" + kind + "'", known);
    }

    private static Optional<Change> opened(YamlNode node) {
        YamlMap map = map(node, "opened", List.of("case", "title", "complaint", "vehicle", "gearbox"));
        Optional<Vehicle> vehicle = map.require("vehicle", "{}").flatMap(ValueReader::vehicle);
        Optional<Layout> gearbox = map.require("gearbox", "{}").flatMap(ValueReader::gearbox);
        if (vehicle.isEmpty() || gearbox.isEmpty()) {
            return Optional.empty();
        }
        return Built.at(
                node,
                () -> new Opened(
                        new CaseId(map.written("case")),
                        map.written("title"),
                        map.written("complaint"),
                        vehicle.get(),
                        gearbox.get()));
    }

    private static Optional<Change> textSet(YamlNode node) {
        YamlMap map = map(node, "text-set", List.of("text", "from", "to"));
        return map.require("text", "title")
                .flatMap(name -> name.one("text", EnumWord.all(TextField.class)))
                .flatMap(field -> Built.at(node, () -> new TextSet(field, map.written("from"), map.written("to"))));
    }

    private static Optional<Change> vehicleSet(YamlMap map) {
        Optional<Vehicle> from = map.require("from", "{}").flatMap(ValueReader::vehicle);
        Optional<Vehicle> to = map.require("to", "{}").flatMap(ValueReader::vehicle);
        return from.flatMap(before -> to.map(after -> new VehicleSet(before, after)));
    }

    private static Optional<Change> gearboxSet(YamlMap map) {
        Optional<Layout> from = map.require("from", "{}").flatMap(ValueReader::gearbox);
        Optional<Layout> to = map.require("to", "{}").flatMap(ValueReader::gearbox);
        return from.flatMap(before -> to.map(after -> new GearboxSet(before, after)));
    }

    private static Optional<Change> claimSet(YamlMap map) {
        Optional<Claim> from = map.require("from", "{}").flatMap(ClaimReader::read);
        Optional<Claim> to = map.require("to", "{}").flatMap(ClaimReader::read);
        return from.flatMap(before -> to.map(after -> new ClaimSet(before, after)));
    }

    private static Optional<Change> finding(YamlNode node, String kind) {
        return named(
                node,
                kind,
                "finding",
                (id, part) -> ValueReader.finding(part, id, part),
                (Optional<FindingEntry> from, FindingEntry to) -> new FindingSet(from, to),
                FindingCleared::new);
    }

    private static Optional<Change> measurement(YamlNode node, String kind) {
        return named(
                node,
                kind,
                "measurement",
                ValueReader::measurement,
                (Optional<Measurement> from, Measurement to) -> new MeasurementSet(from, to),
                MeasurementCleared::new);
    }

    private static Optional<Change> evidence(YamlNode node, String kind) {
        return named(
                node,
                kind,
                "evidence",
                (id, part) -> ValueReader.evidence(part, id, part),
                (Optional<Evidence> from, Evidence to) -> new EvidenceSet(from, to),
                EvidenceRemoved::new);
    }

    private static Optional<Change> noteAdded(YamlMap map) {
        return Built.at(map.owner(), () -> new NoteAdded(map.written("note")));
    }

    private interface Part<T> {
        Optional<T> read(String id, YamlNode part);
    }

    private interface Setting<T> {
        Change of(Optional<T> from, T to);
    }

    private interface Clearing<T> {
        Change of(String id, Optional<T> from);
    }

    private static <T> Optional<Change> named(
            YamlNode node, String kind, String key, Part<T> part, Setting<T> setting, Clearing<T> clearing) {
        boolean clears = !kind.endsWith("-set");
        YamlMap map = map(node, kind, clears ? List.of(key, "from") : List.of(key, "from", "to"));
        map.require(key, "its id");
        String id = map.written(key);
        Optional<T> from = map.get("from").flatMap(n -> part.read(id, n));
        return clears
                ? Optional.of(clearing.of(id, from))
                : map.require("to", "what stands now")
                        .flatMap(n -> part.read(id, n))
                        .map(to -> setting.of(from, to));
    }

    private static Optional<Attachment> attachment(YamlNode node, String kind) {
        return ValueReader.attachment(map(node, kind, ValueReader.ATTACHMENT));
    }

    private static Optional<Change> corrected(YamlMap map) {
        return map.require("change", "what was corrected")
                .flatMap(ChangeReader::change)
                .flatMap(change ->
                        Built.at(map.owner(), () -> new CorrectedAfterSignOff(map.written("reason"), change)));
    }
}
