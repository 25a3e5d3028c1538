package witnessmark.shell.interview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Unit;
import witnessmark.interview.NotAnAnswer;
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
    @CsvSource(
            delimiter = '|',
            value = {
                "yes, when pulling hard | PRESENT | when pulling hard",
                "Yes only when it is hot | PRESENT | Yes only when it is hot",
                "no leaks anywhere | ABSENT | no leaks anywhere",
                "no - wiped it and looked again | ABSENT | wiped it and looked again",
                "I don't know | NOT_LOOKED_AT | ''",
                "I don’t know, driver has gone home | NOT_LOOKED_AT | driver has gone home",
                "no idea | NOT_LOOKED_AT | ''",
                "can't check, gauge is broken | NOT_LOOKED_AT | cannot be checked here: gauge is broken",
                "c | NOT_LOOKED_AT | cannot be checked here",
                "not sure, oil on everything | UNSURE | oil on everything",
                "probably not | UNSURE | probably not",
                "sometimes, over bumps | PRESENT | sometimes, over bumps",
                "yes? | UNSURE | yes?",
                "sí, en subida | PRESENT | en subida",
                "no sé | NOT_LOOKED_AT | ''",
                "no gauge here | NOT_LOOKED_AT | cannot be checked here: no gauge here",
                "no tool marks | ABSENT | no tool marks",
                "no one looked | NOT_LOOKED_AT | ''",
                "not yet | NOT_LOOKED_AT | ''",
                "never checked | NOT_LOOKED_AT | ''",
                "dudoso, hay aceite en todo | UNSURE | hay aceite en todo",
                "no estoy seguro | UNSURE | ''",
                "creo que sí | UNSURE | creo que sí",
                "no sabe el chofer | NOT_LOOKED_AT | no sabe el chofer",
                "no tengo manómetro | NOT_LOOKED_AT | cannot be checked here: no tengo manómetro",
                "no lo revisé | NOT_LOOKED_AT | ''",
                "no tiene juego | ABSENT | no tiene juego"
            })
    void an_answer_in_words_keeps_what_stands_behind_it(String typed, FindingState state, String note) {
        AnswerLine answer = AnswerLine.of(typed, Optional.empty());
        assertThat(answer.state()).isEqualTo(state);
        assertThat(answer.note()).isEqualTo(note);
    }

    @ParameterizedTest
    @CsvSource({
        "112 psi, 112, PSI",
        "2.5 bar, 2.5, BAR",
        "about 58psi, 58, PSI",
        "-4, -4, BAR",
        "250 kPa at idle, 250, KILOPASCAL"
    })
    void a_value_in_words_has_its_unit(String typed, double value, Unit unit) {
        AnswerLine answer = AnswerLine.of(typed, BAR);
        assertThat(answer.value()).isEqualTo(value);
        assertThat(answer.unit()).isEqualTo(unit);
    }

    @Test
    void a_fraction_of_an_inch_is_a_value() {
        Optional<Unit> mm = Optional.of(Unit.MILLIMETRE);
        assertThat(AnswerLine.of("1/8 in", mm).value()).isEqualTo(0.125);
        assertThat(AnswerLine.of("1 1/2 inches", mm).value()).isEqualTo(1.5);
        assertThat(AnswerLine.of("1/8 in", mm).unit()).isEqualTo(Unit.INCH);
        assertThatThrownBy(() -> AnswerLine.of("1/0 in", mm)).isInstanceOf(NotAnAnswer.class);
    }

    @ParameterizedTest
    @CsvSource({"no-go", "yesterday", "nothingness", "ya", "u2"})
    void a_word_that_only_begins_like_an_answer_is_none(String typed) {
        assertThatThrownBy(() -> AnswerLine.of(typed, Optional.empty())).isInstanceOf(NotAnAnswer.class);
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
        assertThatThrownBy(() -> AnswerLine.of("whatever", Optional.empty()))
                .isInstanceOf(NotAnAnswer.class)
                .hasMessage(
                        "'whatever' is no answer here; begin with yes, no, unsure, don't know or can't check; ? shows all");
        assertThatThrownBy(() -> AnswerLine.of("44 psi", Optional.empty())).hasMessageContaining("no answer here");
        assertThatThrownBy(() -> AnswerLine.of("44 mm", BAR))
                .hasMessage("'mm' is no unit for this; give it in bar or a unit that converts to it");
    }

    @Test
    void limits_behind_a_value_are_those_of_the_manual_unless_said_otherwise() {
        assertThat(AnswerLine.of("62 psi; low 100", BAR).limits())
                .hasValueSatisfying(l -> assertThat(l.source()).isEqualTo("service manual of this unit"));
    }

    @Test
    void a_value_behind_a_word_is_read_where_its_unit_stands_with_it() {
        AnswerLine said = AnswerLine.of("no, 1.6 mm on the feeler", Optional.of(Unit.MILLIMETRE));

        assertThat(said.state()).isEqualTo(FindingState.ABSENT);
        assertThat(AnswerLine.valueBehind(said.note(), Unit.MILLIMETRE)).hasValueSatisfying(value -> {
            assertThat(value.value()).isEqualTo(1.6);
            assertThat(value.note()).isEqualTo("on the feeler");
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"2 of them", "12", "rust for 3 mm", "no", ""})
    void other_words_behind_an_answer_are_no_value(String note) {
        assertThat(AnswerLine.valueBehind(note, Unit.MILLIMETRE)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"atrás,BACK", "atras,BACK", "saltar,SKIP", "por qué,WHY", "dónde,WHERE", "parar,STOP", "ayuda,HELP"})
    void the_spanish_words_ask_for_the_same(String typed, AnswerLine.Request request) {
        assertThat(AnswerLine.of(typed, Optional.empty()).request()).isEqualTo(request);
    }
}
