package witnessmark.casefile.logged;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.Kind;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.LogRecord;

/**
 * What all logs of a case say together. They are of one truck, so they are one witness: their counts and what they cover
 * are added, and one likelihood for each finding follows. Results that were stored without counts cannot be added up; of
 * those that agree only the strongest counts, and opposing ones are set off against each other.
 */
final class LoggedTogether {
    private final Map<String, FindingState> states = new LinkedHashMap<>();
    private final Map<String, Likelihood> likelihoods = new LinkedHashMap<>();
    private final List<LogEvidence> pooled;

    LoggedTogether(Collection<Evidence> results, WeighOnce weigh) {
        List<Evidence> logs =
                results.stream().filter(e -> e.kind() == Kind.LOGGED).toList();
        pooled = logs.stream()
                .flatMap(e -> e.record().stream())
                .reduce(LogRecord::plus)
                .map(weigh::said)
                .orElse(List.of());
        Map<String, List<Likelihood>> said = new LinkedHashMap<>();
        pooled.stream().filter(LogEvidence::counts).forEach(e -> {
            states.put(e.finding(), state(e));
            said.computeIfAbsent(e.finding(), f -> new ArrayList<>()).add(new Likelihood(e.ifPresent(), e.ifAbsent()));
        });
        logs.stream().filter(e -> e.record().isEmpty()).forEach(e -> e.likelihoods()
                .forEach((finding, likelihood) -> {
                    states.merge(finding, e.findings().get(finding), FindingState::weightier);
                    said.computeIfAbsent(finding, f -> new ArrayList<>()).add(likelihood);
                }));
        said.forEach((finding, all) -> likelihoods.put(finding, together(all)));
    }

    static FindingState state(LogEvidence said) {
        return switch (said.state()) {
            case PRESENT -> FindingState.PRESENT;
            case ABSENT -> FindingState.ABSENT;
            case UNSURE -> FindingState.UNSURE;
        };
    }

    /** The strongest for and the strongest against, set off. */
    private static Likelihood together(List<Likelihood> all) {
        Optional<Likelihood> one = all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
        double strongestFor = all.stream().mapToDouble(Likelihood::factor).max().orElse(1);
        double strongestAgainst =
                all.stream().mapToDouble(Likelihood::factor).min().orElse(1);
        return one.orElseGet(() -> Likelihood.ofFactor(Math.max(1, strongestFor) * Math.min(1, strongestAgainst)));
    }

    /** Whether the result's own weight of the finding is counted here, and is not to be counted beside it. */
    static boolean covers(Evidence result, String finding) {
        return result.kind() == Kind.LOGGED
                && (result.record().isPresent() || result.likelihoods().containsKey(finding));
    }

    /** What the counts of all logs come to, finding by finding, also where it is too little to count. */
    List<LogEvidence> pooled() {
        return pooled;
    }

    Map<String, FindingState> states() {
        return states;
    }

    Optional<Likelihood> likelihood(String finding) {
        return Optional.ofNullable(likelihoods.get(finding));
    }
}
