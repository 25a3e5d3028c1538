package witnessmark.truck;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.ProfileRefused;
import witnessmark.gearbox.TruckProfile;

/**
 * The YAML form of a truck profile: {@code truck} and {@code title}, then the parameters by their keys, nested at the
 * dots, and {@code gearbox.main-ratios}, {@code gearbox.splitter}, {@code tyre.size}, {@code engine.torque-curve}.
 */
public final class TruckYaml {

    private TruckYaml() {}

    /**
     * Reads a profile.
     *
     * @param label file name for messages
     * @throws ProfileRefused with every fault, each with file, line and column
     */
    public static TruckProfile read(String label, String text) {
        return new ProfileReader(label).read(text);
    }

    /** The profile as YAML, in metric units; what was assumed is left out, to be assumed again. */
    public static String write(TruckProfile truck) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("truck", truck.id());
        root.put("title", truck.title());
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
        DumpSettings settings =
                DumpSettings.builder().setDefaultFlowStyle(FlowStyle.BLOCK).build();
        return new Dump(settings).dumpToString(root);
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
