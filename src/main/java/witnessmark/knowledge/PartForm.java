package witnessmark.knowledge;

import java.util.List;
import witnessmark.gearbox.EnumWord;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads parts.yaml. */
final class PartForm {
    private PartForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item : root.map("the parts", List.of("parts")).items("parts")) {
            YamlMap fields = item.map("a part", List.of("id", "en", "es", "drawn", "of", "with", "when-marked"));
            String id = draft.define(Draft.Kind.PART, fields);
            draft.parts.put(
                    id,
                    new Part(
                            id,
                            fields.text("en"),
                            fields.text("es"),
                            fields.items("drawn").stream().map(PartForm::place).toList(),
                            draft.refer(Draft.Kind.PART, fields, "of"),
                            fields.get("with").flatMap(word -> word.one("with", EnumWord.all(Part.With.class))),
                            fields.flagOr("when-marked", false)));
        }
    }

    private static Part.Place place(YamlNode node) {
        List<YamlNode> edges = node.items("a box");
        if (edges.size() != 4) {
            node.fault("a box has " + edges.size() + " numbers", "give left edge, top, width and height");
            return new Part.Place(0, 0, 0, 0);
        }
        List<Double> numbers = edges.stream()
                .map(edge -> edge.number("a box"))
                .map(number -> number.orElse(0))
                .toList();
        return new Part.Place(numbers.get(0), numbers.get(1), numbers.get(2), numbers.get(3));
    }
}
