package witnessmark.casefile.yaml;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CheckedText;
import witnessmark.gearbox.Unit;

/** The fields of one map in the file; each is asked for as what it must be, and a fault is noted where it is not. */
final class Fields {
    private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9]+(\\.[0-9]+)?([eE][-+]?[0-9]+)?");

    private final Node where;
    private final String name;
    private final Map<String, Node> values = new LinkedHashMap<>();
    private final FaultList faults;

    private Fields(Node where, String name, FaultList faults) {
        this.where = where;
        this.name = name;
        this.faults = faults;
    }

    /** The fields of a map with known keys; other keys and keys that stand twice are faults. */
    static Optional<Fields> of(Node node, String name, List<String> known, FaultList faults) {
        Optional<Fields> fields = open(node, name, faults);
        fields.ifPresent(f -> ((MappingNode) node).getValue().forEach(tuple -> f.take(tuple, known)));
        return fields;
    }

    private static Optional<Fields> open(Node node, String name, FaultList faults) {
        if (node instanceof MappingNode) {
            return Optional.of(new Fields(node, name, faults));
        }
        faults.add(node, name + " is not a map of keys and values", "write it as key: value");
        return Optional.empty();
    }

    private void take(NodeTuple tuple, List<String> known) {
        Node keyNode = tuple.getKeyNode();
        String key = keyNode instanceof ScalarNode scalar ? scalar.getValue() : "";
        if (!known.contains(key)) {
            faults.add(
                    keyNode,
                    "'" + CheckedText.shown(key) + "' is not a key of " + name,
                    NearestWord.of(key, known)
                            .map(near -> "did you mean '" + near + "'?")
                            .orElse("use one of " + String.join(", ", known)));
            return;
        }
        Node earlier = values.putIfAbsent(key, tuple.getValueNode());
        if (earlier != null) {
            faults.add(
                    keyNode,
                    "key '" + key + "' of " + name + " stands twice (line " + FaultList.line(earlier) + " and here)",
                    "keep one");
        }
    }

    Node where() {
        return where;
    }

    FaultList faults() {
        return faults;
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    Optional<Node> node(String key) {
        return Optional.ofNullable(values.get(key));
    }

    /** The field, with a fault if it is missing. */
    Optional<Node> required(String key, String example) {
        if (!has(key)) {
            faults.add(where, name + " has no '" + key + "'", "add " + key + ": " + example);
        }
        return node(key);
    }

    /** The text, empty if the field is missing or at fault. */
    String text(String key) {
        return node(key).flatMap(node -> text(node, key, faults)).orElse("");
    }

    OptionalDouble number(String key) {
        return node(key).map(node -> number(node, key, faults)).orElse(OptionalDouble.empty());
    }

    Optional<Boolean> truth(String key) {
        return node(key).flatMap(node -> text(node, key, faults).flatMap(text -> {
            if (text.equals("true") || text.equals("false")) {
                return Optional.of(text.equals("true"));
            }
            faults.add(
                    node, key + ": '" + CheckedText.shown(text) + "' is neither true nor false", "write one of them");
            return Optional.empty();
        }));
    }

    Optional<Unit> unit(String key) {
        return node(key).flatMap(node -> text(node, key, faults).flatMap(text -> {
            Optional<Unit> unit = Unit.parse(text);
            if (unit.isEmpty()) {
                String known = Arrays.stream(Unit.values()).map(Unit::symbol).collect(Collectors.joining(" "));
                faults.add(
                        node, key + ": '" + CheckedText.shown(text) + "' is not a known unit", "use one of " + known);
            }
            return unit;
        }));
    }

    /** The constant whose word stands there, such as high-only for HIGH_ONLY. */
    <E extends Enum<E>> Optional<E> word(String key, Class<E> type) {
        return node(key).flatMap(node -> text(node, key, faults).flatMap(text -> {
            E[] all = type.getEnumConstants();
            Optional<E> found = Arrays.stream(all)
                    .filter(c -> CaseForm.word(c).equals(text.strip()))
                    .findFirst();
            if (found.isEmpty()) {
                String words = Arrays.stream(all).map(CaseForm::word).collect(Collectors.joining(", "));
                faults.add(node, key + ": '" + CheckedText.shown(text) + "' is not known", "use one of " + words);
            }
            return found;
        }));
    }

    /** The parts of a list, none if the field is missing or at fault. */
    List<Node> list(String key, int most) {
        return node(key).map(node -> list(node, key, most, faults)).orElse(List.of());
    }

    List<String> texts(String key, int most) {
        List<String> texts = new ArrayList<>();
        list(key, most).forEach(node -> text(node, key, faults).ifPresent(texts::add));
        return texts;
    }

    static List<Node> list(Node node, String name, int most, FaultList faults) {
        if (isEmpty(node)) {
            return List.of();
        }
        if (!(node instanceof SequenceNode sequence)) {
            faults.add(node, name + " is not a list", "write each part on its own line after '- '");
            return List.of();
        }
        if (sequence.getValue().size() > most) {
            faults.add(node, name + " has " + sequence.getValue().size() + " parts", "keep it to " + most + " at most");
            return List.of();
        }
        return sequence.getValue();
    }

    /** Whether nothing stands after the key. */
    static boolean isEmpty(Node node) {
        return node instanceof ScalarNode scalar && scalar.getTag().equals(Tag.NULL);
    }

    /** The text of a single value that can be kept; empty, with a fault, if it is none. */
    static Optional<String> text(Node node, String name, FaultList faults) {
        if (!(node instanceof ScalarNode scalar)) {
            faults.add(node, name + " is not a single value", "write one text or number after it");
            return Optional.empty();
        }
        if (isEmpty(scalar)) {
            faults.add(node, name + " has no value", "write one after it, or take the key out");
            return Optional.empty();
        }
        return faults.built(node, () -> CheckedText.free(name, scalar.getValue()));
    }

    private static OptionalDouble number(Node node, String name, FaultList faults) {
        Optional<String> text = text(node, name, faults).map(String::strip);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        double value = NUMBER.matcher(text.get()).matches() ? Double.parseDouble(text.get()) : Double.NaN;
        if (Double.isFinite(value)) {
            return OptionalDouble.of(value);
        }
        faults.add(
                node,
                name + ": '" + CheckedText.shown(text.get()) + "' is not a number",
                "write digits with a point, such as 3.9, without unit or separators");
        return OptionalDouble.empty();
    }
}
