package witnessmark.diagnosis;

import java.util.Comparator;
import java.util.List;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.inference.GivenEvidence;
import witnessmark.inference.Link;
import witnessmark.inference.Report;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/** Holds two causes against the findings: which explains them better, one by one, and what would decide. */
final class CompareAccounts {
    private static final double DECIBANS_PER_NEPER = 10 / Math.log(10);
    private static final double WORTH_SHOWING_DECIBANS = 0.05;

    private final NetworkReading reading;
    private final KnowledgeBase knowledge;
    private final CauseNetwork network;

    CompareAccounts(NetworkReading reading, KnowledgeBase knowledge) {
        this.reading = reading;
        this.knowledge = knowledge;
        this.network = reading.network();
    }

    Accounts compare(String first, String second) {
        int one = network.cause(first);
        int other = network.cause(second);
        // A finding that says again what another of the same fact says does not enter, and so says nothing here.
        List<Accounts.Said> said = reading.taken().values().stream()
                .filter(taken -> reading.evidence().reports().containsKey(network.finding(taken.finding())))
                .map(taken -> said(taken, one, other))
                .sorted(Comparator.comparingDouble((Accounts.Said s) -> -Math.abs(s.decibans()))
                        .thenComparing(Accounts.Said::finding))
                .toList();
        return new Accounts(
                side(first),
                side(second),
                said,
                said.stream().mapToDouble(Accounts.Said::decibans).sum(),
                withOthers(one, other),
                10 * (Math.log10(Thresholds.odds(prior(one))) - Math.log10(Thresholds.odds(prior(other)))),
                deciding(one, other));
    }

    private Accounts.Side side(String id) {
        Cause cause = knowledge.causes().get(id);
        return new Accounts.Side(id, cause.title(), cause.mechanism(), reading.applies(id), reading.probability(id));
    }

    private Accounts.Said said(Taken taken, int one, int other) {
        Report report = reading.evidence().reports().get(network.finding(taken.finding()));
        double ifFirst = chance(taken.finding(), one);
        double ifSecond = chance(taken.finding(), other);
        return new Accounts.Said(
                taken.finding(),
                knowledge.findings().get(taken.finding()).title(),
                taken.state(),
                ifFirst,
                ifSecond,
                DECIBANS_PER_NEPER * Math.log(likelihood(report, ifFirst) / likelihood(report, ifSecond)));
    }

    private static double likelihood(Report report, double chance) {
        return report.ifPresent() * chance + report.ifAbsent() * (1 - chance);
    }

    /** Chance of the finding with only this cause at work. */
    private double chance(String finding, int cause) {
        int index = network.finding(finding);
        double strength = network.network().links(index).stream()
                .filter(link -> link.cause() == cause)
                .mapToDouble(Link::strength)
                .findFirst()
                .orElse(0);
        return 1 - (1 - network.network().background(index)) * (1 - strength);
    }

    private double withOthers(int one, int other) {
        return DECIBANS_PER_NEPER * (logLikelihood(one, other) - logLikelihood(other, one));
    }

    /** ln P(findings | this cause at work and that one not, the others as they may be). */
    private double logLikelihood(int present, int absent) {
        GivenEvidence evidence = reading.evidence().withPresent(present).withAbsent(absent);
        return reading.inference().logEvidence(evidence) - Math.log(prior(present)) - Math.log1p(-prior(absent));
    }

    private double prior(int cause) {
        return reading.prior(cause);
    }

    private List<Accounts.Deciding> deciding(int one, int other) {
        return knowledge.findings().values().stream()
                .filter(f -> !reading.taken().containsKey(f.id()) && !reading.isSettled(f.id()))
                .filter(f -> reading.canBeFound(f.id()))
                .map(f -> deciding(f, one, other))
                .filter(d -> d.expectedDecibans() >= WORTH_SHOWING_DECIBANS)
                .sorted(Comparator.comparingDouble((Accounts.Deciding d) -> -d.expectedDecibans())
                        .thenComparing(Accounts.Deciding::finding))
                .toList();
    }

    private Accounts.Deciding deciding(Finding finding, int one, int other) {
        double p = chance(finding.id(), one);
        double q = chance(finding.id(), other);
        return new Accounts.Deciding(
                finding.id(),
                finding.title(),
                finding.ask(),
                knowledge.access().get(finding.access()).title(),
                p,
                q,
                DECIBANS_PER_NEPER * (divergence(p, q) + divergence(q, p)) / 2);
    }

    /** Mean weight for the true one of two accounts, nepers (Kullback and Leibler, 1951). */
    private static double divergence(double p, double q) {
        return term(p, q) + term(1 - p, 1 - q);
    }

    private static double term(double p, double q) {
        return p == 0 ? 0 : p * Math.log(p / q);
    }
}
