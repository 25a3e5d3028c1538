package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.planner.Hands;

/** Common practice, no source: free travel that is right today says nothing where somebody has just set it. */
class RenewedBeforePeopleTest {
    private static final Path CASE =
            Path.of("src/test/resources/witnessmark/trap-cases/clutch-set-before-the-look.yaml");

    @Test
    void before_a_driver_is_left_named_a_repair_and_what_it_set_are_asked() throws Exception {
        CaseSheet sheet = new CaseSheet(new CaseId("no-repair-told"));
        new CaseReader()
                .read(CASE).present().findings().values().stream()
                        .filter(entry -> !entry.finding().equals("repaired-lately"))
                        .forEach(sheet::finding);
        Diagnosis diagnosis = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

        try (OpenCase open = diagnosis.open(sheet.toCaseFile())) {
            assertThat(open.judgement().verdict().classId()).isEqualTo("driver-habit");
            assertThat(open.owners(Hands.off())).contains("repaired-lately", "clutch-set-before-look");
        }
    }
}
