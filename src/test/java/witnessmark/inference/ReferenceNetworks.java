package witnessmark.inference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Three networks of our own (networks.json) with results worked out apart from this program: posteriors.csv and
 * information-gain.csv by enumeration over all cause sets in Python; the cases of present and absent findings again in R
 * by inclusion-exclusion over present findings, agreeing to 1e-12; the gains by both sides of H(C|e) - E H(C|e,F) =
 * H(F|e) - E H(F|C).
 */
final class ReferenceNetworks {
    private ReferenceNetworks() {}

    static Map<String, Network> networks() {
        var networks = new LinkedHashMap<String, Network>();
        JsonMapper.shared()
                .readTree(text("networks.json"))
                .forEachEntry((name, node) -> networks.put(name, network(node)));
        return networks;
    }

    /** The rows of a resource of comma-separated values, each by column name. */
    static List<Map<String, String>> rows(String resource) {
        var lines = text(resource).lines().toList();
        var names = lines.get(0).split(",", -1);
        var rows = new ArrayList<Map<String, String>>();
        for (var line : lines.subList(1, lines.size())) {
            var cells = line.split(",", -1);
            var row = new LinkedHashMap<String, String>();
            for (int i = 0; i < cells.length; i++) {
                row.put(names[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    /** Evidence as the rows write it: {@code F1=1;F2~0.9:0.3} and {@code C1=0}, {@code -} for none. */
    static GivenEvidence evidence(String findings, String causes) {
        var evidence = GivenEvidence.none();
        for (var part : parts(findings)) {
            evidence = evidence.with(index(part.split("[=~]")[0]), report(part));
        }
        for (var part : parts(causes)) {
            evidence = evidence.withCause(index(part.split("=")[0]), part.endsWith("=1"));
        }
        return evidence;
    }

    /** {@code C1} or {@code F1} is index 0. */
    static int index(String name) {
        return Integer.parseInt(name.substring(1)) - 1;
    }

    private static String[] parts(String list) {
        return list.equals("-") ? new String[0] : list.split(";");
    }

    private static Report report(String part) {
        if (part.contains("=")) {
            return part.endsWith("=1") ? Report.PRESENT : Report.ABSENT;
        }
        var chances = part.split("~")[1].split(":");
        return new Report(Double.parseDouble(chances[0]), Double.parseDouble(chances[1]));
    }

    private static Network network(JsonNode node) {
        var priors = node.get("causes").values().stream()
                .mapToDouble(JsonNode::doubleValue)
                .toArray();
        var backgrounds = node.get("findings").values().stream()
                .mapToDouble(finding -> finding.get("leak").doubleValue())
                .toArray();
        var links = new ArrayList<List<Link>>();
        for (var finding : node.get("findings").values()) {
            var ofFinding = new ArrayList<Link>();
            finding.get("links")
                    .forEachEntry((cause, strength) -> ofFinding.add(new Link(index(cause), strength.doubleValue())));
            links.add(ofFinding);
        }
        return new Network(priors, backgrounds, links);
    }

    private static String text(String resource) {
        try (var in = ReferenceNetworks.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
