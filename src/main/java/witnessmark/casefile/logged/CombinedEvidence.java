package witnessmark.casefile.logged;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.triplog.evidence.LogEvidence;

/**
 * What all results kept with a case come to together; the logs among them are weighed once, when this is made. Where two
 * results differ, present stands before unsure and unsure before absent: one shift made well does not undo another made
 * badly.
 */
public final class CombinedEvidence {
    private final Map<String, Evidence> results;
    private final WeighOnce weigh;
    private final LoggedTogether logs;
    private final Map<String, FindingState> findings = new LinkedHashMap<>();

    private CombinedEvidence(Map<String, Evidence> results, WeighOnce weigh) {
        this.results = results;
        this.weigh = weigh;
        logs = new LoggedTogether(results.values(), weigh);
        results.values().forEach(e -> e.findings().forEach((finding, state) -> {
            if (!LoggedTogether.covers(e, finding)) {
                findings.merge(finding, state, FindingState::weightier);
            }
        }));
        logs.states().forEach((finding, state) -> findings.merge(finding, state, FindingState::weightier));
    }

    /** The evidence of the case; without any, nothing follows. */
    public static CombinedEvidence of(CaseFile file) {
        return of(file, new WeighOnce());
    }

    /** The same where some of its logs may have been weighed already. */
    public static CombinedEvidence of(CaseFile file, WeighOnce weigh) {
        return new CombinedEvidence(file.evidence(), weigh);
    }

    /** The same for a case that may have changed: this, as long as its results are these. */
    public CombinedEvidence asOf(CaseFile file) {
        return results.equals(file.evidence()) ? this : of(file, weigh);
    }

    /** The findings that follow, each with its state. */
    public Map<String, FindingState> findings() {
        return Collections.unmodifiableMap(findings);
    }

    /** Findings that were reckoned and count for nothing, as another of the same act is counted. */
    public Set<String> reckonedOnly() {
        return results.values().stream()
                .flatMap(e -> e.reckoned().keySet().stream())
                .filter(finding -> !findings.containsKey(finding))
                .collect(Collectors.toSet());
    }

    /**
     * How well all results that speak of the finding fit it together: all logs as one, for they are of one truck, and
     * each other result as independent of the rest. Empty where one of them shows the finding outright, or none speaks
     * of it.
     */
    public Optional<Likelihood> likelihood(String finding) {
        FindingState state = findings.get(finding);
        if (state == null) {
            return Optional.empty();
        }
        double factor = logs.likelihood(finding).map(Likelihood::factor).orElse(1.0);
        for (Evidence result : results.values()) {
            if (LoggedTogether.covers(result, finding)) {
                continue;
            }
            Likelihood one = result.likelihoods().get(finding);
            if (one != null) {
                factor *= one.factor();
            } else if (state == result.findings().get(finding)) {
                return Optional.empty();
            }
        }
        return Optional.of(Likelihood.ofFactor(factor));
    }

    /** What the counts of all logs come to, also where it is too little to count; empty without such logs. */
    public List<LogEvidence> logs() {
        return logs.pooled();
    }
}
