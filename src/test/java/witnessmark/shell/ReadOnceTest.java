package witnessmark.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.language.Language;
import witnessmark.shell.CountedCalls.Call;
import witnessmark.shell.CountedCalls.Noted;
import witnessmark.triplog.evidence.LogRecord;

/** A command reads a case once, weighs its logs once and judges it as it stands once, and Spanish is made once. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReadOnceTest {
    private static final String READ = "witnessmark.casefile.store.CaseRows.entries";
    private static final String READ_FILE = "witnessmark.casefile.yaml.CaseReader.read";
    private static final String WEIGH = "witnessmark.triplog.evidence.WeighRecord.weigh";
    private static final String JUDGE = "witnessmark.diagnosis.Diagnosis.open";
    private static final String TRANSLATE = "witnessmark.diagnosis.Diagnosis.in";

    private static final String LOGS = "sample-cases/logs/";
    private static final String FILE = "sample-cases/dead-engine-recovery-logged.yaml";

    private static final List<String> LINES = List.of(
            "case new c --complaint Jumps --unit unit-31",
            "log add c thirteen-ratio " + LOGS + "unit-31_high-range-starts.csv",
            "log add c thirteen-ratio " + LOGS + "unit-31_after-coaching.csv --as again --format json",
            "diagnose c",
            "diagnose " + FILE,
            "explain c",
            "explain c low-air",
            "whatif c air-filter-clogged=present",
            "accounts c low-air range-move-in-neutral",
            "status c --language es",
            "interview c --language es --answers {dir}/answers.txt",
            "case show c",
            "case list",
            "case list --format json",
            "case set c air-filter-clogged=absent",
            "case measure c range-regulator-pressure 60 psi",
            "truck shift thirteen-ratio --from 5d --to 4 --speed 30 --case c",
            "document evidence c --as md --out {dir}/open.md",
            "document packet c --language es --as html --out {dir}/open.html",
            "export cases c",
            "case sign-off c",
            "diagnose c --format json",
            "status c",
            "status c --format json",
            "case show c --format json",
            "case history c",
            "case verify c",
            "document explanation c --as md --out {dir}/signed.md",
            "document evidence " + FILE + " --as md --out {dir}/file.md",
            "export cases --as json");

    private final Map<String, List<Call>> calls = new LinkedHashMap<>();

    @BeforeAll
    void run(@TempDir Path folder) throws Exception {
        Files.writeString(folder.resolve("answers.txt"), "no\nyes\notherwise: stop\n");
        Map<String, List<Noted>> noted = Map.of(
                owner(READ),
                List.of(new Noted("entries", long.class)),
                owner(READ_FILE),
                List.of(new Noted("read", Path.class)),
                owner(WEIGH),
                List.of(new Noted("weigh", LogRecord.class)),
                owner(JUDGE),
                List.of(new Noted("open", CaseFile.class, CombinedEvidence.class), new Noted("in", Language.class)));
        try (CountedCalls program = new CountedCalls(folder.resolve("store"), noted)) {
            LINES.forEach(line -> calls.put(line, program.type(line.replace("{dir}", folder.toString()))));
        }
    }

    private static String owner(String method) {
        return method.substring(0, method.lastIndexOf('.'));
    }

    @Test
    void nothing_is_read_weighed_or_judged_twice_by_one_command() {
        calls.forEach((line, of) -> {
            List<Call> seen = new ArrayList<>();
            assertThat(of.stream().filter(c -> !isFirst(c, seen)).map(Call::method))
                    .as(line)
                    .isEmpty();
        });
    }

    private static boolean isFirst(Call call, List<Call> seen) {
        boolean first = !seen.contains(call);
        seen.add(call);
        return first;
    }

    @Test
    void what_is_counted_is_what_a_command_does() {
        assertThat(times("diagnose c")).isEqualTo(Map.of(READ, 1L, WEIGH, 1L, JUDGE, 1L, TRANSLATE, 1L));
        assertThat(times("diagnose " + FILE)).containsEntry(READ_FILE, 1L).containsEntry(JUDGE, 1L);
        assertThat(times("whatif c air-filter-clogged=present"))
                .as("judged as it is and as it would be")
                .isEqualTo(Map.of(READ, 1L, WEIGH, 1L, JUDGE, 2L, TRANSLATE, 1L));
        assertThat(times("status c")).isEqualTo(Map.of(READ, 1L, WEIGH, 1L, JUDGE, 1L, TRANSLATE, 1L));
    }

    private Map<String, Long> times(String line) {
        return calls.get(line).stream().collect(Collectors.groupingBy(Call::method, Collectors.counting()));
    }
}
