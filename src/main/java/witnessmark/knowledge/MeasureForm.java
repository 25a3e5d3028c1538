package witnessmark.knowledge;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.gearbox.Unit;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads measures.yaml. */
final class MeasureForm {
    private MeasureForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the measures");
        map.allow("the file", Set.of("measures"));
        for (YamlNode item : map.items("measures")) {
            YamlMap fields = item.map("a measure");
            fields.allow("a measure", Set.of("id", "title", "unit", "typical", "below", "above", "sources"));
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
                            unit(fields),
                            fields.textOr("typical", ""),
                            below,
                            above,
                            SourceForm.cited(fields, draft)));
        }
    }

    private static Unit unit(YamlMap fields) {
        String word = fields.text("unit");
        return Unit.parse(word).orElseGet(() -> {
            fields.get("unit")
                    .ifPresent(place -> place.fault(
                            "unit '" + word + "' is not known",
                            "known are "
                                    + Arrays.stream(Unit.values())
                                            .map(Unit::symbol)
                                            .collect(Collectors.joining(", "))));
            return Unit.COUNT;
        });
    }
}
