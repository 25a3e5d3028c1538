package witnessmark.casefile.yaml;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Vehicle;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;

/** Reads the parts of a case; each is empty, with its faults noted, if it cannot be taken. */
final class ValueReader {
    private static final int MOST_INPUTS = 200;
    private static final List<String> VEHICLE =
            List.of("unit", "serial", "duty", "odometer-km", "km-since-new", "km-since-repair", "repair-note");
    private static final List<String> GEARBOX =
            List.of("forward-ratios", "range", "splitter", "countershafts", "linkage", "oil-pump", "oil-cooler", "pto");
    private static final List<String> MEASUREMENT =
            List.of("value", "unit", "low", "high", "limit-unit", "limit-from", "note");
    private static final List<String> EVIDENCE =
            List.of("kind", "summary", "formula", "inputs", "file", "findings", "likelihoods");

    private final FaultList faults;

    ValueReader(FaultList faults) {
        this.faults = faults;
    }

    Optional<Vehicle> vehicle(Node node) {
        return Fields.of(node, "vehicle", VEHICLE, faults)
                .flatMap(f -> faults.built(
                        node,
                        () -> new Vehicle(
                                f.text("unit"),
                                f.text("serial"),
                                f.text("duty"),
                                f.number("odometer-km"),
                                f.number("km-since-new"),
                                f.number("km-since-repair"),
                                f.text("repair-note"))));
    }

    Optional<Layout> gearbox(Node node) {
        return Fields.of(node, "gearbox", GEARBOX, faults)
                .flatMap(f -> faults.built(
                        f.node("forward-ratios").orElse(node),
                        () -> new Layout(
                                whole(f, "forward-ratios"),
                                f.word("range", Layout.RangeShift.class),
                                f.word("splitter", Layout.Splitter.class),
                                f.word("countershafts", Layout.Countershafts.class),
                                f.word("linkage", Layout.Linkage.class),
                                f.word("oil-pump", Layout.Fitted.class),
                                f.word("oil-cooler", Layout.Fitted.class),
                                f.word("pto", Layout.Fitted.class))));
    }

    private OptionalInt whole(Fields f, String key) {
        OptionalDouble number = f.number(key);
        if (number.isPresent() && (number.getAsDouble() % 1 != 0 || Math.abs(number.getAsDouble()) > 1e6)) {
            f.node(key).ifPresent(n -> faults.add(n, key + ": this is not a whole number", "write one such as 13"));
            return OptionalInt.empty();
        }
        return number.isPresent() ? OptionalInt.of((int) number.getAsDouble()) : OptionalInt.empty();
    }

    /** A finding written as its state alone, or as a map of state and note. */
    Optional<FindingEntry> finding(Node name, String id, Node value) {
        if (value instanceof ScalarNode) {
            return state(id, value).flatMap(state -> faults.built(name, () -> new FindingEntry(id, state)));
        }
        return Fields.of(value, "finding '" + CheckedText.shown(id) + "'", List.of("state", "note"), faults)
                .flatMap(f -> f.required("state", "present")
                        .flatMap(node -> state(id, node))
                        .flatMap(state -> faults.built(name, () -> new FindingEntry(id, state, f.text("note")))));
    }

    Optional<FindingState> state(String id, Node node) {
        return Fields.text(node, "finding '" + CheckedText.shown(id) + "'", faults)
                .flatMap(text -> {
                    Optional<FindingState> state = FindingState.parse(text);
                    if (state.isEmpty()) {
                        faults.add(
                                node,
                                "finding '" + CheckedText.shown(id) + "': '" + CheckedText.shown(text)
                                        + "' is not a state",
                                "use one of " + FindingState.WORDS);
                    }
                    return state;
                });
    }

    /** What a finding says, for a message; empty if it says nothing that can be told. */
    static String told(Node value) {
        if (value instanceof ScalarNode scalar) {
            return CheckedText.shown(scalar.getValue());
        }
        if (value instanceof MappingNode mapping) {
            return mapping.getValue().stream()
                    .filter(t -> t.getKeyNode() instanceof ScalarNode key
                            && key.getValue().equals("state"))
                    .findFirst()
                    .map(t -> told(t.getValueNode()))
                    .orElse("");
        }
        return "";
    }

    Optional<Measurement> measurement(Node name, String id, Node value) {
        return Fields.of(value, "measurement '" + CheckedText.shown(id) + "'", MEASUREMENT, faults)
                .flatMap(f -> {
                    f.required("value", "3.9");
                    f.required("unit", "bar");
                    OptionalDouble number = f.number("value");
                    Optional<Unit> unit = f.unit("unit");
                    Optional<Limits> limits = unit.flatMap(u -> limits(f, u));
                    if (number.isEmpty() || unit.isEmpty()) {
                        return Optional.empty();
                    }
                    return faults.built(
                            f.node("limit-unit").orElse(value),
                            () -> new Measurement(
                                    CheckedText.id("measurement", id),
                                    number.getAsDouble(),
                                    unit.get(),
                                    limits,
                                    f.text("note")));
                });
    }

