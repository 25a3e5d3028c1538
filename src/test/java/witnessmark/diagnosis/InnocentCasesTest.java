package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Short cases in which somebody innocent could be named. Outcomes: common practice, no source. */
class InnocentCasesTest {
    private static final Path FOLDER = Path.of("src/test/resources/witnessmark/innocents");
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    @Test
    void nobody_is_concluded_for_what_something_else_can_have_left() throws IOException {
        List<String> blamed = new ArrayList<>();
        List<String> pointedAt = new ArrayList<>();
        List<String> lines = lines();
        for (String line : lines) {
            String[] nameAndRest = line.split(":", 2);
            String[] enteredAndNot = nameAndRest[1].split("!", 2);
            Verdict verdict = DIAGNOSIS
                    .judge(ShortCase.of(nameAndRest[0].strip(), enteredAndNot[0]))
                    .verdict();
            for (String not : enteredAndNot[1].split(",")) {
                if (verdict.isDetermined() && names(verdict, verdict.classId(), not.strip())) {
                    blamed.add(nameAndRest[0] + ": " + verdict.sentence());
                }
                if (verdict.pointsTo().isPresent()
                        && names(verdict, verdict.pointsTo().get(), not.strip())) {
                    pointedAt.add(nameAndRest[0] + ": " + verdict.sentence());
                }
            }
        }
        assertThat(lines).hasSizeGreaterThan(45);
        assertThat(blamed).isEmpty();
        // Where little is missing the answer may point there, saying what is missing; these may even be right.
        assertThat(pointedAt).as("pointed at, of " + lines.size()).hasSizeLessThanOrEqualTo(lines.size() / 15);
    }

    private static List<String> lines() throws IOException {
        List<String> lines = new ArrayList<>();
        try (var files = Files.list(FOLDER)) {
            for (Path file : files.sorted().toList()) {
                lines.addAll(Files.readAllLines(file));
            }
        }
        return lines.stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .toList();
    }

    /** A cause, or with "=class" the cause as one of that class. */
    private static boolean names(Verdict verdict, String classId, String cause) {
        String[] idAndClass = cause.split("=");
        return verdict.carriedBy().contains(idAndClass[0]) && (idAndClass.length == 1 || classId.equals(idAndClass[1]));
    }
}
