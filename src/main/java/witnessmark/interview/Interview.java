package witnessmark.interview;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.NextVisit;
import witnessmark.diagnosis.OpenCase;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.planner.PlanChecks;

/**
 * One interview about one case. Each answer is written into the notebook before anything else happens, and where to go
 * on is read back from it, so an interview that was stopped or killed goes on at the same place.
 *
 * <p>Methods that take an answer throw {@link witnessmark.casefile.CaseRefused} for one that the case does not take;
 * nothing is changed then. Not for several threads.
 */
public final class Interview implements AutoCloseable {
    private final Diagnosis diagnosis;
    private final KnowledgeBase knowledge;
    private final PlanChecks planner;
    private final Notebook notebook;
    private boolean pastTheEnd;
    /** The last entry when the technician last wished to go on. */
    private long knownFrom;
    /** What nobody had looked at, and what is to be asked again. */
    private final Set<String> again = new LinkedHashSet<>();

    private CaseHistory history;
    private Position position;
    private CombinedEvidence evidence;
    private OpenCase open;
    /** The question chosen, null until it is asked for after a change. */
    private @Nullable Optional<Question> question;
    /** The plan, null until it is asked for after a change. */
    private @Nullable List<NextVisit> plan;

    public Interview(Diagnosis diagnosis, Notebook notebook) {
        this.diagnosis = diagnosis;
        this.knowledge = diagnosis.knowledge();
        this.planner = new PlanChecks(knowledge.access());
        this.notebook = notebook;
        this.history = notebook.history();
        this.position = Position.of(history, notebook.place());
        this.evidence = CombinedEvidence.of(history.present());
        this.open = diagnosis.open(history.present(), evidence);
    }

    public CaseFile present() {
        return history.present();
    }

    /** How many checks were answered in this interview so far. */
    public int answered() {
        return answers().size();
    }

    public Stage stage() {
        return position.stage();
    }

    /** Takes the answer to an intake stage, empty for nothing said, and goes on to the next. */
    public void tell(String answer) {
        tell(answer, List.of());
    }

    /** As {@link #tell(String)}, with the findings that the words were confirmed to mean. */
    public void tell(String answer, List<String> meant) {
        tellMeant(
                answer,
                meant.stream()
                        .map(finding -> new FindingSet(new FindingEntry(finding, FindingState.PRESENT)))
                        .toList());
    }

    /** The same, with the entries that the words were confirmed to mean. */
    public void tellMeant(String answer, List<? extends Change> meant) {
        List<Change> changes = new ArrayList<>();
        Intake.change(stage(), answer, present()).ifPresent(changes::add);
        changes.addAll(meant);
        write(changes);
        goTo(stage().next());
    }

    /** What to ask now; empty if the interview ends here or is not at the checks yet. */
    public Optional<Question> question() {
        Optional<Question> now = question;
        if (now == null) {
            now = stage() == Stage.CHECKS ? chosen() : Optional.empty();
            question = now;
        }
        return now;
    }

    private Optional<Question> chosen() {
        if (pastTheEnd) {
            return first(plan()).map(this::question);
        }
        Set<String> left = leftWherePeopleKnow();
        List<NextVisit> plan = left.equals(leftOut()) ? plan() : open.visits(soFar().hands(), left);
        return stopRule(left).ask(plan).map(this::question);
    }

    /** What is not asked, with the places that were left because nobody knew, or with all of them; what is owed stays. */
    private Set<String> leftWherePeopleKnow() {
        NotKnown notKnown = notKnown();
        Set<String> left = notKnown.isEnough()
                ? new LinkedHashSet<>(knowledge.findings().keySet())
                : soFar().in(notKnown.placesLeft());
        if (!left.isEmpty()) {
            left.removeAll(stopRule().owed());
        }
        left.addAll(leftOut());
        return left;
    }

    private NotKnown notKnown() {
        return new WorkSoFar(knowledge, planner, present(), Answered.since(knownFrom, history, position)).notKnown();
    }

    /** Whether the place was left because nobody knew. */
    public boolean wasLeftNotKnown(String place) {
        return notKnown().placesLeft().contains(place);
    }

    /** Whether something that any mechanic looks at first for the complaint is still to be asked. */
    public boolean owesFirstLooks() {
        return stopRule().owesFirstLooks(plan());
    }

