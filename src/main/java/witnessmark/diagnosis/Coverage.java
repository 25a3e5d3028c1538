package witnessmark.diagnosis;

import witnessmark.casefile.FindingState;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/**
 * How much of the evidence that matters has been looked at. Each finding matters by what it would show of the causes
 * still in question: the sum over the causes of probability times how far the strength stands above the background.
 */
final class Coverage {
    private Coverage() {}

    /** From 0, nothing looked at, to 1, everything that the likely causes should show. */
    static double of(Reading reading, KnowledgeBase knowledge) {
        double all = 0;
        double seen = 0;
        for (Cause cause : knowledge.causes().values()) {
            double probability = reading.isInQuestion(cause.id()) ? reading.probability(cause.id()) : 0;
            if (probability == 0) {
                continue;
            }
            for (Cause.Link link : cause.links()) {
                Finding finding = knowledge.findings().get(link.finding());
                if (reading.canBeFound(finding.id())) {
                    double worth = probability * Math.max(0, link.strength() - finding.background());
                    all += worth;
                    seen += looked(reading, finding.id()) ? worth : 0;
                }
            }
        }
        return all == 0 ? 0 : seen / all;
    }

    private static boolean looked(Reading reading, String finding) {
        return reading.taken().containsKey(finding)
                && reading.taken().get(finding).state() != FindingState.UNSURE;
    }
}
