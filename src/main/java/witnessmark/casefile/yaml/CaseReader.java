package witnessmark.casefile.yaml;

import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.Stamp;
import witnessmark.yaml.Faults;
import witnessmark.yaml.FaultyInput;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;
import witnessmark.yaml.YamlReader;

/** Reads a case from its YAML form, naming every fault with line, column and mend. */
public final class CaseReader {
    private static final List<String> KEYS = List.of(
            "case",
            "title",
            "complaint",
            "vehicle",
            "gearbox",
            "claim",
            "driver-account",
            "findings",
            "measurements",
            "notes",
            "evidence",
            "attachments",
            "work-done",
            "unit-state",
            "voided",
            "interview-position",
            "signed-off",
            "expected",
            "history");

    static final int MOST_BYTES = 2_000_000;
    private static final int MOST_PARTS = 5_000;
    private static final int MOST_ENTRIES = 50_000;
    private static final int MOST_EXPECTED = 100;

    private final YamlReader yaml = new YamlReader(MOST_BYTES);

    /** The case in the file; throws {@link FaultyInput} if it cannot be read or taken. */
    public CaseDocument read(Path file) {
        Faults faults = new Faults();
        return document(yaml.read(file, faults), faults);
    }

    /** The case in the bytes, {@code name} standing for the file in messages. */
    public CaseDocument read(String name, byte[] bytes) {
        Faults faults = new Faults();
        return document(yaml.read(name, bytes, faults), faults);
    }

    private static CaseDocument document(Optional<YamlNode> root, Faults faults) {
        Optional<CaseDocument> document = root.flatMap(node -> document(node.map("a case", KEYS), faults));
        faults.throwIfAny();
        return document.orElseThrow();
    }

    private static Optional<CaseDocument> document(YamlMap map, Faults faults) {
        Optional<CaseId> id = map.require("case", "grinds-into-low")
                .flatMap(node -> node.written("case").flatMap(text -> Built.at(node, () -> new CaseId(text))));
        CaseSheet sheet = new CaseSheet(id.orElse(new CaseId("unnamed")));
        readTexts(map, sheet);
        readParts(map, sheet);
        map.get("signed-off").flatMap(CaseReader::signOff).ifPresent(sheet::signedOff);
        Optional<ExpectedOutcome> expected = map.get("expected").flatMap(CaseReader::expected);
        Optional<CaseHistory> history = map.get("history").flatMap(node -> history(node, faults));
        if (!faults.isEmpty()) {
            return Optional.empty();
        }
        CaseFile present = sheet.toCaseFile();
        YamlNode where = map.get("history").or(() -> map.get("signed-off")).orElse(map.owner());
        return Built.at(where, () -> new CaseDocument(present, expected, history));
    }

    private static void readTexts(YamlMap map, CaseSheet sheet) {
        for (TextField field : TextField.values()) {
            map.get(field.word()).ifPresent(node -> node.written(field.word())
                    .ifPresent(text -> Built.at(node, () -> sheet.text(field, text))));
        }
    }

    private static void readParts(YamlMap map, CaseSheet sheet) {
        map.get("vehicle").flatMap(ValueReader::vehicle).ifPresent(sheet::vehicle);
        map.get("gearbox").flatMap(ValueReader::gearbox).ifPresent(sheet::gearbox);
        map.get("claim").flatMap(ClaimReader::read).ifPresent(sheet::claim);
        map.get("findings").ifPresent(node -> ValueReader.findings(node, MOST_PARTS)
                .entries()
                .forEach(e -> ValueReader.finding(e.key(), e.name(), e.value()).ifPresent(sheet::finding)));
        map.get("measurements").ifPresent(node -> node.named("measurement", MOST_PARTS, value -> "")
                .entries()
                .forEach(e -> ValueReader.measurement(e.name(), e.value()).ifPresent(sheet::measurement)));
        map.get("evidence").ifPresent(node -> node.named("result", MOST_PARTS, value -> "")
                .entries()
                .forEach(e -> ValueReader.evidence(e.key(), e.name(), e.value()).ifPresent(sheet::evidence)));
        for (YamlNode node : items(map, "notes", MOST_PARTS)) {
            node.written("note").ifPresent(text -> Built.at(node, () -> sheet.note(text)));
        }
        for (YamlNode node : items(map, "attachments", MOST_PARTS)) {
            ValueReader.attachment(node.map("attachment", ValueReader.ATTACHMENT))
                    .ifPresent(attachment -> Built.at(node, () -> sheet.attachment(attachment)));
        }
    }