    /** The findings last answered in this interview to be there or perhaps there, the last one first; at most so many. */
    public List<String> lastFound(int most) {
        List<String> found = new ArrayList<>(answers().stream()
                .filter(answer -> !answer.measured())
                .map(Answered.Answer::id)
                .filter(id -> isFound(present().findings().get(id)))
                .toList());
        Collections.reverse(found);
        return List.copyOf(found.subList(0, Math.min(most, found.size())));
    }

    private static boolean isFound(@Nullable FindingEntry entry) {
        return entry != null && (entry.state() == FindingState.PRESENT || entry.state() == FindingState.UNSURE);
    }

    /** Why nothing more is asked. */
    public Ending ending() {
        return stopRule().ending(plan(), endsNotKnown());
    }

    private boolean endsNotKnown() {
        NotKnown notKnown = notKnown();
        return !pastTheEnd
                && (notKnown.isEnough() || !notKnown.placesLeft().isEmpty())
                && stopRule().ask(plan()).isPresent();
    }

    /** What would tell most, whether nobody could look at it when it was asked or it was not asked yet. */
    public List<NextCheck> wouldHelp() {
        Set<String> out = soFar().leftOut(skipped(), soFar().notLookedAt());
        return open.visits(soFar().hands(), out).stream()
                .flatMap(visit -> visit.checks().stream())
                .filter(check -> check.gainBits() >= PlanChecks.TRIFLE_BITS)
                .sorted(Comparator.comparingDouble(c -> -c.gainBits()))
                .toList();
    }

    /** How many questions were answered with "not looked at" and are so still. */
    public int notLookedAt() {
        return soFar().notLookedAt().size();
    }

    /**
     * Goes on asking: where nobody knew, from there as if it began; else although nothing open would change the verdict
     * enough.
     */
    public void goOn() {
        pastTheEnd = !endsNotKnown();
        knownFrom = history.last().number();
        changed();
    }

    /** Asks again what nobody had looked at when it was asked. */
    public void askAgainNotKnown() {
        pastTheEnd = false;
        knownFrom = history.last().number();
        again.addAll(soFar().notLookedAt());
        changed();
    }

    /** Sets what was seen of a finding. */
    public void answer(FindingEntry entry) {
        begin();
        again.remove(entry.finding());
        write(List.of(new FindingSet(entry)));
    }

    /**
     * What is said to be seen of a place that is inside the box, although the unit is not known to be out or apart. Then others
     * saw it before, or the unit lies open now and what it could do in the truck need not be asked.
     */
    public Optional<Finding> seenInside() {
        return soFar().seenInside();
    }

    /** How the unit stands, where that is learnt later than it was asked; nothing changes where nothing is said. */
    public void unitStands(String answer) {
        Intake.change(Stage.UNIT_STATE, answer, present()).ifPresent(change -> write(List.of(change)));
    }

    /** A case that came with findings has no place kept yet; without one its answers would not be counted. */
    private void begin() {
        if (!position.isAmongChecks(history.last().number() + 1)) {
            goTo(stage());
        }
    }

    /** Sets a measured value; its finding follows if it has a limit. */
    public void measured(Measurement measurement) {
        begin();
        soFar().yields(measurement.measure()).forEach(again::remove);
        write(List.of(new MeasurementSet(measurement)));
    }

    /**
     * Takes it that what is on record of a finding does not hold: an answer becomes unsure with a word on why, so that the
     * record still says what was there; a measured value it follows from is taken out.
     *
     * @throws CaseRefused if it comes from a record filed with the case, which only whoever filed it can take out
     */
    public void doesNotHold(String finding) {
        List<Change> changes = new ArrayList<>();
        FindingEntry entry = present().findings().get(finding);
        if (entry != null) {
            changes.add(new FindingSet(new FindingEntry(finding, FindingState.UNSURE, overruled(entry))));
        }
        present().measurements().keySet().stream()
                .filter(m -> soFar().yields(m).anyMatch(finding::equals))
                .forEach(m -> changes.add(new MeasurementCleared(m)));
        if (changes.isEmpty()) {
            throw new CaseRefused(
                    "'" + finding + "' comes from a record filed with the case",
                    "take the record out with: case clear " + present().id().text() + " and the name of the record");
        }
        write(changes);
    }

