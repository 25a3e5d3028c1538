package witnessmark.knowledge;

import java.util.List;
import witnessmark.gearbox.Word;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads findings/*.yaml. */
final class FindingForm {
    private static final List<String> FIELDS = List.of(
            "id",
            "title",
            "ask",
            "kind",
            "access",
            "minutes",
            "look",
            "looks-like",
            "confused-with",
            "background",
            "part",
            "term",
            "words",
            "applies-to",
            "needs",
            "cautions",
            "when-found",
            "sources");

    private FindingForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the findings", List.of("system", "findings"));
        String system = map.text("system");
        for (YamlNode item : map.items("findings")) {
            YamlMap fields = item.map("a finding", FIELDS);
            Finding finding = finding(system, fields, draft);
            if ((finding.kind() == Finding.Kind.TEARDOWN || finding.kind() == Finding.Kind.OUTSIDE_CHECK)
                    && finding.look().isEmpty()) {
                item.fault("'" + finding.id() + "' does not say how to look", "add 'look: …'");
            }
            draft.findings.put(finding.id(), finding);
        }
    }

    private static Finding finding(String system, YamlMap fields, Draft draft) {
        return new Finding(
                draft.define(Draft.Kind.FINDING, fields),
                system,
                fields.text("title"),
                fields.text("ask"),
                fields.require("kind")
                        .flatMap(word -> word.one("kind", Word.all(Finding.Kind.class)))
                        .orElse(Finding.Kind.SYMPTOM),
                draft.refer(Draft.Kind.ACCESS, fields, "access", ""),
                AccessForm.minutes(fields),
                fields.textOr("look", ""),
                fields.textOr("looks-like", ""),
                fields.textOr("confused-with", ""),
                Words.chance(fields, "background", draft.vocabulary.backgrounds()),
                fields.textOr("part", ""),
                fields.textOr("term", ""),
                fields.texts("words"),
                ApplicabilityForm.read(fields),
                draft.refer(Draft.Kind.FINDING, fields, "needs"),
                draft.refer(Draft.Kind.CAUTION, fields, "cautions"),
                draft.refer(Draft.Kind.CAUTION, fields, "when-found"),
                SourceForm.cited(fields, draft));
    }
}
