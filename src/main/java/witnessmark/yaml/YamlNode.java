package witnessmark.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** A value in a YAML document with its place. Each reading method notes a fault and answers empty where it does not fit. */
public final class YamlNode {
    private static final int DEEPEST = 20;
    private static final int LONGEST_TEXT = 20_000;

    private final String file;
    private final Node node;
    private final Faults faults;
    private final int depth;

    YamlNode(String file, Node node, Faults faults, int depth) {
        this.file = file;
        this.node = node;
        this.faults = faults;
        this.depth = depth;
    }

    /** Notes a fault at this value's place. */
    public void fault(String what, String mend) {
        Optional<Mark> mark = node.getStartMark();
        faults.add(new Fault(
                file,
                mark.map(m -> m.getLine() + 1).orElse(0),
                mark.map(m -> m.getColumn() + 1).orElse(0),
                what,
                mend));
    }

    public int line() {
        return node.getStartMark().map(m -> m.getLine() + 1).orElse(0);
    }

    public boolean isMap() {
        return node instanceof MappingNode;
    }

    public boolean isList() {
        return node instanceof SequenceNode;
    }

    /** This value as a map of named values; an empty map after a fault. */
    public YamlMap map(String what) {
        if (node instanceof MappingNode mapping && deepEnough()) {
            return YamlMap.of(this, mapping, child -> new YamlNode(file, child, faults, depth + 1));
        }
        if (!isMap()) {
            fault(what + " must be a map of names and values", "write 'name: value' lines below it");
        }
        return YamlMap.empty(this);
    }

    /** This value's items; none after a fault. */
    public List<YamlNode> items(String what) {
        if (node instanceof SequenceNode sequence && deepEnough()) {
            List<YamlNode> items = new ArrayList<>();
            sequence.getValue().forEach(child -> items.add(new YamlNode(file, child, faults, depth + 1)));
            return items;
        }
        if (!isList()) {
            fault(what + " must be a list", "write '- item' lines or [item, item]");
        }
        return List.of();
    }

    /** This value as text without control characters other than line breaks and tabs. */
    public Optional<String> text(String what) {
        if (!(node instanceof ScalarNode scalar)) {
            fault(what + " must be a text", "write it in one value, in quotes if it holds ': ' or '#'");
            return Optional.empty();
        }
        String value = scalar.getValue();
        if (value.length() > LONGEST_TEXT) {
            fault(what + " has " + value.length() + " characters", "at most " + LONGEST_TEXT + " are taken");
            return Optional.empty();
        }
        if (value.chars().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\t')) {
            fault(what + " holds a control character", "take it out; only line breaks and tabs are allowed");
            return Optional.empty();
        }
        return Optional.of(value.strip());
    }

    /** This value as a finite number. */
    public Optional<Double> number(String what) {
        Optional<String> text = text(what);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            double value = Double.parseDouble(text.get());
            if (Double.isFinite(value) && !text.get().matches(".*[dDfF]$")) {
                return Optional.of(value);
            }
        } catch (NumberFormatException e) {
            // told below, with the place
        }
        fault(what + ": '" + shorten(text.get()) + "' is not a number", "write digits, with '.' for decimals");
        return Optional.empty();
    }

    /** This value as true or false. */
    public Optional<Boolean> flag(String what) {
        Optional<String> text = text(what);
        if (text.isPresent() && (text.get().equals("true") || text.get().equals("false"))) {
            return Optional.of(Boolean.valueOf(text.get()));
        }
        text.ifPresent(t -> fault(what + ": '" + shorten(t) + "' is neither true nor false", "write true or false"));
        return Optional.empty();
    }

    static String shorten(String text) {
        return text.length() > 60 ? text.substring(0, 60) + "…" : text;
    }

    private boolean deepEnough() {
        if (depth >= DEEPEST) {
            fault("is nested deeper than " + DEEPEST + " levels", "flatten it");
            return false;
        }
        return true;
    }
}
