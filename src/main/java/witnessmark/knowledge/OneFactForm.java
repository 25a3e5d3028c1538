package witnessmark.knowledge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads one-fact.yaml. */
final class OneFactForm {
    private OneFactForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("what is one fact", List.of("questions", "acts"));
        groups(map, "questions", OneFact.Kind.QUESTION, draft);
        groups(map, "acts", OneFact.Kind.ACT, draft);
    }

    private static void groups(YamlMap map, String name, OneFact.Kind kind, Draft draft) {
        Map<String, String> groupOf = new HashMap<>();
        for (YamlNode item : map.items(name)) {
            YamlMap fields = item.map("a fact", List.of("id", "title", "findings"));
            String id = draft.define(Draft.Kind.FACT, fields);
            List<String> findings = draft.refer(Draft.Kind.FINDING, fields, "findings");
            if (findings.size() < 2) {
                item.fault("one finding alone is one fact already", "name two or more, the most telling first");
            }
            for (String finding : findings) {
                String before = groupOf.putIfAbsent(finding, id);
                if (before != null && kind == OneFact.Kind.QUESTION) {
                    item.fault("'" + finding + "' stands in '" + before + "' already", "keep it in one question");
                }
            }
            draft.oneFacts.add(new OneFact(kind, id, fields.text("title"), findings));
        }
    }
}
