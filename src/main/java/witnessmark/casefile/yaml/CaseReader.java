package witnessmark.casefile.yaml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.Stamp;

/** Reads a case from its YAML form, naming every fault with line, column and mend. */
public final class CaseReader {
    private static final List<String> KEYS = List.of(
            "case",
            "title",
            "complaint",
            "vehicle",
            "gearbox",
            "driver-account",
            "findings",
            "measurements",
            "notes",
            "evidence",
            "attachments",
            "work-done",
            "interview-position",
            "signed-off",
            "expected",
            "history");

    private final Bounds bounds;

    public CaseReader() {
        this(Bounds.USUAL);
    }

    public CaseReader(Bounds bounds) {
        this.bounds = bounds;
    }

    /** The case in the file; throws {@link CaseFileFaults} if it cannot be read or taken. */
    public CaseDocument read(Path file) {
        String name = file.toString();
        try (InputStream in = Files.newInputStream(file)) {
            return read(name, in.readNBytes(bounds.bytes() + 1));
        } catch (NoSuchFileException e) {
            throw unreadable(name, "there is no such file", "check the name");
        } catch (IOException e) {
            throw unreadable(
                    name,
                    Files.isDirectory(file) ? "this is a folder" : "the file cannot be read",
                    Files.isDirectory(file) ? "name one case file in it" : "check that you may read it");
        }
    }

    /** The case in the bytes, {@code name} standing for the file in messages. */
    public CaseDocument read(String name, byte[] bytes) {
        if (bytes.length > bounds.bytes()) {
            throw unreadable(
                    name,
                    "the file is larger than " + bounds.bytes() + " bytes",
                    "keep photographs and logs outside the case file");
        }
        FaultList faults = new FaultList(name);
        Node root = PlainYaml.read(bytes, bounds, faults);
        Optional<CaseDocument> document =
                Fields.of(root, "a case", KEYS, faults).flatMap(fields -> document(fields, faults));
        faults.throwIfAny();
        return document.orElseThrow(faults::failure);
    }

    private static CaseFileFaults unreadable(String name, String what, String mend) {
        return new CaseFileFaults(List.of(new Fault(name, 1, 1, what, mend)));
    }

    private Optional<CaseDocument> document(Fields fields, FaultList faults) {
        Optional<CaseId> id = fields.required("case", "grinds-into-low")
                .flatMap(node ->
                        Fields.text(node, "case", faults).flatMap(text -> faults.built(node, () -> new CaseId(text))));
        CaseSheet sheet = new CaseSheet(id.orElse(new CaseId("unnamed")));
        readTexts(fields, sheet);
        readParts(fields, sheet);
        fields.node("signed-off").flatMap(node -> signOff(node, faults)).ifPresent(sheet::signedOff);
        Optional<ExpectedOutcome> expected = fields.node("expected").flatMap(node -> expected(node, faults));
        Optional<CaseHistory> history = fields.node("history").flatMap(node -> history(node, faults));
        if (!faults.isEmpty()) {
            return Optional.empty();
        }
        CaseFile present = sheet.toCaseFile();
        Node where = fields.node("history").or(() -> fields.node("signed-off")).orElse(fields.where());
        return faults.built(where, () -> new CaseDocument(present, expected, history));
    }

    private void readTexts(Fields fields, CaseSheet sheet) {
        for (TextField field : TextField.values()) {
            fields.node(field.word())
                    .ifPresent(node -> fields.faults().built(node, () -> sheet.text(field, fields.text(field.word()))));
        }
    }

