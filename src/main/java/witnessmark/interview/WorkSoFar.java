package witnessmark.interview;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.TextField;
import witnessmark.diagnosis.NextCheck;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.planner.Hands;
import witnessmark.planner.PlanChecks;

/** What was looked at so far: what lies open, where the hands are, what need not be asked any more. */
final class WorkSoFar {
    private final KnowledgeBase knowledge;
    private final PlanChecks planner;
    private final CaseFile file;
    private final List<Answered.Answer> answered;
    private final Lost lost;

    WorkSoFar(KnowledgeBase knowledge, PlanChecks planner, CaseFile file, List<Answered.Answer> answered) {
        this.knowledge = knowledge;
        this.planner = planner;
        this.file = file;
        this.answered = answered;
        this.lost = new Lost(knowledge, planner);
    }

    /**
     * The findings on record that were looked at opened their places; a complaint opens none unless it was asked here. The
     * hands are where the last question was, unless it was passed and nobody went there.
     */
    Hands hands() {
        List<String> asked = answered.stream().flatMap(this::findings).toList();
        Set<String> open = new HashSet<>();
        file.findings().values().stream()
                .filter(entry -> entry.state() != FindingState.NOT_LOOKED_AT)
                .map(entry -> knowledge.findings().get(entry.finding()))
                .filter(f -> f.kind() != Finding.Kind.SYMPTOM || asked.contains(f.id()))
                .forEach(f -> open.addAll(planner.wayTo(f.access())));
        measured().forEach(f -> open.addAll(planner.wayTo(place(f))));
        unitState().ifPresent(state -> state.open().forEach(step -> open.addAll(planner.wayTo(step))));
        Hands nowhere = new Hands(open, Optional.empty());
        Optional<String> at = asked.stream()
                .filter(f -> wasLookedAt(f) || planner.openMinutes(place(f), nowhere) == 0)
                .reduce((before, last) -> last)
                .map(this::place);
        Set<String> left = new LinkedHashSet<>();
        asked.stream().filter(this::wasLookedAt).map(this::place).forEach(left::add);
        at.ifPresent(left::remove);
        return new Hands(open, at, left);
    }

    /** A finding on record of a place inside the box, where the unit is not known to be out or apart. */
    Optional<Finding> seenInside() {
        if (unitState().filter(state -> !state.open().isEmpty()).isPresent()) {
            return Optional.empty();
        }
        return file.findings().values().stream()
                .filter(entry -> entry.toldBy().isEmpty() && wasLookedAt(entry.finding()))
                .map(entry -> knowledge.findings().get(entry.finding()))
                .filter(f -> planner.wayTo(f.access()).stream()
                        .anyMatch(step -> knowledge.access().get(step).teardown()))
                .findFirst();
    }

    private Optional<UnitState> unitState() {
        return UnitState.parse(file.text(TextField.UNIT_STATE));
    }

    /**
     * The findings that nobody can look at any more: as the unit came, by what was found (a truck without drive makes no road
     * test), and by what was done for the questions asked. Work on record otherwise may have been done by others before, so
     * it ends nothing.
     */
    Set<String> lost() {
        Set<AccessStep.Use> ended = new LinkedHashSet<>(endedByFound());
        unitState().flatMap(UnitState::ended).ifPresent(ended::add);
        return lost.after(done(), ended);
    }

    /** The cautions of a check; those about the truck are left out on a gearbox that came, or was taken, out of it. */
    List<String> cautions(NextCheck check) {
        boolean onUnit = knowledge.wayTo(check.access()).stream().anyMatch(AccessStep::onUnit);
        return check.cautions().stream()
                .filter(caution -> !onUnit || !knowledge.cautions().get(caution).ofTruck() || !isOut())
                .toList();
    }

    private boolean isOut() {
        return Stream.concat(
                        unitState().flatMap(UnitState::ended).stream(),
                        done().stream().flatMap(step -> knowledge.access().get(step).ends().stream()))
                .anyMatch(AccessStep.Use.IN_TRUCK::equals);
    }

