package witnessmark.yaml;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/** The named values of one YAML map, in order. */
public final class YamlMap {
    private final YamlNode owner;
    private final String what;
    private final boolean read;
    private final Map<String, Entry> entries = new LinkedHashMap<>();

    /** A name with its own place, and what stands after it. */
    public record Entry(String name, YamlNode key, YamlNode value) {}

    private YamlMap(YamlNode owner, String what, boolean read) {
        this.owner = owner;
        this.what = what;
        this.read = read;
    }

    static YamlMap unread(YamlNode owner, String what) {
        return new YamlMap(owner, what, false);
    }

    static YamlMap fields(YamlNode owner, String what, Tree.Entries mapping) {
        YamlMap map = new YamlMap(owner, what, true);
        map.take(
                mapping,
                (earlier, here) -> "key '" + PlainText.shown(here.name()) + "' of " + what + " stands twice (line "
                        + earlier.key().line() + " and here)");
        return map;
    }

    static YamlMap named(YamlNode owner, String thing, Tree.Entries mapping, Function<YamlNode, String> told) {
        YamlMap map = new YamlMap(owner, thing, true);
        map.take(mapping, (earlier, here) -> {
            String one = told.apply(earlier.value());
            String two = told.apply(here.value());
            boolean both = !one.isEmpty() && !two.isEmpty();
            return thing + " '" + PlainText.shown(here.name()) + "' stands twice (line "
                    + earlier.key().line() + (both ? ": " + one + ", here: " + two : " and here") + ")";
        });
        return map;
    }

    private interface Twice {
        String told(Entry earlier, Entry here);
    }

    private void take(Tree.Entries mapping, Twice twice) {
        for (Tree.Entry entry : mapping.entries()) {
            YamlNode key = owner.child(entry.name());
            if (!(entry.name() instanceof Tree.Text name)) {
                key.fault("a name must be a single word", "write it as name: value");
                continue;
            }
            Entry here = new Entry(name.value(), key, owner.child(entry.value()));
            Entry earlier = entries.putIfAbsent(name.value(), here);
            if (earlier != null) {
                key.fault(twice.told(earlier, here), "keep one");
            }
        }
    }

    /** Notes each key that is not among the known ones. */
    public void allow(Collection<String> known) {
        for (Entry entry : entries.values()) {
            if (!known.contains(entry.name())) {
                entry.key()
                        .fault(
                                "'" + PlainText.shown(entry.name()) + "' is not a key of " + what,
                                Nearest.to(entry.name(), known)
                                        .map(near -> "did you mean '" + near + "'?")
                                        .orElse("use one of " + String.join(", ", known)));
            }
        }
    }

    public YamlNode owner() {
        return owner;
    }

    public Set<String> names() {
        return entries.keySet();
    }

    public Collection<Entry> entries() {
        return entries.values();
    }

    public boolean has(String name) {
        return entries.containsKey(name);
    }

    public Optional<YamlNode> get(String name) {
        return Optional.ofNullable(entries.get(name)).map(Entry::value);
    }

    /** The named value; notes a fault if it is missing. */
    public Optional<YamlNode> require(String name) {
        return require(name, "…");
    }

    /** The same, with an example of the value for the message. */
    public Optional<YamlNode> require(String name, String example) {
        if (read && !has(name)) {
            owner.fault(what + " has no '" + name + "'", "add " + name + ": " + example);
        }
        return get(name);
    }

    /** A required text without its outer blanks; empty text after a fault. */
    public String text(String name) {
        Optional<String> text = require(name).flatMap(v -> v.text(name));
        if (text.isPresent() && text.get().isEmpty()) {
            get(name).ifPresent(v -> v.fault(name + " is empty", "write it"));
        }
        return text.orElse("");
    }

    public String textOr(String name, String otherwise) {
        return get(name).flatMap(v -> v.text(name)).orElse(otherwise);
    }

    /** The text exactly as written, but for its line ends; empty if it is not there or at fault. */
    public String written(String name) {
        return get(name).flatMap(v -> v.written(name)).orElse("");
    }

    /** A required number; 0 after a fault. */
    public double number(String name) {
        require(name);
        return numberIfGiven(name).orElse(0.0);
    }

    public OptionalDouble numberIfGiven(String name) {
        return get(name).map(v -> v.number(name)).orElse(OptionalDouble.empty());
    }

    public boolean flagOr(String name, boolean otherwise) {
        return get(name).flatMap(v -> v.flag(name)).orElse(otherwise);
    }

    /** What the named word stands for; empty if it is not there or none of the words. */
    public <T> Optional<T> one(String name, Map<String, T> words) {
        return get(name).flatMap(v -> v.one(name, words));
    }

    /** The named list's items; none where the list is not there. */
    public List<YamlNode> items(String name) {
        return get(name).map(v -> v.items(name)).orElse(List.of());
    }

    /** The named list as texts without their outer blanks; none where the list is not there. */
    public List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        items(name).forEach(item -> item.text(name).ifPresent(texts::add));
        return List.copyOf(texts);
    }
}
