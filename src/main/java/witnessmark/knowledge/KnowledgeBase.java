package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.language.Language;

/**
 * The whole of what is known, checked: every id named anywhere in it exists in it. Maps keep the order of the files.
 *
 * @param language the language of its texts; parts, cautions and advice are in all
 * @param spanish the Spanish of each English text
 */
public record KnowledgeBase(
        Vocabulary vocabulary,
        Map<String, AccessStep> access,
        Map<String, Part> parts,
        Map<String, Measure> measures,
        Map<String, Finding> findings,
        Map<String, Retired> retired,
        Map<String, Cause> causes,
        List<LookAlike> lookAlikes,
        List<NeverTogether> neverTogether,
        List<Follows> follows,
        List<ExplainedBy> explainedBy,
        List<OneFact> oneFacts,
        List<MustLook> mustLooks,
        List<Before> befores,
        List<ContextEffect> context,
        Map<String, CoachingAdvice> coaching,
        Map<String, TowAdvice> towing,
        List<TowCaution> towCautions,
        List<Prevention> prevention,
        Map<String, Caution> cautions,
        Map<String, Source> sources,
        List<List<String>> synonyms,
        List<Wording> wordings,
        Map<String, String> pages,
        Language language,
        Map<String, String> spanish) {

    /** The same knowledge in another language; a text without its Spanish stays as it is written. */
    public KnowledgeBase in(Language wanted) {
        return wanted == Language.SPANISH && language == Language.ENGLISH
                ? new TranslateTexts((id, english) -> spanish.getOrDefault(english, english)).of(this, wanted)
                : this;
    }

    /** A text that was kept in English, such as a title in a signed judgement, in the language of this knowledge. */
    public String text(String english) {
        return language == Language.SPANISH ? spanish.getOrDefault(english, english) : english;
    }

    /** The class with this id; throws if there is none. */
    public Vocabulary.CauseClass classOf(String id) {
        return vocabulary.classes().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no class '" + id + "'"));
    }

    /** The pairs in which the cause stands. */
    public List<LookAlike> lookAlikesOf(String cause) {
        return lookAlikes.stream().filter(pair -> pair.has(cause)).toList();
    }

    /** The steps to open for a check, outermost first, the check's own step last. */
    public List<AccessStep> wayTo(String step) {
        List<AccessStep> way = new ArrayList<>();
        Optional<String> at = Optional.of(step);
        while (at.isPresent()) {
            AccessStep here = access.get(at.get());
            way.add(0, here);
            at = here.inside();
        }
        return List.copyOf(way);
    }

    /** How long one waits, without working, for an answer from a place; empty where it comes at once. */
    public Optional<AccessStep.Wait> waitsFor(String step) {
        return wayTo(step).stream().flatMap(s -> s.waits().stream()).max(Comparator.naturalOrder());
    }

    /** The causes that can produce the finding. */
    public List<Cause> causesOf(String finding) {
        return causes.values().stream()
                .filter(cause ->
                        cause.links().stream().anyMatch(l -> l.finding().equals(finding)))
                .toList();
    }

    /** The same knowledge with other causes. */
    public KnowledgeBase withCauses(Map<String, Cause> causes) {
        return new KnowledgeBase(
                vocabulary,
                access,
                parts,
                measures,
                findings,
                retired,
                causes,
                lookAlikes,
                neverTogether,
                follows,
                explainedBy,
                oneFacts,
                mustLooks,
                befores,
                context,
                coaching,
                towing,
                towCautions,
                prevention,
                cautions,
                sources,
                synonyms,
                wordings,
                pages,
                language,
                spanish);
    }
}
