package witnessmark.inference;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** A small network with evidence, drawn to be awkward: certain and impossible links, no background, extreme reports. */
record RandomCase(Network network, GivenEvidence evidence) {
    static RandomCase from(Random random) {
        int causes = 1 + random.nextInt(7);
        int findings = random.nextInt(10);
        var links = new ArrayList<List<Link>>();
        for (int f = 0; f < findings; f++) {
            double density = random.nextDouble();
            links.add(IntStream.range(0, causes)
                    .filter(c -> random.nextDouble() < density)
                    .mapToObj(c -> new Link(c, probability(random)))
                    .toList());
        }
        var network = new Network(
                IntStream.range(0, causes).mapToDouble(c -> probability(random)).toArray(),
                IntStream.range(0, findings)
                        .mapToDouble(f -> probability(random) / 2)
                        .toArray(),
                links);
        return new RandomCase(network, evidence(network, random));
    }

    /** Findings without a report, or with one that leaves both possible. */
    int[] askable() {
        return IntStream.range(0, network.findings())
                .filter(f -> {
                    var report = evidence.reports().get(f);
                    return report == null || report.ifPresent() > 0 && report.ifAbsent() > 0;
                })
                .toArray();
    }

    int[] allCauses() {
        return IntStream.range(0, network.causes()).toArray();
    }

    private static GivenEvidence evidence(Network network, Random random) {
        var evidence = GivenEvidence.none();
        for (int f = 0; f < network.findings(); f++) {
            evidence = switch (random.nextInt(5)) {
                case 0, 1 -> evidence.with(f, Report.PRESENT);
                case 2 -> evidence.with(f, Report.ABSENT);
                case 3 -> evidence.with(f, new Report(likelihood(random), likelihood(random)));
                default -> evidence;};
        }
        for (int c = 0; c < network.causes(); c++) {
            if (random.nextInt(8) == 0) {
                evidence = evidence.withCause(c, random.nextBoolean());
            }
        }
        return evidence;
    }

    private static double probability(Random random) {
        return switch (random.nextInt(12)) {
            case 0 -> 0;
            case 1 -> random.nextInt(3) == 0 ? 1 : 0.999999;
            case 2 -> 1e-9 * random.nextDouble();
            case 3, 4 -> 0.01 * random.nextDouble();
            default -> random.nextDouble();
        };
    }

    private static double likelihood(Random random) {
        return switch (random.nextInt(6)) {
            case 0 -> 1e-300;
            case 1 -> 1e-12;
            case 2 -> 1e150;
            default -> 1 - random.nextDouble();
        };
    }
}