    private Optional<Limits> limits(Fields f, Unit valueUnit) {
        Optional<Node> where = f.node("low")
                .or(() -> f.node("high"))
                .or(() -> f.node("limit-from"))
                .or(() -> f.node("limit-unit"));
        if (where.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble low = f.number("low");
        OptionalDouble high = f.number("high");
        Optional<Unit> unit = f.has("limit-unit") ? f.unit("limit-unit") : Optional.of(valueUnit);
        boolean atFault = (f.has("low") && low.isEmpty()) || (f.has("high") && high.isEmpty());
        if (atFault || unit.isEmpty()) {
            return Optional.empty();
        }
        return faults.built(where.get(), () -> new Limits(low, high, unit.get(), f.text("limit-from")));
    }

    /** What an attachment may hold. */
    static final List<String> ATTACHMENT =
            List.of("name", "media-type", "sha256", "size", "finding", "original-sha256");

    Optional<Attachment> attachment(Node node) {
        return Fields.of(node, "attachment", ATTACHMENT, faults).flatMap(f -> attachment(f, node));
    }

    private static Optional<String> optional(Fields f, String key) {
        return f.has(key) ? Optional.of(f.text(key)) : Optional.empty();
    }

    Optional<Attachment> attachment(Fields f, Node node) {
        f.required("name", "cone.jpg");
        f.required("media-type", "image/jpeg");
        f.required("sha256", "the hash of the file");
        f.required("size", "the bytes of the file");
        OptionalDouble size = f.number("size");
        if (size.isEmpty() || !f.has("name") || !f.has("media-type") || !f.has("sha256")) {
            return Optional.empty();
        }
        return faults.built(
                node,
                () -> new Attachment(
                        f.text("name"),
                        f.text("media-type"),
                        f.text("sha256"),
                        (long) size.getAsDouble(),
                        optional(f, "finding"),
                        optional(f, "original-sha256")));
    }

    Optional<Evidence> evidence(Node name, String id, Node value) {
        return Fields.of(value, "evidence '" + CheckedText.shown(id) + "'", EVIDENCE, faults)
                .flatMap(f -> {
                    f.required("kind", "computed");
                    Optional<Evidence.Kind> kind = f.word("kind", Evidence.Kind.class);
                    Map<String, String> inputs = inputs(f);
                    Optional<Evidence.SourceFile> file = f.node("file").flatMap(this::sourceFile);
                    Map<String, FindingState> states = states(f);
                    Map<String, Likelihood> likelihoods = likelihoods(f);
                    return kind.flatMap(k -> faults.built(
                            name,
                            () -> new Evidence(
                                    id, k, f.text("summary"), f.text("formula"), inputs, file, states, likelihoods)));
                });
    }

    private Map<String, String> inputs(Fields f) {
        Map<String, String> inputs = new LinkedHashMap<>();
        f.node("inputs").ifPresent(node -> NamedNodes.of(node, "input", MOST_INPUTS, ValueReader::told, faults)
                .forEach((input, tuple) ->
                        Fields.text(tuple.getValueNode(), "input", faults).ifPresent(text -> inputs.put(input, text))));
        return inputs;
    }

    private Optional<Evidence.SourceFile> sourceFile(Node node) {
        return Fields.of(node, "file", List.of("name", "sha256"), faults)
                .flatMap(f -> faults.built(node, () -> new Evidence.SourceFile(f.text("name"), f.text("sha256"))));
    }

    private Map<String, Likelihood> likelihoods(Fields f) {
        Map<String, Likelihood> likelihoods = new LinkedHashMap<>();
        f.node("likelihoods").ifPresent(node -> NamedNodes.of(node, "finding", MOST_INPUTS, ValueReader::told, faults)
                .forEach((finding, tuple) ->
                        likelihood(tuple.getValueNode()).ifPresent(l -> likelihoods.put(finding, l))));
        return likelihoods;
    }

    private Optional<Likelihood> likelihood(Node node) {
        return Fields.of(node, "likelihood", List.of("if-present", "if-absent"), faults)
                .flatMap(f -> faults.built(
                        node,
                        () -> new Likelihood(
                                f.number("if-present").orElse(0),
                                f.number("if-absent").orElse(0))));
    }

    private Map<String, FindingState> states(Fields f) {
        Map<String, FindingState> states = new LinkedHashMap<>();
        f.node("findings").ifPresent(node -> NamedNodes.of(node, "finding", MOST_INPUTS, ValueReader::told, faults)
                .forEach((finding, tuple) ->
                        state(finding, tuple.getValueNode()).ifPresent(s -> states.put(finding, s))));
        return states;
    }

    /** The tuple's name as text. */
    static String name(NodeTuple tuple) {
        return ((ScalarNode) tuple.getKeyNode()).getValue();
    }
}
