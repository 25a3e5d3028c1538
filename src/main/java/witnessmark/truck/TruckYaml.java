package witnessmark.truck;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.yaml.Faults;
import witnessmark.yaml.FaultyInput;
import witnessmark.yaml.WriteYaml;
import witnessmark.yaml.YamlReader;

/**
 * The YAML form of a truck profile: {@code truck} and {@code title}, then the parameters by their keys, nested at the
 * dots, and {@code gearbox.main-ratios}, {@code gearbox.splitter}, {@code tyre.size}, {@code engine.torque-curve}.
 */
public final class TruckYaml {

    private static final YamlReader YAML = new YamlReader(TruckFolder.MOST_BYTES);

    private TruckYaml() {}

    /**
     * Reads a profile.
     *
     * @param label file name for messages
     * @throws FaultyInput with every fault, each with file, line and column
     */
    public static TruckProfile read(String label, String text) {
        Faults faults = new Faults();
        Optional<TruckProfile> read = YAML.read(label, text.getBytes(StandardCharsets.UTF_8), faults)
                .map(root -> root.map("a truck profile"))
                .filter(map -> map.owner().isMap())
                .map(map -> new ProfileReader(map).draft())
                .filter(draft -> faults.isEmpty())
                .map(TruckDraft::build);
        faults.throwIfAny();
        return read.orElseThrow();
    }

    /** The profile as YAML, in metric units; what was assumed is left out, to be assumed again. */
    public static String write(TruckProfile truck) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("truck", truck.id());
        root.put("title", truck.title());
        truck.titles().forEach((language, words) -> root.put("title-" + language, words));
        section(root, "gearbox").put("main-ratios", truck.mainRatios());
        truck.splitter().ifPresent(splitter -> section(root, "gearbox")
                .put(
                        "splitter",
                        Map.of("ratio", splitter.ratio(), "splits", splitter.bothRanges() ? "both" : "high-only")));
        for (Map.Entry<Parameter, Figure> entry : truck.figures().entrySet()) {
            if (entry.getValue().basis() == Basis.GIVEN) {
                put(
                        root,
                        List.of(entry.getKey().key().split("\\.")),
                        entry.getValue().value());
            }
        }
        truck.tyreSize().ifPresent(size -> section(root, "tyre").put("size", size));
        if (truck.torque().basis() == Basis.GIVEN) {
            section(root, "engine")
                    .put("torque-curve", new LinkedHashMap<>(truck.torque().points()));
        }
        return WriteYaml.block(root);
    }

    private static void put(Map<String, Object> root, List<String> path, double value) {
        Map<String, Object> inner = path.size() == 1 ? root : section(root, path.get(0));
        inner.put(path.get(path.size() - 1), value);
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> section(Map<String, Object> root, String name) {
        return (Map<String, Object>) root.computeIfAbsent(name, key -> new LinkedHashMap<String, Object>());
    }
}
