package witnessmark.diagnosis;

import java.util.List;
import witnessmark.casefile.FindingState;
import witnessmark.knowledge.Cause;

/**
 * How much of the evidence that matters has been looked at. Each finding matters by what it would show of the causes
 * still in question: the sum over the causes of probability times how far the strength stands above the background.
 */
final class ShareLookedAt {
    private ShareLookedAt() {}

    /** From 0, nothing looked at, to 1, everything that the likely causes should show. */
    static double of(NetworkReading reading) {
        double all = 0;
        double seen = 0;
        CauseNetwork network = reading.network();
        for (int c = 0; c < network.causes().size(); c++) {
            double probability = reading.isInQuestion(c) ? reading.probability(c) : 0;
            if (probability == 0) {
                continue;
            }
            List<Cause.Link> links = network.causes().get(c).links();
            int[] findings = network.linkedFindings(c);
            for (int i = 0; i < findings.length; i++) {
                if (reading.canBeFound(findings[i])) {
                    double background = network.findings().get(findings[i]).background();
                    double worth = probability * Math.max(0, links.get(i).strength() - background);
                    all += worth;
                    seen += isAnswered(reading.state(findings[i])) ? worth : 0;
                }
            }
        }
        return all == 0 ? 0 : seen / all;
    }

    private static boolean isAnswered(FindingState state) {
        return state == FindingState.PRESENT || state == FindingState.ABSENT;
    }
}
