package witnessmark.casefile.yaml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.EarlierSample;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Reckoned;
import witnessmark.casefile.Teller;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.logged.LoggedEvidence;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.LayoutFeatures;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads the parts of a case; each is empty, with its faults noted, if it cannot be taken. */
final class ValueReader {
    /** What an attachment may hold. */
    static final List<String> ATTACHMENT =
            List.of("name", "media-type", "sha256", "size", "finding", "original-sha256");

    /** The files of a job over many logs are inputs too, and must be read again. */
    private static final int MOST_INPUTS = LoggedEvidence.MOST_FILES + 200;

    private static final String RATIOS = "forward-ratios";
    private static final List<String> VEHICLE =
            List.of("unit", "serial", "duty", "odometer-km", "km-since-new", "km-since-repair", "repair-note");
    private static final List<String> GEARBOX = gearboxKeys();
    private static final List<String> MEASUREMENT =
            List.of("value", "unit", "low", "high", "limit-unit", "limit-from", "earlier", "note");
    private static final List<String> EARLIER = List.of("value", "day", "odometer-km");
    private static final List<String> EVIDENCE =
            List.of("kind", "summary", "formula", "inputs", "file", "findings", "likelihoods", "record", "reckoned");
    private static final List<String> RECKONED = List.of("value", "unit", "bound", "bound-unit", "outcome");

    private ValueReader() {}

    private static List<String> gearboxKeys() {
        List<String> keys = new ArrayList<>(List.of(RATIOS));
        keys.addAll(LayoutFeatures.names());
        return List.copyOf(keys);
    }

    static Optional<Vehicle> vehicle(YamlNode node) {
        YamlMap map = node.map("vehicle", VEHICLE);
        return Built.at(
                node,
                () -> new Vehicle(
                        map.written("unit"),
                        map.written("serial"),
                        map.written("duty"),
                        map.numberIfGiven("odometer-km"),
                        map.numberIfGiven("km-since-new"),
                        map.numberIfGiven("km-since-repair"),
                        map.written("repair-note")));
    }

    static Optional<Layout> gearbox(YamlNode node) {
        YamlMap map = node.map("gearbox", GEARBOX);
        Map<String, String> words = new LinkedHashMap<>();
        for (String feature : LayoutFeatures.names()) {
            map.one(feature, LayoutFeatures.allowed(feature))
                    .ifPresent(value -> words.put(feature, EnumWord.of(value)));
        }
        OptionalInt ratios = whole(map, RATIOS);
        return Built.at(map.get(RATIOS).orElse(node), () -> LayoutFeatures.layout(ratios, words));
    }

    private static OptionalInt whole(YamlMap map, String key) {
        OptionalDouble number = map.numberIfGiven(key);
        if (number.isPresent() && (number.getAsDouble() % 1 != 0 || Math.abs(number.getAsDouble()) > 1e6)) {
            map.get(key).ifPresent(n -> n.fault(key + ": this is not a whole number", "write one such as 13"));
            return OptionalInt.empty();
        }
        return number.isPresent() ? OptionalInt.of((int) number.getAsDouble()) : OptionalInt.empty();
    }

    /** A finding written as its state alone, or as a map of state and note. */
    static Optional<FindingEntry> finding(YamlNode name, String id, YamlNode value) {
        if (!value.isMap()) {
            return state(id, value).flatMap(state -> Built.at(name, () -> new FindingEntry(id, state)));
        }
        YamlMap map = value.map(called("finding", id), List.of("state", "note", "told-by", "gear"));
        return map.require("state", "present")
                .flatMap(node -> state(id, node))
                .flatMap(state ->
                        Built.at(name, () -> new FindingEntry(id, state, map.written("note"), toldBy(map), gear(map))));
    }

    private static Optional<FindingState> state(String id, YamlNode node) {
        return node.one(called("finding", id), FindingState::parse, "a state", FindingState.WORDS);
    }

    private static String called(String thing, String id) {
        return thing + " '" + CheckedText.shown(id) + "'";
    }

    private static Optional<String> gear(YamlMap map) {
        return map.has("gear") ? Optional.of(map.written("gear")) : Optional.empty();
    }