    private void readParts(Fields fields, CaseSheet sheet) {
        FaultList faults = fields.faults();
        ValueReader values = new ValueReader(faults);
        fields.node("vehicle").flatMap(values::vehicle).ifPresent(sheet::vehicle);
        fields.node("gearbox").flatMap(values::gearbox).ifPresent(sheet::gearbox);
        for (NodeTuple tuple : named(fields, "findings", "finding")) {
            values.finding(tuple.getKeyNode(), ValueReader.name(tuple), tuple.getValueNode())
                    .ifPresent(sheet::finding);
        }
        for (NodeTuple tuple : named(fields, "measurements", "measurement")) {
            values.measurement(tuple.getKeyNode(), ValueReader.name(tuple), tuple.getValueNode())
                    .ifPresent(sheet::measurement);
        }
        for (NodeTuple tuple : named(fields, "evidence", "result")) {
            values.evidence(tuple.getKeyNode(), ValueReader.name(tuple), tuple.getValueNode())
                    .ifPresent(sheet::evidence);
        }
        for (Node node : fields.list("notes", bounds.entries())) {
            Fields.text(node, "note", faults).ifPresent(text -> faults.built(node, () -> sheet.note(text)));
        }
        for (Node node : fields.list("attachments", bounds.entries())) {
            values.attachment(node).ifPresent(a -> faults.built(node, () -> sheet.attachment(a)));
        }
    }

    private Iterable<NodeTuple> named(Fields fields, String key, String thing) {
        return fields.node(key)
                .map(node -> NamedNodes.of(node, thing, bounds.entries(), told(thing), fields.faults())
                        .values())
                .orElse(List.of());
    }

    private static Function<Node, String> told(String thing) {
        return thing.equals("finding") ? ValueReader::told : node -> "";
    }

    private static Optional<SignOff> signOff(Node node, FaultList faults) {
        return Fields.of(node, "signed-off", List.of("who", "time"), faults)
                .flatMap(f -> stamp(f))
                .map(stamp -> new SignOff(stamp.who(), stamp.time()));
    }

    private static Optional<ExpectedOutcome> expected(Node node, FaultList faults) {
        return Fields.of(node, "expected", List.of("verdict", "first", "within-three", "contradiction"), faults)
                .flatMap(f -> f.required("verdict", "undetermined")
                        .flatMap(v -> faults.built(
                                node,
                                () -> new ExpectedOutcome(
                                        f.text("verdict"),
                                        f.texts("first", 100),
                                        f.texts("within-three", 100),
                                        f.truth("contradiction").orElse(false)))));
    }

    private Optional<CaseHistory> history(Node node, FaultList faults) {
        List<Entry> entries = new ArrayList<>();
        String before = CanonicalText.NO_HASH;
        for (Node part : Fields.list(node, "history", bounds.historyEntries(), faults)) {
            Optional<Entry> entry = entry(part, before, faults);
            entry.ifPresent(entries::add);
            before = entry.map(Entry::hash).orElse(before);
        }
        if (!faults.isEmpty()) {
            return Optional.empty();
        }
        Optional<CaseHistory> history = faults.built(node, () -> CaseHistory.of(entries));
        history.ifPresent(h -> {
            if (h.verify() instanceof ChainCheck.Broken broken) {
                faults.add(node, "history: " + broken.why(), "bring the file back as it was exported");
            }
        });
        return history;
    }

    private static Optional<Entry> entry(Node node, String before, FaultList faults) {
        return Fields.of(node, "history entry", List.of("entry", "time", "who", "change", "hash"), faults)
                .flatMap(f -> {
                    f.required("entry", "1");
                    Optional<Stamp> stamp = stamp(f);
                    Optional<Change> change =
                            f.required("change", "what was done").flatMap(n -> new ChangeReader(faults).change(n));
                    f.required("hash", "the hash of the entry");
                    return stamp.flatMap(s -> change.map(
                            c -> new Entry((long) f.number("entry").orElse(0), s, c, before, f.text("hash"))));
                });
    }

    private static Optional<Stamp> stamp(Fields f) {
        Optional<Node> who = f.required("who", "a name");
        Optional<Node> time = f.required("time", "\"2026-03-02T08:15:00Z\"");
        if (who.isEmpty() || time.isEmpty()) {
            return Optional.empty();
        }
        String text = f.text("time");
        try {
            Instant instant = Instant.parse(text);
            return f.faults().built(who.get(), () -> new Stamp(instant, f.text("who")));
        } catch (DateTimeParseException e) {
            f.faults()
                    .add(
                            time.get(),
                            "time: '" + CheckedText.shown(text) + "' is not a time",
                            "write it as \"2026-03-02T08:15:00Z\"");
            return Optional.empty();
        }
    }
}