    /** The steps that lie open as the unit came, and those made for the questions asked. */
    private Set<String> done() {
        Set<String> done = new LinkedHashSet<>();
        unitState().ifPresent(state -> state.open().forEach(step -> done.addAll(planner.wayTo(step))));
        answered.stream()
                .flatMap(this::findings)
                .filter(this::wasLookedAt)
                .forEach(f -> done.addAll(planner.wayTo(place(f))));
        return done;
    }

    private List<AccessStep.Use> endedByFound() {
        return file.findings().values().stream()
                .filter(entry -> entry.state() == FindingState.PRESENT)
                .flatMap(entry -> knowledge.findings().get(entry.finding()).ends().stream())
                .toList();
    }

    /** Work done for the questions asked so far, minutes: each place opened once, and each check. */
    double workMinutes() {
        Set<String> opened = new LinkedHashSet<>();
        double minutes = 0;
        for (String finding :
                answered.stream().flatMap(this::findings).distinct().toList()) {
            if (wasLookedAt(finding)) {
                minutes += knowledge.findings().get(finding).minutes();
                opened.addAll(planner.wayTo(place(finding)));
            }
        }
        unitState().ifPresent(state -> state.open().forEach(step -> opened.removeAll(planner.wayTo(step))));
        return minutes
                + opened.stream()
                        .mapToDouble(step -> knowledge.access().get(step).minutes())
                        .sum();
    }

    /**
     * The findings not to be asked: those on record, what the program computes, what nobody can look at any more, and what lies
     * in a place skipped.
     *
     * @param again findings to be asked although they are on record as not looked at
     */
    Set<String> leftOut(Set<String> skipped, Set<String> again) {
        Set<String> out = new LinkedHashSet<>(file.findings().keySet());
        out.removeAll(again);
        out.addAll(measured());
        out.addAll(lost());
        knowledge.findings().values().stream()
                .filter(f ->
                        f.isComputed() || planner.wayTo(f.access()).stream().anyMatch(skipped::contains))
                .forEach(f -> out.add(f.id()));
        return out;
    }

    /** How often in a row nobody had looked. */
    NotKnown notKnown() {
        Map<String, Integer> inARow = new HashMap<>();
        int overall = 0;
        for (Answered.Answer answer : answered) {
            boolean looked = findings(answer).anyMatch(this::wasLookedAt);
            overall = looked ? 0 : overall + 1;
            findings(answer)
                    .map(this::place)
                    .findFirst()
                    .ifPresent(place -> inARow.merge(place, looked ? 0 : 1, (n, one) -> looked ? 0 : n + one));
        }
        return new NotKnown(inARow, overall);
    }

    /** The findings that were asked and that nobody had looked at. */
    Set<String> notLookedAt() {
        return answered.stream()
                .flatMap(this::findings)
                .filter(f -> !wasLookedAt(f))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** The findings in these places, not what lies behind them. */
    Set<String> in(Set<String> places) {
        return knowledge.findings().values().stream()
                .filter(f -> places.contains(f.access()))
                .map(Finding::id)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** The findings that follow from a measure, either side of its limits. */
    Stream<String> yields(String measure) {
        Measure of = knowledge.measures().get(measure);
        return Stream.concat(of.below().stream(), of.above().stream());
    }

    private Set<String> measured() {
        Set<String> measured = new LinkedHashSet<>();
        file.measurements().keySet().forEach(m -> yields(m).forEach(measured::add));
        return measured;
    }

    private boolean wasLookedAt(String finding) {
        FindingEntry entry = file.findings().get(finding);
        return entry == null || entry.state() != FindingState.NOT_LOOKED_AT;
    }

    private String place(String finding) {
        return knowledge.findings().get(finding).access();
    }

    private Stream<String> findings(Answered.Answer answer) {
        return answer.measured() ? yields(answer.id()) : Stream.of(answer.id());
    }
}
