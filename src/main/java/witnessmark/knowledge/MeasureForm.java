package witnessmark.knowledge;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Unit;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads measures.yaml. */
final class MeasureForm {
    private MeasureForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the measures", List.of("measures"));
        for (YamlNode item : map.items("measures")) {
            YamlMap fields = item.map(
                    "a measure",
                    List.of(
                            "id",
                            "title",
                            "unit",
                            "typical",
                            "at-limit",
                            "plausible",
                            "possible",
                            "below",
                            "above",
                            "sources"));
            String id = draft.define(Draft.Kind.MEASURE, fields);
            Optional<String> below = fields.get("below").map(p -> draft.refer(Draft.Kind.FINDING, p));
            Optional<String> above = fields.get("above").map(p -> draft.refer(Draft.Kind.FINDING, p));
            if (below.isEmpty() && above.isEmpty()) {
                item.fault("nothing follows from measure '" + id + "'", "name a finding for 'below' or 'above'");
            }
            draft.measures.put(
                    id,
                    new Measure(
                            id,
                            fields.text("title"),
                            fields.require("unit")
                                    .flatMap(u -> u.one("unit", Unit::parse, "a known unit", Unit.SYMBOLS))
                                    .orElse(Unit.COUNT),
                            fields.textOr("typical", ""),
                            limitCounts(fields),
                            bounds(fields, "plausible"),
                            bounds(fields, "possible"),
                            below,
                            above,
                            SourceForm.cited(fields, draft)));
        }
    }

    private static Measure.Bounds bounds(YamlMap fields, String name) {
        List<YamlNode> ends = fields.items(name);
        if (ends.isEmpty()) {
            return Measure.Bounds.NONE;
        }
        double from = ends.get(0).number(name).orElse(0);
        double to = ends.get(ends.size() - 1).number(name).orElse(0);
        if (ends.size() != 2 || from >= to) {
            ends.get(0).fault(name + " needs a lower and a higher end", "write it as " + name + ": [0, 16]");
        }
        return new Measure.Bounds(from, to);
    }

    private static boolean limitCounts(YamlMap fields) {
        return fields.get("at-limit")
                .flatMap(n -> n.one("at-limit", Map.of("within", false, "beyond", true)))
                .orElse(false);
    }
}
