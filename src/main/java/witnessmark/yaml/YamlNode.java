package witnessmark.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A value in a YAML document with its place. Each reading method notes a fault and answers empty where it does not fit. */
public final class YamlNode {
    private static final int DEEPEST = 20;
    private static final int LONGEST_TEXT = 20_000;

    private final String file;
    private final Tree tree;
    private final Faults faults;
    private final int depth;

    YamlNode(String file, Tree tree, Faults faults, int depth) {
        this.file = file;
        this.tree = tree;
        this.faults = faults;
        this.depth = depth;
    }

    /** Notes a fault at this value's place. */
    public void fault(String what, String mend) {
        faults.add(new Fault(file, tree.line(), tree.column(), what, mend));
    }

    Tree tree() {
        return tree;
    }

    public int line() {
        return tree.line();
    }

    public boolean isMap() {
        return tree instanceof Tree.Entries;
    }

    public boolean isList() {
        return tree instanceof Tree.Items;
    }

    /** This value as a map of named values; an empty map after a fault. */
    public YamlMap map(String what) {
        if (tree instanceof Tree.Entries mapping && deepEnough()) {
            return YamlMap.of(this, mapping, child -> new YamlNode(file, child, faults, depth + 1));
        }
        if (!isMap()) {
            fault(what + " must be a map of names and values", "write 'name: value' lines below it");
        }
        return YamlMap.empty(this);
    }

    /** This value's items; none after a fault. */
    public List<YamlNode> items(String what) {
        if (tree instanceof Tree.Items sequence && deepEnough()) {
            List<YamlNode> items = new ArrayList<>();
            sequence.items().forEach(child -> items.add(new YamlNode(file, child, faults, depth + 1)));
            return items;
        }
        if (!isList()) {
            fault(what + " must be a list", "write '- item' lines or [item, item]");
        }
        return List.of();
    }

    /** This value as text without control characters other than line breaks and tabs. */
    public Optional<String> text(String what) {
        if (!(tree instanceof Tree.Text scalar)) {
            fault(what + " must be a text", "write it in one value, in quotes if it holds ': ' or '#'");
            return Optional.empty();
        }
        String value = scalar.value();
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
