package witnessmark.interview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CaseSheet;
import witnessmark.language.Language;
import witnessmark.language.Texts;

class NotAnAnswerTest {
    private static final Texts SPANISH = Texts.of("interview", Language.SPANISH);

    @ParameterizedTest
    @ValueSource(
            strings = {
                "refused.no-answer",
                "refused.no-answer-or-value",
                "refused.no-unit",
                "refused.no-number",
                "refused.no-limit",
                "refused.not-on-list",
                "refused.no-choice",
                "refused.no-distance",
                "refused.no-ratios"
            })
    void it_is_told_in_the_language_of_the_interview_with_what_was_answered(String key) {
        NotAnAnswer refusal = new NotAnAnswer(key, "40 varas", 9);

        assertThat(refusal)
                .hasMessageStartingWith(
                        key.endsWith("distance") ? "odometer" : key.endsWith("ratios") ? "forward" : "'40 varas' is");
        assertThat(refusal.in(SPANISH))
                .contains("'40 varas' no ")
                .doesNotContain("{")
                .contains(";");
    }

    @Test
    void the_questions_before_the_checks_refuse_in_it_too() {
        NotAnAnswer refusal = catchThrowableOfType(
                NotAnAnswer.class,
                () -> Intake.change(Stage.KILOMETRES, "muchos", new CaseSheet(new CaseId("c")).toCaseFile()));

        assertThat(NotAnAnswer.told(refusal, SPANISH)).startsWith("odómetro: 'muchos' no es una distancia");
    }

    @Test
    void what_a_case_does_not_take_is_told_as_it_says_it() {
        assertThat(NotAnAnswer.told(new CaseRefused("unit: two lines", "write one"), SPANISH))
                .isEqualTo("unit: two lines; write one");
    }
}
