package witnessmark.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;

/**
 * The findings that carry a verdict: each was actually turned round and the case judged again. Where no single one
 * changes the verdict, pairs of the weightiest were turned.
 *
 * @param turned groups of findings, one each or two each, weightiest first, with the verdict that they would leave
 * @param tried how many single findings were turned round
 */
public record CarryingFindings(Verdict verdict, List<Turned> turned, int tried) {
    private static final int MOST_FOR_PAIRS = 12;

    /** Findings that, turned round together, give another verdict. */
    public record Turned(List<String> findings, Verdict then) {}

    public static CarryingFindings of(Diagnosis diagnosis, CaseFile file) {
        return new Turning(diagnosis, file).result();
    }

    private static final class Turning {
        private final Diagnosis diagnosis;
        private final CaseFile file;
        private final CombinedEvidence evidence;
        private final Judgement judgement;
        private final Map<String, FindingState> taken = new LinkedHashMap<>();

        Turning(Diagnosis diagnosis, CaseFile file) {
            this.diagnosis = diagnosis;
            this.file = file;
            this.evidence = CombinedEvidence.of(file);
            try (OpenCase open = diagnosis.open(file, evidence)) {
                judgement = open.judgement();
                Map<String, FindingState> states = open.taken();
                Map<String, Double> weights = weights();
                states.keySet().stream()
                        .sorted(Comparator.comparingDouble((String f) -> -weights.getOrDefault(f, 0.0))
                                .thenComparing(f -> f))
                        .forEach(f -> taken.put(f, states.get(f)));
            }
        }

        CarryingFindings result() {
            List<String> findings = taken.keySet().stream()
                    .filter(f -> taken.get(f) != FindingState.UNSURE)
                    .toList();
            List<Turned> turned = new ArrayList<>();
            findings.forEach(f -> turn(List.of(f), turned));
            if (turned.isEmpty()) {
                List<String> weightiest = findings.subList(0, Math.min(MOST_FOR_PAIRS, findings.size()));
                for (int i = 0; i < weightiest.size(); i++) {
                    for (int j = i + 1; j < weightiest.size(); j++) {
                        turn(List.of(weightiest.get(i), weightiest.get(j)), turned);
                    }
                }
            }
            return new CarryingFindings(judgement.verdict(), List.copyOf(turned), findings.size());
        }

        private void turn(List<String> findings, List<Turned> turned) {
            Map<String, FindingState> otherwise = new LinkedHashMap<>();
            findings.forEach(f -> otherwise.put(
                    f, taken.get(f) == FindingState.PRESENT ? FindingState.ABSENT : FindingState.PRESENT));
            CaseFile supposed = Supposed.in(file, otherwise, diagnosis.knowledge());
            try (OpenCase open = diagnosis.open(supposed, evidence.asOf(supposed))) {
                Verdict then = open.verdict();
                if (!then.classId().equals(judgement.verdict().classId())) {
                    turned.add(new Turned(findings, then));
                }
            }
        }

        /** The most that each finding moves a cause of rank, whichever way. */
        private Map<String, Double> weights() {
            Map<String, Double> weights = new HashMap<>();
            for (RankedCause cause : judgement.causesFrom(0.1)) {
                cause.evidenceFor().forEach(w -> weights.merge(w.finding(), Math.abs(w.decibans()), Math::max));
                cause.evidenceAgainst().forEach(w -> weights.merge(w.finding(), Math.abs(w.decibans()), Math::max));
            }
            return weights;
        }
    }
}
