package witnessmark.bench;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.Verdict;
import witnessmark.interview.Complaints;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.knowledge.search.FindEntries;

/**
 * A technician who answers from a case whose outcome is known: as the case says; "absent" where it says nothing, the
 * outcome is determined and none of the true causes would produce the sign; else "not looked at", since the case does
 * not tell. Where the outcome is determined, a check was made right unless the case says otherwise. Where the case holds a
 * value and a word, or two words, of the regulator's pressure that disagree, another source has it otherwise.
 */
final class KnownAnswers {
    private static final int COMPLAINTS_TOLD = 2;
    /** Says of the regulator's pressure that another source has it otherwise. */
    private static final String READ_OTHERWISE = "air-pressure-read-otherwise";

    private final CaseFile file;
    private final ExpectedOutcome expected;
    private final KnowledgeBase knowledge;
    private final FindEntries search;
    private final Verdict whole;
    private final Map<String, FindingState> stated = new HashMap<>();
    private final Set<String> ofTrueCauses = new LinkedHashSet<>();

    /**
     * What is known of a case.
     *
     * @param whole the verdict on all that the case says
     */
    KnownAnswers(CaseDocument document, KnowledgeBase knowledge, FindEntries search, Verdict whole) {
        this.whole = whole;
        file = document.present();
        expected = document.expected().orElseThrow();
        this.knowledge = knowledge;
        this.search = search;
        file.evidence().values().forEach(e -> stated.putAll(e.findings()));
        file.findings().values().forEach(entry -> stated.put(entry.finding(), entry.state()));
        file.measurements().values().forEach(this::measured);
        Set<String> causes = new LinkedHashSet<>(expected.first());
        causes.addAll(expected.withinThree());
        stated.keySet().retainAll(knowledge.findings().keySet());
        causes.forEach(c -> knowledge.causes().get(c).links().forEach(link -> ofTrueCauses.add(link.finding())));
    }

    CaseFile file() {
        return file;
    }

    boolean isDetermined() {
        return !expected.verdict().equals(Verdict.UNDETERMINED);
    }

    FindingState answer(String finding) {
        if (stated.containsKey(finding)) {
            return stated.get(finding);
        }
        if (finding.equals(READ_OTHERWISE) && isReadOtherwise()) {
            return FindingState.PRESENT;
        }
        if (isDetermined() && isConditionOfACheck(finding)) {
            return FindingState.PRESENT;
        }
        return !isDetermined() || ofTrueCauses.isEmpty() || ofTrueCauses.contains(finding)
                ? FindingState.NOT_LOOKED_AT
                : FindingState.ABSENT;
    }

    /** The value that the case holds of a measure beside a word that says the opposite: he tells both. */
    Optional<Measurement> toldAgainst(String finding) {
        FindingEntry word = file.findings().get(finding);
        return word == null || word.state() == stated.get(finding)
                ? Optional.empty()
                : file.measurements().values().stream()
                        .filter(m -> yields(knowledge.measures().get(m.measure()), finding))
                        .findFirst();
    }

    /** What the case says is there too although the finding excludes it: two sheets that disagree, and he tells both. */
    List<String> toldBeside(String finding) {
        return isThere(finding)
                ? knowledge.neverTogether().stream()
                        .filter(pair -> pair.findings().contains(finding))
                        .flatMap(pair -> pair.findings().stream())
                        .filter(other -> !other.equals(finding) && isThere(other))
                        .distinct()
                        .toList()
                : List.of();
    }

    /** The word of the case of a finding, whatever was measured. */
    FindingState word(String finding) {
        FindingEntry word = file.findings().get(finding);
        return word == null ? answer(finding) : word.state();
    }

    private static boolean yields(Measure measure, String finding) {
        return Stream.of(measure.below(), measure.above())
                .anyMatch(f -> f.filter(finding::equals).isPresent());
    }

    private boolean isConditionOfACheck(String finding) {
        return knowledge.findings().values().stream().anyMatch(f -> f.needs().contains(finding));
    }

    /** Whether the case holds a value and a word, or two words, that say the opposite of the regulator's pressure. */
    private boolean isReadOtherwise() {
        return isCalledLowAndHigh() || isMeasuredOtherwise();
    }

    private boolean isCalledLowAndHigh() {
        return knowledge.neverTogether().stream()
                .filter(pair -> !pair.twoSources())
                .filter(pair -> pair.findings().stream().allMatch(this::isThere))
                .flatMap(pair -> pair.findings().stream())
                .anyMatch(this::isPressureReadElsewhere);
    }

    private boolean isPressureReadElsewhere(String finding) {
        return knowledge.neverTogether().stream()
                .anyMatch(pair -> pair.findings().containsAll(List.of(READ_OTHERWISE, finding)));
    }

    private boolean isMeasuredOtherwise() {
        return file.findings().values().stream()
                .filter(entry ->
                        Set.of(FindingState.PRESENT, FindingState.ABSENT).contains(entry.state()))
                .filter(entry -> isPressureReadElsewhere(entry.finding()))
                .anyMatch(entry -> stated.get(entry.finding()) != entry.state());
    }

    /**
     * What the technician starts with: the first two symptoms that are there. Where there is none, what the words of the
     * complaint, or of the title where there is no complaint, are taken for by the interview and is there.
     */
    List<String> complaint() {
        List<String> symptoms = stated.keySet().stream()
                .sorted()
                .filter(f -> isThere(f) && knowledge.findings().get(f).kind() == Finding.Kind.SYMPTOM)
                .limit(COMPLAINTS_TOLD)
                .toList();
        return symptoms.isEmpty()
                ? new Complaints(knowledge, search, file.gearbox())
                        .meantBy(file.complaint().isEmpty() ? file.title() : file.complaint()).stream()
                                .filter(this::isThere)
                                .limit(COMPLAINTS_TOLD)
                                .toList()
                : symptoms;
    }

    private boolean isThere(String finding) {
        return stated.get(finding) == FindingState.PRESENT;
    }

    /**
     * Whether a verdict is the expected one and names first one of the causes expected first. Where the whole case only
     * points to the class, for a look that it does not hold, pointing there is right.
     */
    boolean isRight(Verdict verdict) {
        boolean points = whole.standing() == Verdict.Standing.POINTS_TO
                && verdict.pointsTo().filter(expected.verdict()::equals).isPresent();
        return (points || verdict.classId().equals(expected.verdict()))
                && (expected.first().isEmpty()
                        || !isDetermined()
                        || verdict.carriedBy().stream().limit(1).anyMatch(expected.first()::contains));
    }

    private void measured(Measurement m) {
        Measure measure = knowledge.measures().get(m.measure());
        m.limits().map(l -> l.in(m.unit())).ifPresent(limits -> {
            measure.below()
                    .filter(f -> limits.low().isPresent())
                    .ifPresent(f -> stated.put(f, state(m.value() < limits.low().getAsDouble())));
            measure.above()
                    .filter(f -> limits.high().isPresent())
                    .ifPresent(
                            f -> stated.put(f, state(m.value() > limits.high().getAsDouble())));
        });
    }

    private static FindingState state(boolean present) {
        return present ? FindingState.PRESENT : FindingState.ABSENT;
    }
}
