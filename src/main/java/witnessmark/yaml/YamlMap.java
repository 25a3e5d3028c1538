package witnessmark.yaml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/** The named values of one YAML map, in order. */
public final class YamlMap {
    private final YamlNode owner;
    private final Map<String, YamlNode> values;

    private YamlMap(YamlNode owner, Map<String, YamlNode> values) {
        this.owner = owner;
        this.values = values;
    }

    static YamlMap empty(YamlNode owner) {
        return new YamlMap(owner, Map.of());
    }

    static YamlMap of(YamlNode owner, Tree.Entries mapping, Function<Tree, YamlNode> child) {
        Map<String, YamlNode> values = new LinkedHashMap<>();
        for (Tree.Entry entry : mapping.entries()) {
            YamlNode key = child.apply(entry.name());
            if (!(entry.name() instanceof Tree.Text name)) {
                key.fault("a name must be a plain word", "write 'name: value'");
                continue;
            }
            YamlNode before = values.putIfAbsent(name.value(), child.apply(entry.value()));
            if (before != null) {
                key.fault(
                        "'" + YamlNode.shorten(name.value()) + "' stands twice (first on line " + before.line() + ")",
                        "keep one");
            }
        }
        return new YamlMap(owner, values);
    }

    public Set<String> names() {
        return values.keySet();
    }

    public YamlNode owner() {
        return owner;
    }

    public Optional<YamlNode> get(String name) {
        return Optional.ofNullable(values.get(name));
    }

    /** Notes each name that is not among the known ones. */
    public void allow(String what, Set<String> known) {
        values.forEach((name, value) -> {
            if (!known.contains(name)) {
                value.fault(
                        what + " does not know '" + YamlNode.shorten(name) + "'",
                        Nearest.to(name, known)
                                .map(near -> "did you mean '" + near + "'?")
                                .orElse("known are " + String.join(", ", new TreeSet<>(known))));
            }
        });
    }

    /** The named value; notes a fault if it is missing. */
    public Optional<YamlNode> require(String name) {
        Optional<YamlNode> value = get(name);
        if (value.isEmpty()) {
            owner.fault("'" + name + "' is missing", "add '" + name + ": …'");
        }
        return value;
    }

    /** A required text; empty text after a fault. */
    public String text(String name) {
        Optional<String> text = require(name).flatMap(v -> v.text(name));
        if (text.isPresent() && text.get().isEmpty()) {
            require(name).ifPresent(v -> v.fault("'" + name + "' is empty", "write it"));
        }
        return text.orElse("");
    }

    public String textOr(String name, String otherwise) {
        return get(name).flatMap(v -> v.text(name)).orElse(otherwise);
    }

    /** A required number; 0 after a fault. */
    public double number(String name) {
        return require(name).flatMap(v -> v.number(name)).orElse(0.0);
    }

    public Optional<Double> numberIfGiven(String name) {
        return get(name).flatMap(v -> v.number(name));
    }

    public boolean flagOr(String name, boolean otherwise) {
        return get(name).flatMap(v -> v.flag(name)).orElse(otherwise);
    }

    /** The named list's items; none where the list is not there. */
    public List<YamlNode> items(String name) {
        return get(name).map(v -> v.items(name)).orElse(List.of());
    }

    /** The named list as texts; none where the list is not there. */
    public List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        items(name).forEach(item -> item.text(name).ifPresent(texts::add));
        return List.copyOf(texts);
    }
}
