package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.FactHandle;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Believed;
import witnessmark.diagnosis.fact.ClassChange;
import witnessmark.diagnosis.fact.Compared;
import witnessmark.diagnosis.fact.Contradiction;
import witnessmark.diagnosis.fact.GearSaid;
import witnessmark.diagnosis.fact.Given;
import witnessmark.diagnosis.fact.HeldBack;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.diagnosis.fact.NotApplicable;
import witnessmark.diagnosis.fact.OddsChange;
import witnessmark.diagnosis.fact.Remark;
import witnessmark.diagnosis.fact.Reported;
import witnessmark.diagnosis.fact.Settled;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.diagnosis.fact.ThinLog;
import witnessmark.gearbox.Layout;

/**
 * One case's working memory: facts go in and out, and what followed from a fact that is taken out goes with it.
 * Not for use by several threads.
 */
final class RuleSession implements AutoCloseable {
    private final KieSession session;
    private final KnowledgeFacts knowledge;
    private final Map<String, FactHandle> reports = new HashMap<>();
    private final Map<String, List<FactHandle>> measurements = new HashMap<>();
    /** What was learnt: each piece of knowledge is one object, whatever it is filed under. */
    private final Set<Object> known = Collections.newSetFromMap(new IdentityHashMap<>());

    private final List<FactHandle> beliefs = new ArrayList<>();

    RuleSession(RuleBase rules, KnowledgeFacts knowledge, Layout layout, Sentences say) {
        this.session = rules.newSession();
        this.knowledge = knowledge;
        session.setGlobal("say", say);
        session.insert(layout);
        knowledge.ofLayout(layout).forEach(session::insert);
    }

    /** Sets what is reported of a finding, in place of an earlier report. */
    void report(String finding, FindingState state) {
        withdraw(finding);
        learn(knowledge.aboutFinding(finding));
        reports.put(finding, session.insert(new Reported(finding, state)));
    }

    /** Takes a report out; what followed from it goes too. */
    void withdraw(String finding) {
        FactHandle handle = reports.remove(finding);
        if (handle != null) {
            session.delete(handle);
        }
    }

    /** Sets a measured value and how it reads without a limit, in place of an earlier one of the same measure. */
    void measure(Measured measured, List<Compared> compared) {
        measurements.getOrDefault(measured.measure(), List.of()).forEach(session::delete);
        learn(knowledge.aboutMeasure(measured.measure()));
        measurements.put(
                measured.measure(),
                Stream.concat(Stream.of(measured), compared.stream())
                        .map(session::insert)
                        .toList());
    }

    /** Says that what logs show of a finding is too little to carry a conclusion. */
    void thin(ThinLog log) {
        session.insert(log);
    }

    /** Says in which gear a finding was heard, or on which pair it was seen. */
    void gear(GearSaid gear) {
        session.insert(gear);
    }

    Premises premises() {
        forgetBeliefs();
        session.fireAllRules();
        Collection<?> all = List.copyOf(session.getObjects());
        return new Premises(
                facts(all, Taken.class, Comparator.comparing(Taken::finding).thenComparing(Taken::from)),
                facts(all, Settled.class, Comparator.comparing(Settled::finding).thenComparing(Settled::by)),
                facts(all, NotApplicable.class, Comparator.comparing(NotApplicable::id)),
                facts(
                        all,
                        OddsChange.class,
                        Comparator.comparing(OddsChange::finding).thenComparing(OddsChange::target)),
                facts(all, ClassChange.class, Comparator.comparing(ClassChange::cause)),
                facts(
                        all,
                        Contradiction.class,
                        Comparator.comparing((Contradiction c) -> String.join(",", c.findings()))),
                facts(all, Remark.class, Comparator.comparing(Remark::text)));
    }

    /**
     * What may be said of these beliefs; they go again before anything else is asked.
     *
     * @param weighed what the network says besides: what the beliefs lean on, what would explain the parts instead
     */
    Conclusions conclusions(List<Believed> believed, List<Object> weighed) {
        forgetBeliefs();
        believed.forEach(b -> beliefs.add(session.insert(b)));
        weighed.forEach(w -> beliefs.add(session.insert(w)));
        believed.forEach(b -> knowledge.aboutCause(b.cause()).forEach(fact -> beliefs.add(session.insert(fact))));
        session.fireAllRules();
        Collection<?> all = List.copyOf(session.getObjects());
        return new Conclusions(
                facts(all, HeldBack.class, Comparator.comparing(HeldBack::cause).thenComparing(h -> h.why()
                        .toString())),
                facts(
                        all,
                        Given.class,
                        Comparator.comparingInt(Given::rank)
                                .thenComparingInt(Given::place)
                                .thenComparing(Given::text)
                                .thenComparing(Given::because)),
                facts(all, Remark.class, Comparator.comparing(Remark::text)));
    }

    private void forgetBeliefs() {
        beliefs.forEach(session::delete);
        beliefs.clear();
    }

    @Override
    public void close() {
        session.dispose();
    }

    private void learn(List<Object> facts) {
        facts.stream().filter(known::add).forEach(session::insert);
    }

    private static <T> List<T> facts(Collection<?> all, Class<T> type, Comparator<T> order) {
        return all.stream()
                .filter(type::isInstance)
                .map(type::cast)
                .distinct()
                .sorted(order)
                .toList();
    }
}
