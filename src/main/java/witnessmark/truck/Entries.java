package witnessmark.truck;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** The entries of a YAML document by dotted path, taken out one by one, and where each stands. */
final class Entries {
    private final Map<String, YamlNode> left = new LinkedHashMap<>();
    private final Map<String, YamlNode> places = new LinkedHashMap<>();

    /** A map for whose path {@code whole} holds is kept as one entry. */
    Entries(YamlMap root, Predicate<String> whole) {
        places.put("", root.owner());
        walk("", root, whole);
    }

    private void walk(String section, YamlMap map, Predicate<String> whole) {
        for (YamlMap.Entry entry : map.entries()) {
            String path = section + entry.name();
            if (entry.value().isMap() && !whole.test(path)) {
                places.putIfAbsent(path, entry.key());
                walk(path + ".", entry.value().map(path), whole);
            } else {
                places.putIfAbsent(path, entry.value());
                left.putIfAbsent(path, entry.value());
            }
        }
    }

    Optional<YamlNode> take(String path) {
        return Optional.ofNullable(left.remove(path));
    }

    /** What was not taken. */
    Map<String, YamlNode> rest() {
        return left;
    }

    boolean has(String path) {
        return places.containsKey(path);
    }

    void place(String path, YamlNode node) {
        places.put(path, node);
    }

    void placeIfAbsent(String path, YamlNode node) {
        places.putIfAbsent(path, node);
    }

    /** Where the path stands, or what it would stand in. */
    YamlNode nearest(String path) {
        String at = path;
        while (!places.containsKey(at)) {
            at = at.substring(0, Math.max(0, Math.max(at.lastIndexOf('.'), at.lastIndexOf('['))));
        }
        return places.get(at);
    }
}