    private static Optional<Teller> toldBy(YamlMap map) {
        return map.get("told-by").flatMap(node -> node.one("told-by", Teller::parse, "a teller", Teller.WORDS));
    }

    /** The findings of a map, written by their state alone or with a note. */
    static YamlMap findings(YamlNode node, int most) {
        return node.named("finding", most, ValueReader::told);
    }

    /** What a finding says, for a message; empty if it says nothing that can be told. */
    private static String told(YamlNode value) {
        return value.member("state").orElse(value).shown();
    }

    static Optional<Measurement> measurement(String id, YamlNode value) {
        YamlMap map = value.map(called("measurement", id), MEASUREMENT);
        map.require("value", "3.9");
        OptionalDouble number = map.numberIfGiven("value");
        Optional<Unit> unit = map.require("unit", "bar").flatMap(node -> unit("unit", node));
        Optional<Limits> limits = unit.flatMap(u -> limits(map, u));
        if (number.isEmpty() || unit.isEmpty()) {
            return Optional.empty();
        }
        return Built.at(
                map.get("limit-unit").orElse(value),
                () -> new Measurement(
                        CheckedText.id("measurement", id),
                        number.getAsDouble(),
                        unit.get(),
                        limits,
                        earlier(map),
                        map.written("note")));
    }

