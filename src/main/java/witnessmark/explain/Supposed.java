package witnessmark.explain;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
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
                    .forEach(
                            e -> sheet.evidence(sheet.evidence(e.id()).orElse(e).without(List.of(finding))));
        });
        return sheet.toCaseFile();
    }

    private static List<String> measuresOf(String finding, KnowledgeBase knowledge) {
        return knowledge.measures().values().stream()
                .filter(m -> m.below().equals(Optional.of(finding)) || m.above().equals(Optional.of(finding)))
                .map(Measure::id)
                .toList();
    }
}
