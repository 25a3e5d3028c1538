package witnessmark.knowledge;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.gearbox.EnumWord;
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
            "in-order",
            "term",
            "words",
            "applies-to",
            "needs",
            "cautions",
            "when-found",
            "ends",
            "spoiled-by",
            "renews",
            "voids",
            "identity",
            "hands-open",
            "not-by-default",
            "made-of",
            "age",
            "gear",
            "says",
            "conclusive",
            "sources");

    private static final Set<Finding.Kind> NEED_A_WAY =
            EnumSet.of(Finding.Kind.LOOK, Finding.Kind.MARK, Finding.Kind.SIGN);

    private FindingForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the findings", List.of("system", "findings"));
        String system = map.text("system");
        for (YamlNode item : map.items("findings")) {
            YamlMap fields = item.map("a finding", FIELDS);
            Finding finding = finding(system, fields, draft);
            if (NEED_A_WAY.contains(finding.kind()) && finding.look().isEmpty()) {
                item.fault("'" + finding.id() + "' does not say how to look", "add 'look: …'");
            }
            finding.madeOf().ifPresent(made -> checkMade(made, finding, item));
            draft.findings.put(finding.id(), finding);
        }
    }

    private static Finding finding(String system, YamlMap fields, Draft draft) {
        Finding.Kind kind = fields.require("kind")
                .flatMap(word -> word.one("kind", EnumWord.all(Finding.Kind.class)))
                .orElse(Finding.Kind.SYMPTOM);
        return new Finding(
                draft.define(Draft.Kind.FINDING, fields),
                system,
                fields.text("title"),
                fields.text("ask"),
                kind,
                draft.refer(Draft.Kind.ACCESS, fields, "access", ""),
                AccessForm.minutes(fields),
                fields.textOr("look", ""),
                fields.textOr("looks-like", ""),
                fields.textOr("confused-with", ""),
                kind == Finding.Kind.LOOK
                        ? draft.vocabulary.seenWithoutCause()
                        : VocabularyChance.chance(fields, "background", draft.vocabulary.backgrounds()),
                fields.get("part")
                        .map(part -> draft.refer(Draft.Kind.PART, part))
                        .orElse(""),
                fields.flagOr("in-order", false),
                fields.textOr("term", ""),
                fields.texts("words"),
                ApplicabilityForm.read(fields),
                draft.refer(Draft.Kind.FINDING, fields, "needs"),
                draft.refer(Draft.Kind.CAUTION, fields, "cautions"),
                draft.refer(Draft.Kind.CAUTION, fields, "when-found"),
                fields.get("ends").flatMap(word -> word.one("ends", EnumWord.all(AccessStep.Use.class))),
                draft.refer(Draft.Kind.FINDING, fields, "spoiled-by"),
                draft.refer(Draft.Kind.FINDING, fields, "renews"),
                fields.get("voids").flatMap(word -> word.one("voids", EnumWord.all(Finding.Kind.class))),
                fields.flagOr("identity", false),
                draft.refer(Draft.Kind.CLASS_OR_CAUSE, fields, "hands-open"),
                draft.refer(Draft.Kind.CLASS, fields, "not-by-default"),
                madeOf(fields, draft),
                fields.flagOr("age", false),
                fields.get("gear").flatMap(word -> word.one("gear", EnumWord.all(Finding.GearRole.class))),
                fields.textOr("says", ""),
                fields.textOr("conclusive", ""),
                SourceForm.cited(fields, draft));
    }

    private static Optional<MadeOf> madeOf(YamlMap fields, Draft draft) {
        return fields.get("made-of").map(node -> {
            YamlMap made = node.map("made-of", List.of("present", "absent", "unless"));
            return new MadeOf(
                    fields.text("id"),
                    draft.refer(Draft.Kind.PLAIN_FINDING, made, "present"),
                    draft.refer(Draft.Kind.PLAIN_FINDING, made, "absent"),
                    draft.refer(Draft.Kind.PLAIN_FINDING, made, "unless"));
        });
    }

    private static void checkMade(MadeOf made, Finding finding, YamlNode item) {
        String id = "'" + finding.id() + "'";
        if (!finding.isComputed()) {
            item.fault(id + " is made of other findings, so that nobody is asked for it", "write 'kind: computed'");
        }
        if (made.present().isEmpty()) {
            item.fault(id + " is made of nothing that was found", "name at least one finding under 'present'");
        }
        if (Set.copyOf(made.members()).size() < made.members().size()) {
            item.fault(id + " is made of one finding twice", "name each once, under 'present', 'absent' or 'unless'");
        }
    }
}
