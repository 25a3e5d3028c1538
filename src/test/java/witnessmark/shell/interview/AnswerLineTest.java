package witnessmark.shell.interview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Unit;
import witnessmark.shell.interview.AnswerLine.Request;

class AnswerLineTest {
    private static final Optional<Unit> BAR = Optional.of(Unit.BAR);

    @ParameterizedTest
    @CsvSource({
        "y, PRESENT",
        "Yes, PRESENT",
        "present, PRESENT",
        "n, ABSENT",
        "NO, ABSENT",
        "absent, ABSENT",
        "u, UNSURE",
        "unsure, UNSURE",
        "p, NOT_LOOKED_AT",
        "pass, NOT_LOOKED_AT",
        "not looked at, NOT_LOOKED_AT",
        "not-looked-at, NOT_LOOKED_AT"
    })
    void the_four_answers_can_be_typed_short_or_in_full(String typed, FindingState state) {
        assertThat(AnswerLine.of(typed, Optional.empty()).state()).isEqualTo(state);
    }

    @ParameterizedTest
    @CsvSource({
        "w, WHY",
        "why, WHY",
        "b, BACK",
        "s, SKIP",
        "v, WHERE",
        "where, WHERE",
        "q, STOP",
        "stop, STOP",
        "?, HELP"
    })
    void the_requests_too(String typed, Request request) {
        assertThat(AnswerLine.of(typed, Optional.empty()).request()).isEqualTo(request);
    }

    @Test
    void an_empty_line_shows_the_keys_and_answers_nothing() {
        assertThat(AnswerLine.of("  ", Optional.empty()).request()).isEqualTo(Request.HELP);
    }

    @Test
    void a_note_follows_a_semicolon() {
        AnswerLine answer = AnswerLine.of("y; only when hot; twice", Optional.empty());
        assertThat(answer.state()).isEqualTo(FindingState.PRESENT);
        assertThat(answer.note()).isEqualTo("only when hot; twice");
    }

    @Test
    void a_value_may_bring_its_unit_its_limits_and_whose_they_are() {
        AnswerLine answer = AnswerLine.of("44 psi; low 57; high 62; from service manual; engine off", BAR);
        assertThat(answer.request()).isEqualTo(Request.VALUE);
        assertThat(answer.value()).isEqualTo(44);
        assertThat(answer.unit()).isEqualTo(Unit.PSI);
        assertThat(answer.limits().orElseThrow().low()).hasValue(57);
        assertThat(answer.limits().orElseThrow().source()).isEqualTo("service manual");
        assertThat(answer.note()).isEqualTo("engine off");
    }

    @Test
    void a_value_without_a_unit_is_in_the_usual_one() {
        assertThat(AnswerLine.of("3,9", BAR).unit()).isEqualTo(Unit.BAR);
        assertThat(AnswerLine.of("3,9", BAR).value()).isEqualTo(3.9);
    }

    @Test
    void what_is_no_answer_is_refused_with_what_would_be_one() {
        assertThatThrownBy(() -> AnswerLine.of("perhaps", Optional.empty()))
                .isInstanceOf(CaseRefused.class)
                .hasMessage("'perhaps' is no answer here; type y, n, u or p; ? shows all");
        assertThatThrownBy(() -> AnswerLine.of("44 psi", Optional.empty())).hasMessageContaining("no answer here");
        assertThatThrownBy(() -> AnswerLine.of("44 mm", BAR))
                .hasMessage("'mm' is no unit for this; give it in bar or a unit that converts to it");
        assertThatThrownBy(() -> AnswerLine.of("44 psi; low 57", BAR)).hasMessageContaining("whose limit");
    }
}
