package witnessmark.knowledge;

import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/**
 * Checks log-findings.yaml: every finding that logs speak for is one of the knowledge base. The rows themselves are read
 * where logs are weighed, which knows nothing of causes.
 */
final class LogFindingForm {
    static final String FILE = "log-findings.yaml";

    private LogFindingForm() {}

    static void read(YamlNode root, Draft draft) {
        if (!draft.onFirstLayer()) {
            root.fault("the rates of log findings are the program's own", "take the file out of the folder");
            return;
        }
        YamlMap map = root.map("the log findings", List.of("log-findings", "of-the-whole"));
        for (YamlNode item : map.items("log-findings")) {
            YamlMap fields = item.map(
                    "a log finding", List.of("id", "event", "with", "without", "once", "only", "proof", "also-after"));
            draft.refer(Draft.Kind.FINDING, fields, "id", "");
        }
        map.get("of-the-whole").ifPresent(whole -> whole.map("the findings of the whole")
                .entries()
                .forEach(entry -> draft.refer(
                        Draft.Kind.FINDING,
                        entry.value().map("a finding of the whole", List.of("id", "for", "against")),
                        "id",
                        "")));
    }
}