    private static String overruled(FindingEntry entry) {
        String said = "answered " + entry.state().word() + ", overruled when answers did not go together";
        return entry.note().isEmpty() ? said : entry.note() + "; " + said;
    }

    /** What is taken of a finding now; "not looked at" if nothing. */
    public FindingState stateOf(String finding) {
        return open.taken().getOrDefault(finding, FindingState.NOT_LOOKED_AT);
    }

    /** Asks nothing more in this place and what lies inside it. */
    public void skip(String place) {
        leave(position.skipping(place));
    }

    /** Asks again in the places that were skipped. */
    public void skipNothing() {
        leave(position.skippingNothing());
    }

    /** The ids of the places skipped. */
    public Set<String> skipped() {
        return position.skipped();
    }

    /** Takes the last answer back, so that its question comes again; false if there is none to take back. */
    public boolean back() {
        pastTheEnd = false;
        if (stage() == Stage.TRUCK) {
            return false;
        }
        Optional<Answered.Answer> last = stage() == Stage.CHECKS ? Answered.last(history, position) : Optional.empty();
        last.ifPresentOrElse(answer -> write(List.of(answer.takenBack())), () -> goTo(stage().before()));
        return true;
    }

    /** What can be said now; the checks ahead are those of {@link #plan()}. */
    public Judgement judgement() {
        return open.standing();
    }

    /** Work done for the questions asked so far, minutes. */
    public double workMinutes() {
        return soFar().workMinutes();
    }

    /** Whether the hands were in a place before and went on from it. */
    public boolean wasLeft(String place) {
        return soFar().hands().left().contains(place);
    }

    /** The checks that would tell something but that nobody can make any more, those that would tell most first. */
    public List<NextCheck> lost() {
        Set<String> lost = soFar().lost();
        return lost.isEmpty()
                ? List.of()
                : open.visits(soFar().hands(), present().findings().keySet()).stream()
                        .flatMap(visit -> visit.checks().stream())
                        .filter(check -> lost.contains(check.finding()) && check.gainBits() >= PlanChecks.TRIFLE_BITS)
                        .sorted(Comparator.comparingDouble(c -> -c.gainBits()))
                        .toList();
    }

    /** What lies ahead: the places still worth going to, in order. */
    public List<NextVisit> plan() {
        List<NextVisit> made = plan;
        if (made == null) {
            made = open.visits(soFar().hands(), leftOut());
            plan = made;
        }
        return made;
    }

    private Set<String> leftOut() {
        return soFar().leftOut(skipped(), again);
    }

    @Override
    public void close() {
        open.close();
    }

    private List<Answered.Answer> answers() {
        return Answered.in(history, position);
    }

    private void goTo(Stage stage) {
        leave(position.at(stage, history.last().number()));
    }

    private void leave(Position to) {
        notebook.leave(to.text());
        position = to;
        changed();
    }

    private void changed() {
        question = null;
        plan = null;
    }

    private void write(List<? extends Change> changes) {
        changed();
        if (changes.isEmpty()) {
            return;
        }
        history = notebook.write(changes);
        open.close();
        evidence = evidence.asOf(present());
        open = diagnosis.open(present(), evidence);
    }

    private StopRule stopRule() {
        return stopRule(leftOut());
    }

    private StopRule stopRule(Set<String> left) {
        return new StopRule(
                open,
                soFar().hands(),
                new Lost(knowledge, planner),
                left,
                skipped().size());
    }

    private static Optional<StopRule.Asked> first(List<NextVisit> plan) {
        return plan.stream()
                .findFirst()
                .map(visit -> new StopRule.Asked(visit.checks().get(0), visit));
    }

    private Question question(StopRule.Asked asked) {
        Finding finding = knowledge.findings().get(asked.check().finding());
        return new Question(
                answered() + 1,
                finding,
                asked.check(),
                asked.visit(),
                soFar().cautions(asked.check()),
                measureOf(finding.id()));
    }

    private Optional<Measure> measureOf(String finding) {
        return knowledge.measures().values().stream()
                .filter(m -> m.below().equals(Optional.of(finding)) || m.above().equals(Optional.of(finding)))
                .findFirst();
    }

    private WorkSoFar soFar() {
        return new WorkSoFar(knowledge, planner, present(), answers());
    }
}
