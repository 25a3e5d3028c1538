package witnessmark.shell.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import witnessmark.shell.CommandLine;

/** What logs put into a case moves its judgement by what they could see, and by nothing else. */
class LogsWeighedTest {
    private static final String LOGS = "sample-cases/logs/";

    private static double probability(CommandLine shop, String caseId, String cause) {
        String json =
                shop.type("diagnose " + caseId + " --format json --top 40").out();
        for (JsonNode one : new ObjectMapper().readTree(json).get("causes")) {
            if (one.get("id").asString().equals(cause)) {
                return one.get("probability").asDouble();
            }
        }
        throw new AssertionError(cause + " is not ranked");
    }

    private static void done(CommandLine shop, String line) {
        CommandLine.Run run = shop.type(line);
        assertThat(run.messages()).isEmpty();
        assertThat(run.exitCode()).isZero();
    }

    @Test
    void starts_in_high_range_in_a_log_raise_the_habit_and_a_blind_log_moves_nothing(@TempDir Path store) {
        try (CommandLine shop = new CommandLine(store)) {
            done(shop, "case new shaft --ratios 13");
            done(shop, "case set shaft mainshaft-twisted=present");
            double before = probability(shop, "shaft", "high-gear-start");

            done(shop, "log add shaft thirteen-ratio " + LOGS + "unit-34_slow-logger.csv");
            double blind = probability(shop, "shaft", "high-gear-start");
            done(shop, "log add shaft thirteen-ratio " + LOGS + "unit-31_high-range-starts.csv");
            double seen = probability(shop, "shaft", "high-gear-start");

            assertThat(blind).isEqualTo(before);
            assertThat(seen).isGreaterThan(before);
        }
    }
}
