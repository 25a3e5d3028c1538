package witnessmark.yaml;

import java.util.Map;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;

/** Writes maps, lists, texts, numbers and truth values as YAML that people read and change. */
public final class WriteYaml {
    private WriteYaml() {}

    /** The map with a line for each value. */
    public static String block(Map<String, ?> root) {
        return new Dump(DumpSettings.builder()
                        .setDefaultFlowStyle(FlowStyle.BLOCK)
                        .build())
                .dumpToString(root);
    }
}
