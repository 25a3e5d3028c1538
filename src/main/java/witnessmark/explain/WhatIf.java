package witnessmark.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;

/**
 * The judgement as it is and as it would be.
 *
 * @param causes those that matter before or after, the one that moves most to the top first by its new chance
 */
public record WhatIf(Judgement now, Judgement then, List<Moved> causes) {
    private static final double WORTH_A_LINE = 0.01;

    /** A cause with its chance before and after; 0 where it was or would not be in question. */
    public record Moved(String cause, String title, double before, double after) {}

    /** Judges the case as it is and with some findings otherwise; nothing is stored. */
    public static WhatIf of(Diagnosis diagnosis, CaseFile file, Map<String, FindingState> findings) {
        CombinedEvidence evidence = CombinedEvidence.of(file);
        CaseFile supposed = Supposed.in(file, findings, diagnosis.knowledge());
        Judgement now = diagnosis.judge(file, evidence);
        Judgement then = diagnosis.judge(supposed, evidence.asOf(supposed));
        Set<String> ids = new LinkedHashSet<>();
        then.causesFrom(WORTH_A_LINE).forEach(c -> ids.add(c.id()));
        now.causesFrom(WORTH_A_LINE).forEach(c -> ids.add(c.id()));
        List<Moved> moved = new ArrayList<>();
        ids.forEach(id -> moved.add(new Moved(
                id, diagnosis.knowledge().causes().get(id).title(), probability(now, id), probability(then, id))));
        moved.sort(Comparator.comparingDouble((Moved m) -> -m.after()).thenComparing(m -> -m.before()));
        return new WhatIf(now, then, List.copyOf(moved));
    }

    private static double probability(Judgement judgement, String cause) {
        return judgement.causes().stream()
                .filter(c -> c.id().equals(cause))
                .mapToDouble(RankedCause::probability)
                .findFirst()
                .orElse(0);
    }
}
