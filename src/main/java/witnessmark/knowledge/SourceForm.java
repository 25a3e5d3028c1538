package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads sources.yaml and the sources that other entries cite. */
final class SourceForm {
    private SourceForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the sources", List.of("sources"));
        for (YamlNode item : map.items("sources")) {
            YamlMap fields = item.map("a source", List.of("id", "title"));
            String id = draft.define(Draft.Kind.SOURCE, fields);
            draft.sources.put(id, new Source(id, fields.text("title")));
        }
    }

    /** The sources an entry cites; a fault if it cites none. */
    static List<String> cited(YamlMap fields, Draft draft) {
        List<String> sources = draft.refer(Draft.Kind.SOURCE, fields, "sources");
        if (sources.isEmpty()) {
            fields.owner().fault("cites no source", "add 'sources: [common-practice]' or the source it comes from");
        }
        return sources;
    }
}