    private static List<YamlNode> items(YamlMap map, String key, int most) {
        return map.get(key).map(node -> node.items(key, most)).orElse(List.of());
    }

    private static Optional<SignOff> signOff(YamlNode node) {
        YamlMap map = node.map("signed-off", List.of("who", "time", "judgement"));
        Optional<SignedJudgement> judgement = map.get("judgement")
                .flatMap(n -> SignedReader.read(n.map("the signed judgement", SignedReader.FIELDS)));
        return stamp(map).map(stamp -> new SignOff(stamp.who(), stamp.time(), judgement));
    }

    private static Optional<ExpectedOutcome> expected(YamlNode node) {
        YamlMap map = node.map("expected", List.of("verdict", "first", "within-three", "contradiction"));
        return map.require("verdict", "undetermined")
                .flatMap(v -> Built.at(
                        node,
                        () -> new ExpectedOutcome(
                                map.written("verdict"),
                                causes(map, "first"),
                                causes(map, "within-three"),
                                map.flagOr("contradiction", false))));
    }

    private static List<String> causes(YamlMap map, String key) {
        return items(map, key, MOST_EXPECTED).stream()
                .flatMap(item -> item.written(key).stream())
                .toList();
    }

    private static Optional<CaseHistory> history(YamlNode node, Faults faults) {
        List<Entry> entries = new ArrayList<>();
        String before = CanonicalText.NO_HASH;
        for (YamlNode part : node.items("history", MOST_ENTRIES)) {
            Optional<Entry> entry = entry(part, before);
            entry.ifPresent(entries::add);
            before = entry.map(Entry::hash).orElse(before);
        }
        if (!faults.isEmpty()) {
            return Optional.empty();
        }
        Optional<CaseHistory> history = Built.at(node, () -> CaseHistory.of(entries));
        history.ifPresent(h -> {
            if (h.verify() instanceof ChainCheck.Broken broken) {
                node.fault("history: " + broken.why(), "bring the file back as it was exported");
            }
        });
        return history;
    }

    private static Optional<Entry> entry(YamlNode node, String before) {
        YamlMap map = node.map("history entry", List.of("entry", "time", "who", "change", "hash"));
        map.require("entry", "1");
        Optional<Stamp> stamp = stamp(map);
        Optional<Change> change = map.require("change", "what was done").flatMap(ChangeReader::change);
        map.require("hash", "the hash of the entry");
        long number = (long) map.numberIfGiven("entry").orElse(0);
        String hash = map.written("hash");
        return stamp.flatMap(s -> change.map(c -> new Entry(number, s, c, before, hash)));
    }

    private static Optional<Stamp> stamp(YamlMap map) {
        Optional<YamlNode> who = map.require("who", "a name");
        Optional<YamlNode> time = map.require("time", "\"2026-03-02T08:15:00Z\"");
        Optional<Instant> instant = time.flatMap(CaseReader::instant);
        return who.flatMap(w -> instant.flatMap(i -> Built.at(w, () -> new Stamp(i, map.written("who")))));
    }

    private static Optional<Instant> instant(YamlNode node) {
        Optional<String> text = node.written("time");
        try {
            return text.map(Instant::parse);
        } catch (DateTimeParseException e) {
            node.fault("time: '" + node.shown() + "' is not a time", "write it as \"2026-03-02T08:15:00Z\"");
            return Optional.empty();
        }
    }
}
