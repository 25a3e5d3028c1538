package witnessmark.knowledge;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
                            "usual",
                            "rise",
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
                            fields.get("usual").flatMap(node -> usual(node, below, above)),
                            fields.get("rise").flatMap(node -> rise(node, above)),
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

    private static Optional<UsualValues> usual(YamlNode node, Optional<String> below, Optional<String> above) {
        YamlMap map = node.map("what is usual", List.of("good-from", "good-to", "bad-under", "bad-over", "from"));
        UsualValues usual = new UsualValues(
                map.numberIfGiven("good-from"),
                map.numberIfGiven("good-to"),
                map.numberIfGiven("bad-under"),
                map.numberIfGiven("bad-over"),
                map.text("from"));
        boolean ofLow = usual.goodFrom().isPresent() || usual.badUnder().isPresent();
        boolean ofHigh = usual.goodTo().isPresent() || usual.badOver().isPresent();
        if (!ofLow && !ofHigh) {
            node.fault("usual names no value", "write it as usual: { good-to: 100, bad-over: 300, from: \"...\" }");
        }
        if (ofLow && below.isEmpty() || ofHigh && above.isEmpty()) {
            node.fault(
                    "usual names a side from which nothing follows",
                    "good-from and bad-under belong to 'below', good-to and bad-over to 'above'");
        }
        refuseDisorder(node, usual.badUnder(), usual.goodFrom());
        refuseDisorder(node, usual.goodFrom(), usual.goodTo());
        refuseDisorder(node, usual.goodTo(), usual.badOver());
        return Optional.of(usual);
    }

    private static void refuseDisorder(YamlNode node, OptionalDouble less, OptionalDouble more) {
        if (less.isPresent() && more.isPresent() && less.getAsDouble() > more.getAsDouble()) {
            node.fault(
                    "usual has its values out of order",
                    "from low to high they are bad-under, good-from, good-to, bad-over");
        }
    }

    private static Optional<Rise> rise(YamlNode node, Optional<String> above) {
        YamlMap map = node.map("a rise", List.of("times", "by", "from"));
        double times = map.has("times") ? map.number("times") : 1;
        double by = map.has("by") ? map.number("by") : 0;
        if (times < 1 || by < 0 || times == 1 && by == 0) {
            node.fault("a rise of nothing", "write it as rise: { times: 2, by: 50, from: \"...\" }");
        }
        if (above.isEmpty()) {
            node.fault("nothing follows from a rise", "name a finding for 'above'");
        }
        return Optional.of(new Rise(times, by, map.text("from")));
    }

    private static boolean limitCounts(YamlMap fields) {
        return fields.get("at-limit")
                .flatMap(n -> n.one("at-limit", Map.of("within", false, "beyond", true)))
                .orElse(false);
    }
}
