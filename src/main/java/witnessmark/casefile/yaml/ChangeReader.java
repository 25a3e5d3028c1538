package witnessmark.casefile.yaml;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.AttachmentRemoved;
import witnessmark.casefile.history.Change;
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
import witnessmark.gearbox.Layout;

/** Reads a change as the canonical text writes it; JSON is YAML, so one reader serves files and store. */
public final class ChangeReader {
    private static final List<String> FROM_TO = List.of("from", "to");

    private final FaultList faults;
    private final ValueReader values;

    ChangeReader(FaultList faults) {
        this.faults = faults;
        this.values = new ValueReader(faults);
    }

    /**
     * The change that the canonical text states.
     *
     * @param where what the text belongs to, for messages
     * @throws CaseFileFaults if it states none
     */
    public static Change read(String where, String text) {
        FaultList faults = new FaultList(where);
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        Node node = PlainYaml.read(bytes, Bounds.USUAL, faults);
        Optional<Change> change = new ChangeReader(faults).change(node);
        faults.throwIfAny();
        return change.orElseThrow(faults::failure);
    }

    Optional<Change> change(Node node) {
        String kind = kind(node);
        return switch (kind) {
            case "opened" -> opened(node);
            case "text-set" -> textSet(node);
            case "vehicle-set" -> fields(node, kind, FROM_TO).flatMap(this::vehicleSet);
            case "gearbox-set" -> fields(node, kind, FROM_TO).flatMap(this::gearboxSet);
            case "finding-set", "finding-cleared" -> finding(node, kind);
            case "measurement-set", "measurement-cleared" -> measurement(node, kind);
            case "evidence-set", "evidence-removed" -> evidence(node, kind);
            case "note-added" -> fields(node, kind, List.of("note"))
                    .flatMap(f -> faults.built(node, () -> new NoteAdded(f.text("note"))));
            case "attachment-added" -> attachment(node, kind).map(AttachmentAdded::new);
            case "attachment-removed" -> attachment(node, kind).map(AttachmentRemoved::new);
            case "signed-off" -> fields(node, kind, List.of()).map(f -> new SignedOff());
            case "corrected-after-sign-off" -> corrected(node, kind);
            default -> {
                faults.add(node, "'" + CheckedText.shown(kind) + "' is not a kind of change", "restore the entry");
                yield Optional.empty();
            }
        };
    }

    private String kind(Node node) {
        if (node instanceof MappingNode mapping) {
            return mapping.getValue().stream()
                    .filter(t -> t.getKeyNode() instanceof ScalarNode key
                            && key.getValue().equals("kind"))
                    .map(t -> t.getValueNode() instanceof ScalarNode value ? value.getValue() : "")
                    .findFirst()
                    .orElse("");
        }
        return "";
    }

    private Optional<Fields> fields(Node node, String kind, List<String> keys) {
        List<String> known = new ArrayList<>(List.of("kind"));
        known.addAll(keys);
        return Fields.of(node, "change '" + kind + "'", known, faults);
    }

    private Optional<Change> opened(Node node) {
        return fields(node, "opened", List.of("case", "title", "complaint", "vehicle", "gearbox"))
                .flatMap(f -> {
                    Optional<Vehicle> vehicle = f.required("vehicle", "{}").flatMap(values::vehicle);
                    Optional<Layout> gearbox = f.required("gearbox", "{}").flatMap(values::gearbox);
                    if (vehicle.isEmpty() || gearbox.isEmpty()) {
                        return Optional.empty();
                    }
                    return faults.built(
                            node,
                            () -> new Opened(
                                    new CaseId(f.text("case")),
                                    f.text("title"),
                                    f.text("complaint"),
                                    vehicle.get(),
                                    gearbox.get()));
                });
    }

    private Optional<Change> textSet(Node node) {
        return fields(node, "text-set", List.of("text", "from", "to")).flatMap(f -> f.required("text", "title")
                .flatMap(name -> f.word("text", TextField.class))
                .flatMap(field -> faults.built(node, () -> new TextSet(field, f.text("from"), f.text("to")))));
    }

    private Optional<Change> vehicleSet(Fields f) {
        Optional<Vehicle> from = f.required("from", "{}").flatMap(values::vehicle);
        Optional<Vehicle> to = f.required("to", "{}").flatMap(values::vehicle);
        return from.flatMap(before -> to.map(after -> new VehicleSet(before, after)));
    }

    private Optional<Change> gearboxSet(Fields f) {
        Optional<Layout> from = f.required("from", "{}").flatMap(values::gearbox);
        Optional<Layout> to = f.required("to", "{}").flatMap(values::gearbox);
        return from.flatMap(before -> to.map(after -> new GearboxSet(before, after)));
    }

    private Optional<Change> finding(Node node, String kind) {
        return named(
                node,
                kind,
                "finding",
                (id, part) -> values.finding(part, id, part),
                (Optional<FindingEntry> from, FindingEntry to) -> new FindingSet(from, to),
                (id, from) -> new FindingCleared(id, from));
    }

    private Optional<Change> measurement(Node node, String kind) {
        return named(
                node,
                kind,
                "measurement",
                (id, part) -> values.measurement(part, id, part),
                (Optional<Measurement> from, Measurement to) -> new MeasurementSet(from, to),
                (id, from) -> new MeasurementCleared(id, from));
    }

    private Optional<Change> evidence(Node node, String kind) {
        return named(
                node,
                kind,
                "evidence",
                (id, part) -> values.evidence(part, id, part),
                (Optional<Evidence> from, Evidence to) -> new EvidenceSet(from, to),
                (id, from) -> new EvidenceRemoved(id, from));
    }

    private interface Part<T> {
        Optional<T> read(String id, Node part);
    }

    private interface Setting<T> {
        Change of(Optional<T> from, T to);
    }

    private interface Clearing<T> {
        Change of(String id, Optional<T> from);
    }

    private <T> Optional<Change> named(
            Node node, String kind, String key, Part<T> part, Setting<T> setting, Clearing<T> clearing) {
        boolean clears = !kind.endsWith("-set");
        return fields(node, kind, clears ? List.of(key, "from") : List.of(key, "from", "to"))
                .flatMap(f -> {
                    String id = f.required(key, "its id").map(n -> f.text(key)).orElse("");
                    Optional<T> from = f.node("from").flatMap(n -> part.read(id, n));
                    return clears
                            ? Optional.of(clearing.of(id, from))
                            : f.required("to", "what stands now")
                                    .flatMap(n -> part.read(id, n))
                                    .map(to -> setting.of(from, to));
                });
    }

    private Optional<Attachment> attachment(Node node, String kind) {
        return fields(node, kind, ValueReader.ATTACHMENT).flatMap(f -> values.attachment(f, node));
    }

    private Optional<Change> corrected(Node node, String kind) {
        return fields(node, kind, List.of("reason", "change")).flatMap(f -> f.required("change", "what was corrected")
                .flatMap(this::change)
                .flatMap(c -> faults.built(node, () -> new CorrectedAfterSignOff(f.text("reason"), c))));
    }
}
