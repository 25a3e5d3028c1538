package witnessmark.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/** What a verdict rests on, and what would change it, on the shipped cases. */
class ExplainTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    private static CaseFile sample(String id) {
        return ShippedKnowledge.samples().stream()
                .map(d -> d.present())
                .filter(f -> f.id().text().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static String verdictWith(CaseFile file, String finding, FindingState state) {
        CaseSheet sheet = new CaseSheet(file);
        sheet.finding(new FindingEntry(finding, state));
        return DIAGNOSIS.judge(sheet.toCaseFile()).verdict().classId();
    }

    @Test
    void the_findings_named_are_exactly_those_whose_reversal_changes_the_verdict() {
        CaseFile file = sample("scored-hubs-after-a-tow");
        CarryingFindings carrying = CarryingFindings.of(DIAGNOSIS, file);
        List<String> named =
                carrying.turned().stream().map(t -> t.findings().get(0)).toList();

        assertThat(named).contains("tow-record-wheels-down");
        file.findings().values().forEach(entry -> {
            FindingState other = entry.state() == FindingState.PRESENT ? FindingState.ABSENT : FindingState.PRESENT;
            boolean changes = !verdictWith(file, entry.finding(), other)
                    .equals(carrying.verdict().classId());
            assertThat(named.contains(entry.finding())).as(entry.finding()).isEqualTo(changes);
        });
    }

    @Test
    void a_measured_finding_is_turned_with_its_measurement() {
        CarryingFindings carrying = CarryingFindings.of(DIAGNOSIS, sample("slow-into-low-low-air"));

        assertThat(carrying.turned()).isNotEmpty().allSatisfy(t -> {
            assertThat(t.findings()).containsAnyOf("regulator-outlet-low", "regulator-outlet-high");
            assertThat(t.then().classId()).isNotEqualTo(carrying.verdict().classId());
        });
    }

    @Test
    void of_nothing_on_record_nothing_can_be_turned_round() {
        CaseFile empty = new CaseSheet(sample("scored-hubs-after-a-tow").id()).toCaseFile();
        CarryingFindings carrying = CarryingFindings.of(DIAGNOSIS, empty);
        assertThat(carrying.tried()).isZero();
        assertThat(carrying.turned()).isEmpty();
    }

    @Test
    void what_if_judges_as_the_case_would_be_judged_with_the_finding_written_in() {
        CaseFile file = sample("scored-hubs-after-a-tow");
        WhatIf whatIf = WhatIf.of(DIAGNOSIS, file, Map.of("tow-record-wheels-down", FindingState.ABSENT));

        CaseSheet sheet = new CaseSheet(file);
        sheet.finding(new FindingEntry("tow-record-wheels-down", FindingState.ABSENT));
        var written = DIAGNOSIS.judge(sheet.toCaseFile());
        assertThat(whatIf.then().verdict()).isEqualTo(written.verdict());
        assertThat(whatIf.causes()).allSatisfy(m -> assertThat(m.after())
                .isEqualTo(written.causes().stream()
                        .filter(c -> c.id().equals(m.cause()))
                        .mapToDouble(c -> c.probability())
                        .findFirst()
                        .orElse(0)));
        assertThat(file.findings().get("tow-record-wheels-down").state()).isEqualTo(FindingState.PRESENT);
    }

    @Test
    void supposing_what_is_so_already_changes_nothing() {
        CaseFile file = sample("scored-hubs-after-a-tow");
        WhatIf same = WhatIf.of(DIAGNOSIS, file, Map.of("tow-record-wheels-down", FindingState.PRESENT));
        assertThat(same.causes()).allSatisfy(m -> assertThat(m.after()).isEqualTo(m.before()));
    }
}
