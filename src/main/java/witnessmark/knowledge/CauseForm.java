package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads causes/*.yaml. */
final class CauseForm {
    private static final List<String> FIELDS = List.of(
            "id",
            "title",
            "class",
            "class-when",
            "ask-why",
            "prior",
            "mechanism",
            "links",
            "against",
            "proved-good",
            "proved-good-any",
            "breeds",
            "harms-nothing",
            "applies-to",
            "repair",
            "repair-at",
            "coaching",
            "towing",
            "cautions",
            "sources");

    private CauseForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the causes", List.of("system", "causes"));
        String system = map.text("system");
        for (YamlNode item : map.items("causes")) {
            YamlMap fields = item.map("a cause", FIELDS);
            Cause cause = cause(system, fields, draft);
            draft.causes.put(cause.id(), cause);
        }
    }

    private static Cause cause(String system, YamlMap fields, Draft draft) {
        return new Cause(
                draft.define(Draft.Kind.CAUSE, fields),
                system,
                fields.text("title"),
                draft.refer(Draft.Kind.CLASS, fields, "class", ""),
                classWhen(fields, draft),
                asksWhy(fields),
                VocabularyChance.chance(fields, "prior", draft.vocabulary.priors()),
                fields.text("mechanism"),
                links(fields, draft),
                against(fields, draft),
                draft.refer(Draft.Kind.FINDING, fields, "proved-good"),
                provedGoodAny(fields, draft),
                draft.refer(Draft.Kind.CAUSE, fields, "breeds"),
                fields.flagOr("harms-nothing", false),
                ApplicabilityForm.read(fields),
                fields.texts("repair"),
                repairAt(fields, draft),
                draft.refer(Draft.Kind.COACHING, fields, "coaching"),
                draft.refer(Draft.Kind.TOWING, fields, "towing"),
                draft.refer(Draft.Kind.CAUTION, fields, "cautions"),
                SourceForm.cited(fields, draft));
    }

    /** What is shipped must say where: the cautions come from there. A site's own cause may leave it to its own cautions. */
    private static List<String> repairAt(YamlMap fields, Draft draft) {
        List<String> places = draft.refer(Draft.Kind.ACCESS, fields, "repair-at");
        if (places.isEmpty() && draft.onFirstLayer()) {
            fields.get("repair")
                    .ifPresent(repair -> repair.fault(
                            "a repair without its places lacks the cautions of the way there",
                            "add 'repair-at: [...]' with the deepest places of access.yaml where it has hands"));
        }
        return places;
    }

    private static boolean asksWhy(YamlMap fields) {
        boolean asked = fields.flagOr("ask-why", false);
        if (asked && !fields.has("class-when")) {
            fields.get("ask-why")
                    .ifPresent(node -> node.fault(
                            "ask-why without class-when leaves nothing to ask",
                            "add the circumstances that turn its class"));
        }
        return asked;
    }

    private static List<Cause.ClassWhen> classWhen(YamlMap fields, Draft draft) {
        List<Cause.ClassWhen> list = new ArrayList<>();
        for (YamlNode item : fields.items("class-when")) {
            YamlMap one = item.map("class-when", List.of("finding", "class", "ask"));
            list.add(new Cause.ClassWhen(
                    draft.refer(Draft.Kind.FINDING, one, "finding", ""),
                    draft.refer(Draft.Kind.CLASS, one, "class", ""),
                    asked(one)));
        }
        return List.copyOf(list);
    }

    private static Cause.Asked asked(YamlMap classWhen) {
        if (classWhen.get("ask").isEmpty()) {
            return Cause.Asked.AS_A_RULE;
        }
        return classWhen.flagOr("ask", false) ? Cause.Asked.ONCE_SEEN : Cause.Asked.NEVER;
    }

    private static List<List<String>> provedGoodAny(YamlMap fields, Draft draft) {
        return fields.items("proved-good-any").stream()
                .map(set -> set.items("proved-good-any").stream()
                        .map(item -> draft.refer(Draft.Kind.FINDING, item))
                        .toList())
                .filter(set -> !set.isEmpty())
                .toList();
    }

    private static List<Cause.Link> links(YamlMap fields, Draft draft) {
        List<Cause.Link> links = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        fields.require("links");
        for (YamlNode item : fields.items("links")) {
            YamlMap one = item.map("a link", List.of("finding", "strength", "specific", "look", "why"));
            String finding = draft.refer(Draft.Kind.FINDING, one, "finding", "");
            if (!seen.add(finding)) {
                item.fault("'" + finding + "' is linked twice", "keep one");
                continue;
            }
            boolean look = one.flagOr("look", false);
            links.add(new Cause.Link(
                    finding,
                    look
                            ? draft.vocabulary.seenIfThere()
                            : VocabularyChance.chance(one, "strength", draft.vocabulary.strengths()),
                    look ? "seen" : one.textOr("strength", ""),
                    one.flagOr("specific", false),
                    look,
                    one.textOr("why", "")));
        }
        if (links.isEmpty()) {
            fields.owner().fault("a cause without links can never be found", "link the findings that it produces");
        }
        return List.copyOf(links);
    }

    private static List<Cause.Against> against(YamlMap fields, Draft draft) {
        List<Cause.Against> list = new ArrayList<>();
        for (YamlNode item : fields.items("against")) {
            YamlMap one = item.map("against", List.of("finding", "weight", "why"));
            list.add(new Cause.Against(
                    draft.refer(Draft.Kind.FINDING, one, "finding", ""),
                    VocabularyChance.chance(one, "weight", draft.vocabulary.against()),
                    one.text("why")));
        }
        return List.copyOf(list);
    }
}
