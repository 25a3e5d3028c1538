package witnessmark.diagnosis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.diagnosis.fact.Compared;
import witnessmark.diagnosis.fact.GearSaid;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.diagnosis.fact.Yields;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.knowledge.Retired;
import witnessmark.knowledge.Vocabulary;
import witnessmark.language.Language;

/** Judges cases on one knowledge base with one set of rules. */
public final class Diagnosis {
    private final RuleBase rules;
    private final KnowledgeBase knowledge;
    private final KnowledgeFacts facts;
    private final CauseNetwork network;
    private final ChooseChecks checks;
    private final Sentences say;

    public Diagnosis(RuleBase rules, KnowledgeBase knowledge) {
        this.rules = rules;
        this.knowledge = knowledge;
        this.facts = new KnowledgeFacts(knowledge);
        this.network = new CauseNetwork(knowledge);
        this.checks = new ChooseChecks(knowledge);
        this.say = new Sentences(knowledge.language());
    }

    /** The same rules and knowledge in another language. */
    public Diagnosis in(Language language) {
        return language == knowledge.language() ? this : new Diagnosis(rules, knowledge.in(language));
    }

    public KnowledgeBase knowledge() {
        return knowledge;
    }

    /**
     * The judgement of a case as it stands.
     *
     * @throws witnessmark.yaml.FaultyInput where the case names what the knowledge base does not know
     */
    public Judgement judge(CaseFile file) {
        return judge(file, CombinedEvidence.of(file));
    }

    /** The same with what the results kept in the case come to, where that was asked before. */
    public Judgement judge(CaseFile file, CombinedEvidence evidence) {
        try (OpenCase open = open(file, evidence)) {
            return open.judgement();
        }
    }

    /** A case whose findings can be changed and judged again; what followed from a finding goes with it. */
    public OpenCase open(CaseFile file) {
        return open(file, CombinedEvidence.of(file));
    }

    /** The same with what the results kept in the case come to, where that was asked before. */
    public OpenCase open(CaseFile file, CombinedEvidence evidence) {
        CheckKnown.check(file, evidence, knowledge);
        OpenCase open = new OpenCase(
                file.id().toString(), new RuleSession(rules, facts, file.gearbox(), say), network, knowledge, checks);
        open.reckoned(evidence.reckonedOnly());
        evidence.findings().forEach((finding, state) -> open.report(finding, state, evidence.likelihood(finding)));
        evidence.logs().forEach(e -> e.thin().ifPresent(why -> open.thin(e.finding(), say.thin(why))));
        file.findings().values().forEach(entry -> report(entry, open, file));
        file.measurements().values().forEach(m -> open.measure(measured(m), compared(m)));
        return open;
    }

    /**
     * An entry as it is asked today: one that mixed several answers says of each "one of these", where the case does not
     * say more of it.
     */
    private void report(FindingEntry entry, OpenCase open, CaseFile file) {
        Retired retired = knowledge.retired().get(entry.finding());
        entry.gear().ifPresent(gear -> knowledge
                .findings()
                .get(entry.finding())
                .gearRole()
                .ifPresent(role -> open.gear(new GearSaid(entry.finding(), role, gear))));
        if (entry.toldBy().isPresent()) {
            told(entry, open);
            return;
        }
        if (retired == null) {
            open.report(entry.finding(), entry.state());
            return;
        }
        boolean oneOfSeveral =
                entry.state() == FindingState.PRESENT && retired.now().size() > 1;
        retired.now().stream()
                .filter(now -> !file.findings().containsKey(now))
                .forEach(now -> open.report(now, oneOfSeveral ? FindingState.UNSURE : entry.state()));
    }

    /** What was only told is believed as far as a tale is; it is no look, and a denial weighs nothing. */
    private void told(FindingEntry entry, OpenCase open) {
        if (entry.state() == FindingState.PRESENT) {
            Vocabulary words = knowledge.vocabulary();
            open.report(
                    entry.finding(),
                    FindingState.UNSURE,
                    Optional.of(new Likelihood(words.toldIfSo(), words.toldIfNot())));
        }
    }

    /** How the measurement reads where no limit was given. */
    private List<Compared> compared(Measurement m) {
        return ReadSample.of(knowledge.measures().get(m.measure()), m)
                .map(sample -> sample.sides().entrySet().stream()
                        .map(side -> compared(sample, side.getKey(), side.getValue()))
                        .toList())
                .orElse(List.of());
    }

    private Compared compared(ReadSample sample, Yields.Side side, FindingState state) {
        return new Compared(sample.measure().id(), side, state, say.readSample(sample));
    }

    /** The measurement in the unit of its measure. */
    private Measured measured(Measurement m) {
        Measure measure = knowledge.measures().get(m.measure());
        Unit unit = measure.unit();
        return new Measured(
                m.measure(),
                m.unit().convert(m.value(), unit),
                m.limits().map(l -> side(l.low(), l, unit)).orElse(null),
                m.limits().map(l -> side(l.high(), l, unit)).orElse(null),
                measure.limitCounts(),
                unit.symbol(),
                m.limits().map(Limits::source).orElse(""),
                new Measured.AsRead(
                        m.value(),
                        m.unit().symbol(),
                        m.limits().map(l -> orNull(l.low())).orElse(null),
                        m.limits().map(l -> orNull(l.high())).orElse(null),
                        m.limits().map(Limits::unit).orElse(m.unit()).symbol()));
    }

    private static @Nullable Double orNull(OptionalDouble side) {
        return side.isPresent() ? side.getAsDouble() : null;
    }

    private static @Nullable Double side(OptionalDouble side, Limits limits, Unit unit) {
        return side.isPresent() ? limits.unit().convert(side.getAsDouble(), unit) : null;
    }
}
