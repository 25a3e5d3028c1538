package witnessmark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** What a log says weighs in the judgement of the case it was added to. */
class LogIT {
    private static final String LOGS = "sample-cases/logs/";

    @TempDir
    Path folder;

    private Program program() {
        return Program.unpacked(folder.resolve("store"));
    }

    private JsonNode cause(String caseId, String cause) {
        String json = program()
                .run("diagnose", caseId, "--format", "json", "--top", "40")
                .out();
        for (JsonNode one : new ObjectMapper().readTree(json).get("causes")) {
            if (one.get("id").asString().equals(cause)) {
                return one;
            }
        }
        throw new AssertionError(cause + " is not ranked");
    }

    private static double weight(JsonNode cause, String side, String finding) {
        for (JsonNode one : cause.get(side)) {
            if (one.get("finding").asString().equals(finding)) {
                return one.get("decibans").asDouble();
            }
        }
        return 0;
    }

    private void done(String... words) {
        Program.Run run = program().run(words);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
    }

    @Test
    void coasting_in_a_log_raises_coasting_among_the_causes() {
        done("case", "new", "hubs", "--ratios", "13");
        done("case", "set", "hubs", "hubs-scored-several-gears=present", "oil-level-low=absent");
        double before = cause("hubs", "neutral-coast").get("probability").asDouble();

        done("log", "add", "hubs", "thirteen-ratio", LOGS + "unit-32_coast-and-tow.candump");

        JsonNode after = cause("hubs", "neutral-coast");
        assertThat(after.get("probability").asDouble()).isGreaterThan(before);
        assertThat(weight(after, "for", "log-rolling-at-idle")).isPositive();
    }
}