    private static List<EarlierSample> earlier(YamlMap measurement) {
        return measurement.items("earlier").stream()
                .map(node -> sample(node))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<EarlierSample> sample(YamlNode node) {
        YamlMap map = node.map("an earlier sample", EARLIER);
        map.require("value", "60");
        map.require("day", "2026-03-14");
        OptionalDouble value = map.numberIfGiven("value");
        OptionalDouble odometer = map.numberIfGiven("odometer-km");
        boolean atFault = value.isEmpty() || !map.has("day") || (map.has("odometer-km") && odometer.isEmpty());
        return atFault
                ? Optional.empty()
                : Built.at(
                        map.get("day").orElse(node),
                        () -> new EarlierSample(
                                value.getAsDouble(), EarlierSample.dayOf(map.written("day")), odometer));
    }

    private static Optional<Unit> unit(String key, YamlNode node) {
        return node.one(key, Unit::parse, "a known unit", Unit.SYMBOLS);
    }

    private static Optional<Limits> limits(YamlMap map, Unit valueUnit) {
        Optional<YamlNode> where = map.get("low")
                .or(() -> map.get("high"))
                .or(() -> map.get("limit-from"))
                .or(() -> map.get("limit-unit"));
        if (where.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble low = map.numberIfGiven("low");
        OptionalDouble high = map.numberIfGiven("high");
        Optional<Unit> unit = map.has("limit-unit")
                ? map.get("limit-unit").flatMap(node -> unit("limit-unit", node))
                : Optional.of(valueUnit);
        boolean atFault = (map.has("low") && low.isEmpty()) || (map.has("high") && high.isEmpty());
        if (atFault || unit.isEmpty()) {
            return Optional.empty();
        }
        return Built.at(where.get(), () -> new Limits(low, high, unit.get(), map.written("limit-from")));
    }

    static Optional<Attachment> attachment(YamlMap map) {
        map.require("name", "cone.jpg");
        map.require("media-type", "image/jpeg");
        map.require("sha256", "the hash of the file");
        map.require("size", "the bytes of the file");
        OptionalDouble size = map.numberIfGiven("size");
        if (size.isEmpty() || !map.has("name") || !map.has("media-type") || !map.has("sha256")) {
            return Optional.empty();
        }
        return Built.at(
                map.owner(),
                () -> new Attachment(
                        map.written("name"),
                        map.written("media-type"),
                        map.written("sha256"),
                        (long) size.getAsDouble(),
                        map.get("finding").map(id -> map.written("finding")),
                        map.get("original-sha256").map(hash -> map.written("original-sha256"))));
    }

    static Optional<Evidence> evidence(YamlNode name, String id, YamlNode value) {
        YamlMap map = value.map(called("evidence", id), EVIDENCE);
        map.require("kind", "computed");
        Optional<Evidence.Kind> kind = map.one("kind", EnumWord.all(Evidence.Kind.class));
        Map<String, String> inputs = inputs(map);
        Optional<Evidence.SourceFile> file = map.get("file").flatMap(ValueReader::sourceFile);
        Map<String, FindingState> states = states(map);
        Map<String, Likelihood> likelihoods = likelihoods(map);
        Map<String, Reckoned> reckoned = reckoned(map);
        Optional<LogRecord> record = map.get("record").flatMap(LogRecordReader::record);
        return kind.flatMap(k -> Built.at(
                name,
                () -> new Evidence(
                        id,
                        k,
                        map.written("summary"),
                        map.written("formula"),
                        inputs,
                        file,
                        states,
                        likelihoods,
                        record,
                        reckoned)));
    }

    private static Map<String, String> inputs(YamlMap map) {
        Map<String, String> inputs = new LinkedHashMap<>();
        map.get("inputs").ifPresent(node -> node.named("input", MOST_INPUTS, YamlNode::shown)
                .entries()
                .forEach(e -> e.value().written("input").ifPresent(text -> inputs.put(e.name(), text))));
        return inputs;
    }

    private static Optional<Evidence.SourceFile> sourceFile(YamlNode node) {
        YamlMap map = node.map("file", List.of("name", "sha256"));
        return Built.at(node, () -> new Evidence.SourceFile(map.written("name"), map.written("sha256")));
    }

    private static Map<String, Likelihood> likelihoods(YamlMap map) {
        Map<String, Likelihood> likelihoods = new LinkedHashMap<>();
        map.get("likelihoods")
                .ifPresent(node -> findings(node, MOST_INPUTS).entries().forEach(e -> likelihood(e.value())
                        .ifPresent(l -> likelihoods.put(e.name(), l))));
        return likelihoods;
    }

    private static Optional<Likelihood> likelihood(YamlNode node) {
        YamlMap map = node.map("likelihood", List.of("if-present", "if-absent"));
        return Built.at(
                node,
                () -> new Likelihood(
                        map.numberIfGiven("if-present").orElse(0),
                        map.numberIfGiven("if-absent").orElse(0)));
    }

    private static Map<String, Reckoned> reckoned(YamlMap map) {
        Map<String, Reckoned> all = new LinkedHashMap<>();
        map.get("reckoned").ifPresent(node -> node.named("finding", MOST_INPUTS, value -> "")
                .entries()
                .forEach(e -> reckoned(e.name(), e.value()).ifPresent(r -> all.put(e.name(), r))));
        return all;
    }

    private static Optional<Reckoned> reckoned(String id, YamlNode node) {
        YamlMap map = node.map(called("figures reckoned for", id), RECKONED);
        map.require("value", "71.4");
        map.require("bound", "58.3");
        OptionalDouble value = map.numberIfGiven("value");
        OptionalDouble bound = map.numberIfGiven("bound");
        Optional<Unit> unit = map.require("unit", "km/h").flatMap(n -> unit("unit", n));
        Optional<Unit> boundUnit = map.require("bound-unit", "km/h").flatMap(n -> unit("bound-unit", n));
        Optional<Reckoned.Outcome> outcome = map.require("outcome", "present")
                .flatMap(n -> n.one("outcome", Reckoned.Outcome::parse, "an outcome", Reckoned.Outcome.WORDS));
        return value.isEmpty() || bound.isEmpty() || unit.isEmpty() || boundUnit.isEmpty()
                ? Optional.empty()
                : outcome.flatMap(o -> Built.at(
                        node,
                        () -> new Reckoned(value.getAsDouble(), unit.get(), bound.getAsDouble(), boundUnit.get(), o)));
    }

    private static Map<String, FindingState> states(YamlMap map) {
        Map<String, FindingState> states = new LinkedHashMap<>();
        map.get("findings")
                .ifPresent(node -> findings(node, MOST_INPUTS).entries().forEach(e -> state(e.name(), e.value())
                        .ifPresent(s -> states.put(e.name(), s))));
        return states;
    }
}
