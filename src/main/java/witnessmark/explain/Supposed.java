package witnessmark.explain;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;

/** A case as it would be if some findings were otherwise; the case itself stays as it is. */
final class Supposed {
    private Supposed() {}

    /** The case with these findings so, and without the measurements and results that say otherwise. */
    static CaseFile in(CaseFile file, Map<String, FindingState> findings, KnowledgeBase knowledge) {
        CaseSheet sheet = new CaseSheet(file);
        findings.forEach((finding, state) -> {
            sheet.finding(new FindingEntry(finding, state));
            measuresOf(finding, knowledge).stream()
                    .filter(file.measurements()::containsKey)
                    .filter(m -> sheet.measurement(m).isPresent())
                    .forEach(sheet::clearMeasurement);
            file.evidence().values().stream()
                    .filter(e -> e.findings().containsKey(finding))
                    .forEach(e -> sheet.evidence(without(sheet.evidence(e.id()).orElse(e), finding)));
        });
        return sheet.toCaseFile();
    }

    private static List<String> measuresOf(String finding, KnowledgeBase knowledge) {
        return knowledge.measures().values().stream()
                .filter(m -> m.below().equals(Optional.of(finding)) || m.above().equals(Optional.of(finding)))
                .map(Measure::id)
                .toList();
    }

    private static Evidence without(Evidence e, String finding) {
        Map<String, FindingState> left = new LinkedHashMap<>(e.findings());
        left.remove(finding);
        Map<String, Likelihood> likelihoods = new LinkedHashMap<>(e.likelihoods());
        likelihoods.remove(finding);
        return new Evidence(
                e.id(), e.kind(), e.summary(), e.formula(), e.inputs(), e.file(), left, likelihoods, e.record());
    }
}
