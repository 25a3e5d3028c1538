package witnessmark.yaml;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;

/** A value in a YAML document with its place. Each reading method notes a fault and answers empty where it does not fit. */
public final class YamlNode {
    private static final int LONGEST_TEXT = 20_000;
    private static final Map<String, Boolean> FLAGS = new TreeMap<>(Map.of("true", true, "false", false));

    private final String file;
    private final Tree tree;
    private final Faults faults;

    YamlNode(String file, Tree tree, Faults faults) {
        this.file = file;
        this.tree = tree;
        this.faults = faults;
    }

    /** Notes a fault at this value's place. */
    public void fault(String what, String mend) {
        faults.add(new Fault(file, tree.line(), tree.column(), what, mend));
    }

    Tree tree() {
        return tree;
    }

    YamlNode child(Tree child) {
        return new YamlNode(file, child, faults);
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

    public boolean isText() {
        return tree instanceof Tree.Text;
    }

    /** What stands first under a name, if this is a map that has it; nothing is noted. */
    public Optional<YamlNode> member(String name) {
        return tree instanceof Tree.Entries mapping
                ? mapping.entries().stream()
                        .filter(e -> e.name() instanceof Tree.Text text
                                && text.value().equals(name))
                        .findFirst()
                        .map(e -> child(e.value()))
                : Optional.empty();
    }

    /** The value as a message may show it; empty if it is no single value. */
    public String shown() {
        return tree instanceof Tree.Text text ? PlainText.shown(text.value()) : "";
    }

    /**
     * This value as a map of fields; after a fault an empty map that does not complain of missing fields.
     *
     * @param what the map in words, such as "a case"
     */
    public YamlMap map(String what) {
        if (tree instanceof Tree.Entries mapping) {
            return YamlMap.fields(this, what, mapping);
        }
        fault(what + " is not a map of keys and values", "write it as key: value");
        return YamlMap.unread(this, what);
    }

    /** The same, with a fault for each key that is not among the known ones. */
    public YamlMap map(String what, Collection<String> known) {
        YamlMap map = map(what);
        map.allow(known);
        return map;
    }

    /**
     * This value as a map whose names the writer chose, such as the findings; empty where nothing is written. A name
     * that stands twice is a fault that tells both values.
     *
     * @param thing one of them in words, such as "finding"
     * @param told how a value is told in a message, empty to leave it out
     */
    public YamlMap named(String thing, int most, Function<YamlNode, String> told) {
        if (tree instanceof Tree.Entries mapping && mapping.entries().size() <= most) {
            return YamlMap.named(this, thing, mapping, told);
        }
        if (tree instanceof Tree.Entries mapping) {
            fault(mapping.entries().size() + " " + thing + "s are given", "keep it to " + most + " at most");
        } else if (!(tree instanceof Tree.Nothing)) {
            fault(thing + "s are not a map of names and values", "write each as name: value");
        }
        return YamlMap.unread(this, thing);
    }

    /** This value's items; none where nothing is written or after a fault. */
    public List<YamlNode> items(String what) {
        return items(what, Integer.MAX_VALUE);
    }

    /** The same, refused whole if there are more than {@code most}. */
    public List<YamlNode> items(String what, int most) {
        if (tree instanceof Tree.Items list && list.items().size() <= most) {
            return list.items().stream().map(this::child).toList();
        }
        if (tree instanceof Tree.Items list) {
            fault(what + " has " + list.items().size() + " parts", "keep it to " + most + " at most");
        } else if (!(tree instanceof Tree.Nothing)) {
            fault(what + " is not a list", "write each part on its own line after '- '");
        }
        return List.of();
    }

    /** This value as text exactly as written, but for its line ends; no control characters but new line and tab. */
    public Optional<String> written(String what) {
        if (tree instanceof Tree.Nothing) {
            fault(what + " has no value", "write one after it, or take the key out");
            return Optional.empty();
        }
        if (!(tree instanceof Tree.Text text)) {
            fault(what + " is not a single value", "write one text or number after it");
            return Optional.empty();
        }
        String plain = PlainText.withPlainLineEnds(text.value());
        Optional<PlainText.Refusal> refusal = PlainText.refusal(plain, LONGEST_TEXT);
        refusal.ifPresent(r -> fault(what + ": " + r.what(), r.mend()));
        return refusal.isPresent() ? Optional.empty() : Optional.of(plain);
    }

    /** This value as text without its outer blanks. */
    public Optional<String> text(String what) {
        return written(what).map(String::strip);
    }

    /** This value as a finite number. */
    public OptionalDouble number(String what) {
        Optional<String> text = text(what);
        OptionalDouble number = text.map(PlainText::number).orElse(OptionalDouble.empty());
        if (text.isPresent() && number.isEmpty()) {
            fault(
                    what + ": '" + PlainText.shown(text.get()) + "' is not a number",
                    "write digits with a point, such as 3.9, without unit or separators");
        }
        return number;
    }

    /** This value as true or false. */
    public Optional<Boolean> flag(String what) {
        return one(what, FLAGS);
    }

    /** What the word stands for that this value must be one of. */
    public <T> Optional<T> one(String what, Map<String, T> words) {
        return one(what, word -> Optional.ofNullable(words.get(word)), "known", String.join(", ", words.keySet()));
    }

    /**
     * What {@code parse} makes of this value's text.
     *
     * @param kind what the text is not if it makes nothing of it, such as "a known unit"
     * @param allowed the words that can be used, for the message
     */
    public <T> Optional<T> one(String what, Function<String, Optional<T>> parse, String kind, String allowed) {
        Optional<String> text = text(what);
        Optional<T> parsed = text.flatMap(parse);
        if (text.isPresent() && parsed.isEmpty()) {
            fault(what + ": '" + PlainText.shown(text.get()) + "' is not " + kind, "use one of " + allowed);
        }
        return parsed;
    }
}
