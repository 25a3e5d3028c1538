package witnessmark.knowledge;

import java.util.List;
import java.util.Map;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads advice.yaml. */
final class AdviceForm {
    private AdviceForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the advice", List.of("coaching", "towing", "prevention"));
        map.items("coaching").forEach(item -> advice(item, Draft.Kind.COACHING, draft.coaching, draft));
        map.items("towing").forEach(item -> advice(item, Draft.Kind.TOWING, draft.towing, draft));
        map.items("prevention").forEach(item -> prevention(item, draft));
    }

    private static void prevention(YamlNode item, Draft draft) {
        YamlMap fields = item.map("a step against a return", List.of("class", "en", "es"));
        draft.prevention.add(new Prevention(
                draft.refer(Draft.Kind.CLASS, fields, "class", ""), fields.text("en"), fields.text("es")));
    }

    private static void advice(YamlNode item, Draft.Kind kind, Map<String, Advice> into, Draft draft) {
        YamlMap fields = item.map("a piece of advice", List.of("id", "en", "es", "why-en", "why-es"));
        String id = draft.define(kind, fields);
        into.put(
                id,
                new Advice(
                        id,
                        fields.text("en"),
                        fields.text("es"),
                        fields.textOr("why-en", ""),
                        fields.textOr("why-es", "")));
    }
}
