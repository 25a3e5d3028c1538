package witnessmark.knowledge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import witnessmark.language.Language;

/**
 * Goes through every text of a knowledge base that answers and documents print, and puts another in its place. Parts,
 * cautions and advice hold both languages themselves.
 */
final class TranslateTexts {
    private final BiFunction<String, String, String> translated;

    /**
     * @param translated the new text, from the id of what it belongs to and the old one; never asked about an empty text
     */
    TranslateTexts(BiFunction<String, String, String> translated) {
        this.translated = translated;
    }

    KnowledgeBase of(KnowledgeBase base, Language language) {
        return new KnowledgeBase(
                base.vocabulary()
                        .withClasses(base.vocabulary().classes().stream()
                                .map(this::of)
                                .toList()),
                each(base.access(), this::of),
                base.parts(),
                each(base.measures(), this::of),
                each(base.findings(), this::of),
                each(base.retired(), r -> new Retired(r.id(), text(r.id(), r.title()), r.now())),
                each(base.causes(), this::of),
                base.lookAlikes().stream()
                        .map(p -> new LookAlike(
                                p.first(),
                                p.second(),
                                p.checks(),
                                text(p.first() + "/" + p.second(), p.tells()),
                                p.sources()))
                        .toList(),
                base.neverTogether().stream()
                        .map(n -> new NeverTogether(
                                n.findings(), n.twoSources(), text(String.join("/", n.findings()), n.why())))
                        .toList(),
                base.follows().stream()
                        .map(f -> new Follows(
                                f.premise(),
                                f.conclusion(),
                                f.always(),
                                text(f.premise() + "/" + f.conclusion(), f.why())))
                        .toList(),
                base.explainedBy().stream()
                        .map(e -> new ExplainedBy(e.finding(), e.by(), text(e.finding(), e.why())))
                        .toList(),
                base.oneFacts(),
                base.mustLooks(),
                base.befores(),
                base.context().stream()
                        .map(c -> new ContextEffect(
                                c.finding(), c.classId(), c.cause(), c.odds(), text(c.finding(), c.why())))
                        .toList(),
                base.coaching(),
                base.towing(),
                base.towCautions(),
                base.prevention(),
                base.cautions(),
                base.sources(),
                base.synonyms(),
                base.wordings(),
                base.pages(),
                language,
                base.spanish());
    }

    private <T> Map<String, T> each(Map<String, T> all, java.util.function.UnaryOperator<T> one) {
        Map<String, T> other = new LinkedHashMap<>();
        all.forEach((id, thing) -> other.put(id, one.apply(thing)));
        return other;
    }

    private String text(String id, String english) {
        return english.isEmpty() ? "" : translated.apply(id, english);
    }

    private Vocabulary.CauseClass of(Vocabulary.CauseClass c) {
        return new Vocabulary.CauseClass(
                c.id(), text(c.id(), c.title()), c.blames(), c.names(), text(c.id(), c.plain()));
    }

    private AccessStep of(AccessStep s) {
        return new AccessStep(
                s.id(),
                text(s.id(), s.title()),
                s.minutes(),
                s.inside(),
                s.teardown(),
                s.cautions(),
                s.needs(),
                s.ends(),
                s.waits(),
                s.onUnit());
    }

    private Measure of(Measure m) {
        return new Measure(
                m.id(),
                text(m.id(), m.title()),
                m.unit(),
                text(m.id(), m.typical()),
                m.limitCounts(),
                m.plausible(),
                m.possible(),
                m.usual().map(u -> u.saidFrom(text(m.id(), u.from()))),
                m.rise().map(r -> r.saidFrom(text(m.id(), r.from()))),
                m.below(),
                m.above(),
                m.sources());
    }

    private Finding of(Finding f) {
        return f.saying(
                text(f.id(), f.title()),
                text(f.id(), f.ask()),
                text(f.id(), f.look()),
                text(f.id(), f.looksLike()),
                text(f.id(), f.confusedWith()),
                text(f.id(), f.says()));
    }

    private Cause of(Cause c) {
        List<Cause.Against> against = c.against().stream()
                .map(a -> new Cause.Against(a.finding(), a.factor(), text(c.id(), a.why())))
                .toList();
        return c.saying(
                text(c.id(), c.title()),
                text(c.id(), c.mechanism()),
                against,
                c.repair().stream().map(r -> text(c.id(), r)).toList());
    }
}
