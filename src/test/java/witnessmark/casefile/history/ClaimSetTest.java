package witnessmark.casefile.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.casefile.yaml.CaseWriter;
import witnessmark.gearbox.Layout;

class ClaimSetTest {
    private static final Stamp STAMP = new Stamp(Instant.parse("2026-03-02T08:15:00Z"), "R. Ortega");

    private static CaseHistory opened() {
        return CaseHistory.open(new Opened(new CaseId("t-1"), "Title", "", Vehicle.unknown(), Layout.unknown()), STAMP);
    }

    @Test
    void what_is_not_said_adds_nothing_to_what_is_hashed() {
        Claim claim = Claim.none()
                .with(Map.of(ClaimField.WORK_ORDER, "W-1"))
                .with(new PartLine("cone", "", 2, Optional.empty(), ""));

        assertThat(CanonicalText.of(new ClaimSet(claim)))
                .isEqualTo("{\"kind\":\"claim-set\",\"from\":{},\"to\":{\"work-order\":\"W-1\","
                        + "\"parts\":[{\"old\":\"cone\",\"quantity\":2}]}}");
    }

    @Test
    void a_part_that_takes_the_place_of_none_comes_back_too() {
        Claim claim = Claim.none().with(new PartLine("", "gasket set", 1, Optional.empty(), ""));
        CaseHistory history = opened().with(List.of(new ClaimSet(claim)), STAMP);
        String text = new CaseWriter().write(CaseDocument.of(history));

        CaseDocument read = new CaseReader().read("t-1.yaml", text.getBytes(StandardCharsets.UTF_8));

        assertThat(read.present().claim()).isEqualTo(claim);
        assertThat(read.history()).contains(history);
        assertThat(CanonicalText.of(new ClaimSet(claim)))
                .contains("\"parts\":[{\"fitted\":\"gasket set\",\"quantity\":1}]");
    }

    @Test
    void a_part_line_that_names_none_or_tags_what_was_not_taken_out_is_refused() {
        assertThatThrownBy(() -> new PartLine("", " ", 1, Optional.empty(), "")).isInstanceOf(CaseRefused.class);
        assertThatThrownBy(() -> new PartLine("", "gasket set", 1, Optional.of(PartLine.Whereabouts.KEPT), ""))
                .isInstanceOf(CaseRefused.class)
                .hasMessage(
                        "part 'gasket set': whereabouts and tag are of an old part, and none was taken out; name the"
                                + " part taken out, or leave them out");
        assertThatThrownBy(() -> new PartLine("", "gasket set", 1, Optional.empty(), "T-1"))
                .isInstanceOf(CaseRefused.class);
    }

    @Test
    void the_claim_is_in_the_chain_and_comes_back_from_the_file_form() {
        Claim claim = Claim.none()
                .with(Map.of(ClaimField.FAILED, "2026-02-27", ClaimField.ENGINE_HOURS, "8120.50"))
                .with(new PartLine("cone", "cone, new", 1, Optional.of(PartLine.Whereabouts.RETURNED), "T-1"));
        CaseHistory history = opened().with(List.of(new ClaimSet(claim)), STAMP);
        String text = new CaseWriter().write(CaseDocument.of(history));

        CaseDocument read = new CaseReader().read("t-1.yaml", text.getBytes(StandardCharsets.UTF_8));

        assertThat(read.present().claim().fact(ClaimField.ENGINE_HOURS)).isEqualTo("8120.5");
        assertThat(read.history()).contains(history);
        assertThat(history.verify()).isInstanceOf(ChainCheck.Intact.class);
    }

    @ParameterizedTest
    @CsvSource({"FAILED, 27.2.2026", "IN_SERVICE, 2026-02-30", "ENGINE_HOURS, many", "LABOUR_HOURS, -1"})
    void a_day_that_is_none_and_hours_that_are_none_are_refused(ClaimField field, String value) {
        assertThatThrownBy(() -> Claim.none().with(Map.of(field, value)))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining(field.word());
    }

    @Test
    void an_entry_noted_outside_tells_an_older_copy_and_a_changed_chain_from_the_one_it_was_noted_of() {
        CaseHistory first = opened();
        CaseHistory now = first.with(new NoteAdded("seen"), STAMP);
        CaseHistory other = first.with(new NoteAdded("not seen"), STAMP);
        HeadMark mark = HeadMark.parse(HeadMark.of(now).text()).orElseThrow();

        assertThat(mark.isIn(now)).isTrue();
        assertThat(mark.isIn(now.with(new NoteAdded("later"), STAMP))).isTrue();
        assertThat(mark.isIn(first)).isFalse();
        assertThat(mark.isIn(other)).isFalse();
        assertThat(HeadMark.parse("witnessmark:t-1:x:00")).isEmpty();
    }
}
