package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.language.Language;
import witnessmark.yaml.Faults;
import witnessmark.yaml.Nearest;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** What was read so far, with every reference to an id kept until all files are read and it can be checked. */
final class Draft {
    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final int LONGEST_ID = 60;

    enum Kind {
        CAUSE("cause"),
        FINDING("finding"),
        PLAIN_FINDING("finding that is not made of others"),
        MEASURE("measure"),
        CLASS("class"),
        CLASS_OR_CAUSE("class or cause"),
        ACCESS("access step"),
        PART("part"),
        COACHING("coaching point"),
        TOWING("towing reminder"),
        CAUTION("caution"),
        SOURCE("source"),
        FACT("fact");

        private final String word;

        Kind(String word) {
            this.word = word;
        }
    }

    private record Reference(Kind kind, String id, YamlNode place) {}

    final Faults faults = new Faults();
    final Map<String, AccessStep> access = new LinkedHashMap<>();
    final Map<String, Part> parts = new LinkedHashMap<>();
    final Map<String, Measure> measures = new LinkedHashMap<>();
    final Map<String, Finding> findings = new LinkedHashMap<>();
    final Map<String, Retired> retired = new LinkedHashMap<>();
    final Map<String, Cause> causes = new LinkedHashMap<>();
    final List<LookAlike> lookAlikes = new ArrayList<>();
    final List<NeverTogether> neverTogether = new ArrayList<>();
    final List<Follows> follows = new ArrayList<>();
    final List<ExplainedBy> explainedBy = new ArrayList<>();
    final List<OneFact> oneFacts = new ArrayList<>();
    final List<MustLook> mustLooks = new ArrayList<>();
    final List<Before> befores = new ArrayList<>();
    final List<ContextEffect> context = new ArrayList<>();
    final Map<String, CoachingAdvice> coaching = new LinkedHashMap<>();
    final Map<String, TowAdvice> towing = new LinkedHashMap<>();
    final List<TowCaution> towCautions = new ArrayList<>();
    final List<Prevention> prevention = new ArrayList<>();
    final Map<String, Caution> cautions = new LinkedHashMap<>();
    final Map<String, Source> sources = new LinkedHashMap<>();
    final List<List<String>> synonyms = new ArrayList<>();
    final List<Wording> wordings = new ArrayList<>();
    final Map<String, String> pages = new LinkedHashMap<>();
    final Map<String, String> spanish = new LinkedHashMap<>();
    Vocabulary vocabulary = Vocabulary.EMPTY;

    private final List<Reference> references = new ArrayList<>();
    private final Map<String, Integer> layerOf = new LinkedHashMap<>();
    private int layer;

    void nextLayer() {
        layer++;
    }

    boolean onFirstLayer() {
        return layer <= 1;
    }

    /** Takes an id that is being defined; a fault if it is misspelt or was defined in this layer already. */
    String define(Kind kind, YamlMap map) {
        String id = map.text("id");
        if (id.isEmpty()) {
            return id;
        }
        YamlNode place = map.get("id").orElse(map.owner());
        if (!ID.matcher(id).matches() || id.length() > LONGEST_ID) {
            place.fault(
                    "id '" + id + "' is misspelt",
                    "lower-case words and digits joined by single hyphens, at most " + LONGEST_ID + " characters");
        }
        Integer before = layerOf.put(kind + " " + id, layer);
        if (before != null && before == layer) {
            place.fault(kind.word + " '" + id + "' is defined twice", "keep one or rename the other");
        }
        return id;
    }

    /** Takes an id that must exist somewhere in the knowledge base. */
    String refer(Kind kind, YamlNode place) {
        String id = place.text(kind.word).orElse("");
        references.add(new Reference(kind, id, place));
        return id;
    }

    List<String> refer(Kind kind, YamlMap map, String name) {
        return map.items(name).stream().map(item -> refer(kind, item)).toList();
    }

    String refer(Kind kind, YamlMap map, String name, String otherwise) {
        return map.require(name).map(place -> refer(kind, place)).orElse(otherwise);
    }

    private void checkReferences() {
        Map<Kind, Set<String>> ids = new EnumMap<>(Kind.class);
        for (Reference reference : references) {
            Set<String> known = ids.computeIfAbsent(reference.kind, this::known);
            if (!known.contains(reference.id)) {
                reference.place.fault(
                        "no " + reference.kind.word + " '" + reference.id + "' is known",
                        Nearest.to(reference.id, known)
                                .map(near -> "did you mean '" + near + "'?")
                                .orElse("define it or take the line out"));
            }
        }
    }

    private Set<String> known(Kind kind) {
        return switch (kind) {
            case CAUSE -> causes.keySet();
            case FINDING -> findings.keySet(); // what is retired is not to be referred to any more
            case PLAIN_FINDING -> findings.values().stream()
                    .filter(finding -> finding.madeOf().isEmpty())
                    .map(Finding::id)
                    .collect(Collectors.toUnmodifiableSet());
            case MEASURE -> measures.keySet();
            case CLASS -> vocabulary.classes().stream()
                    .map(Vocabulary.CauseClass::id)
                    .collect(Collectors.toUnmodifiableSet());
            case CLASS_OR_CAUSE -> Stream.concat(known(Kind.CLASS).stream(), causes.keySet().stream())
                    .collect(Collectors.toUnmodifiableSet());
            case ACCESS -> access.keySet();
            case PART -> parts.keySet();
            case COACHING -> coaching.keySet();
            case TOWING -> towing.keySet();
            case CAUTION -> cautions.keySet();
            case SOURCE -> sources.keySet();
            case FACT -> Set.copyOf(oneFacts.stream().map(OneFact::id).toList());
        };
    }

    KnowledgeBase finish() {
        checkReferences();
        faults.throwIfAny();
        retired.values()
                .forEach(r ->
                        findings.put(r.id(), r.asFinding(findings.get(r.now().get(0)))));
        BoundChances.of(this);
        return CautionsOnTheWay.of(new KnowledgeBase(
                vocabulary,
                access,
                parts,
                measures,
                findings,
                retired,
                causes,
                List.copyOf(lookAlikes),
                List.copyOf(neverTogether),
                List.copyOf(follows),
                List.copyOf(explainedBy),
                List.copyOf(oneFacts),
                List.copyOf(mustLooks),
                List.copyOf(befores),
                List.copyOf(context),
                coaching,
                towing,
                List.copyOf(towCautions),
                List.copyOf(prevention),
                cautions,
                sources,
                List.copyOf(synonyms),
                List.copyOf(wordings),
                pages,
                Language.ENGLISH,
                Map.copyOf(spanish)));
    }
}
