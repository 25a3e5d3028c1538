package witnessmark.casefile.yaml;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.PartLine.Whereabouts;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads the facts of a claim; empty, with the faults noted, if they cannot be taken. */
final class ClaimReader {
    private static final int MOST_PARTS = 200;
    private static final List<String> FIELDS = Stream.concat(
                    Arrays.stream(ClaimField.values()).map(ClaimField::word), Stream.of("parts"))
            .toList();

    private ClaimReader() {}

    static Optional<Claim> read(YamlNode node) {
        YamlMap map = node.map("claim", FIELDS);
        Map<ClaimField, String> facts = new EnumMap<>(ClaimField.class);
        for (ClaimField field : ClaimField.values()) {
            map.get(field.word()).ifPresent(value -> value.written(field.word())
                    .filter(text -> !text.isBlank())
                    .flatMap(text -> Built.at(value, () -> field.checked(text)))
                    .ifPresent(text -> facts.put(field, text)));
        }
        List<PartLine> parts = new ArrayList<>();
        map.get("parts")
                .map(list -> list.items("parts", MOST_PARTS))
                .orElse(List.of())
                .forEach(part -> part(part).ifPresent(parts::add));
        return Built.at(node, () -> new Claim(facts, parts));
    }

    private static Optional<PartLine> part(YamlNode node) {
        YamlMap map = node.map("part", List.of("old", "fitted", "quantity", "whereabouts", "tag"));
        if (!map.has("fitted")) {
            map.require("old", "range synchronizer, low");
        }
        OptionalDouble quantity = map.has("quantity") ? map.numberIfGiven("quantity") : OptionalDouble.of(1);
        Optional<Whereabouts> whereabouts = map.get("whereabouts")
                .flatMap(n -> n.one("whereabouts", Whereabouts::parse, "what became of a part", Whereabouts.WORDS));
        return quantity.isEmpty()
                ? Optional.empty()
                : Built.at(
                        node,
                        () -> new PartLine(
                                map.written("old"),
                                map.written("fitted"),
                                quantity.getAsDouble(),
                                whereabouts,
                                map.written("tag")));
    }
}
