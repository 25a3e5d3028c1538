package witnessmark.knowledge;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads findings/*.yaml. */
final class FindingForm {
    private static final Set<String> FIELDS = Set.of(
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
            "sources");

    private FindingForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the findings");
        map.allow("the file", Set.of("system", "findings"));
        String system = map.text("system");
        for (YamlNode item : map.items("findings")) {
            YamlMap fields = item.map("a finding");
            fields.allow("a finding", FIELDS);
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
                kind(fields),
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
                SourceForm.cited(fields, draft));
    }

    private static Finding.Kind kind(YamlMap fields) {
        String word = fields.text("kind");
        for (Finding.Kind kind : Finding.Kind.values()) {
            if (word(kind).equals(word)) {
                return kind;
            }
        }
        fields.get("kind")
                .ifPresent(place -> place.fault(
                        "kind '" + word + "' is not known",
                        "one of "
                                + Arrays.stream(Finding.Kind.values())
                                        .map(FindingForm::word)
                                        .collect(Collectors.joining(", "))));
        return Finding.Kind.SYMPTOM;
    }

    private static String word(Finding.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
