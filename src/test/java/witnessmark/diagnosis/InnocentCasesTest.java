package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;

/** Short cases in which somebody innocent could be named. Outcomes: common practice, no source. */
class InnocentCasesTest {
    private static final Path CASES = Path.of("src/test/resources/witnessmark/innocents/short-cases.txt");
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    @Test
    void nobody_is_concluded_for_what_something_else_can_have_left() throws IOException {
        List<String> blamed = new ArrayList<>();
        int cases = 0;
        for (String line : Files.readAllLines(CASES)) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            cases++;
            String[] nameAndRest = line.split(":", 2);
            String[] enteredAndNot = nameAndRest[1].split("!", 2);
            Judgement judgement = DIAGNOSIS.judge(caseOf(nameAndRest[0].strip(), enteredAndNot[0]));
            for (String not : enteredAndNot[1].split(",")) {
                if (isConcluded(judgement, not.strip())) {
                    blamed.add(nameAndRest[0] + ": " + judgement.verdict().sentence());
                }
            }
        }
        assertThat(cases).isGreaterThan(45);
        assertThat(blamed).isEmpty();
    }

    /** A cause, or with "=class" the cause as one of that class. */
    private static boolean isConcluded(Judgement judgement, String cause) {
        String[] idAndClass = cause.split("=");
        Verdict verdict = judgement.verdict();
        return verdict.isDetermined()
                && verdict.carriedBy().contains(idAndClass[0])
                && (idAndClass.length == 1 || verdict.classId().equals(idAndClass[1]));
    }

    private static witnessmark.casefile.CaseFile caseOf(String name, String entered) {
        CaseSheet sheet = new CaseSheet(new CaseId(name));
        for (String finding : entered.split(",")) {
            String plain = finding.strip();
            sheet.finding(
                    plain.startsWith("no ")
                            ? new FindingEntry(plain.substring(3), FindingState.ABSENT)
                            : new FindingEntry(plain, FindingState.PRESENT));
        }
        return sheet.toCaseFile();
    }
}
