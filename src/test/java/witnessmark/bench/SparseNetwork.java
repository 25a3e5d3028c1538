package witnessmark.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import witnessmark.inference.GivenEvidence;
import witnessmark.inference.Link;
import witnessmark.inference.Network;
import witnessmark.inference.Report;

/**
 * A made-up network linked as sparsely as a real knowledge base, and a case in it; the same seed gives the same. The
 * findings present are the worst the benchmark can ask for: any findings, whether or not few causes explain them.
 */
public record SparseNetwork(Network network, GivenEvidence evidence, int[] unanswered) {
    public static SparseNetwork of(int causes, int findings, int linksPerCause, int answered, int present, long seed) {
        var random = new SplittableRandom(seed);
        var links = new ArrayList<List<Link>>();
        for (int f = 0; f < findings; f++) {
            links.add(new ArrayList<>());
        }
        // Every finding gets a cause, then the rest of the links fall anywhere.
        for (int i = 0; i < Math.max(findings, causes * linksPerCause); i++) {
            link(links.get(i < findings ? i : random.nextInt(findings)), random.nextInt(causes), random);
        }
        var network = new Network(
                random.doubles(causes, 0.005, 0.05).toArray(),
                random.doubles(findings, 0.005, 0.05).toArray(),
                links);
        int[] order = shuffled(findings, random);
        Map<Integer, Report> reports = new HashMap<>();
        for (int i = 0; i < answered; i++) {
            reports.put(order[i], i < present ? Report.PRESENT : Report.ABSENT);
        }
        var unanswered = Arrays.copyOfRange(order, answered, findings);
        return new SparseNetwork(network, GivenEvidence.of(reports), unanswered);
    }

    private static void link(List<Link> ofFinding, int cause, SplittableRandom random) {
        if (ofFinding.stream().noneMatch(link -> link.cause() == cause)) {
            double[] strengths = {0.95, 0.80, 0.55, 0.30, 0.10};
            ofFinding.add(new Link(cause, strengths[random.nextInt(strengths.length)]));
        }
    }

    private static int[] shuffled(int n, SplittableRandom random) {
        int[] order = new int[n];
        for (int i = 0; i < n; i++) {
            int j = random.nextInt(i + 1);
            order[i] = order[j];
            order[j] = i;
        }
        return order;
    }
}
