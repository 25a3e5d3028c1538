package witnessmark.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
    private static final List<String> KNOWN =
            List.of("title", "complaint", "findings", "notes", "regulator-outlet-low");

    @ParameterizedTest
    @CsvSource({
        "titel, title",
        "titles, title",
        "complait, complaint",
        "fingings, findings",
        "regulator-outlet, regulator-outlet-low",
        "ntoes, notes"
    })
    void a_slip_of_the_fingers_still_means_the_word(String typed, String meant) {
        assertThat(Nearest.to(typed, KNOWN)).contains(meant);
    }

    @ParameterizedTest
    @CsvSource({"gearbox", "x", "''", "tttttttttt"})
    void another_word_means_none_of_them(String typed) {
        assertThat(Nearest.to(typed, KNOWN)).isEmpty();
    }

    @Test
    void the_nearest_comes_first_and_a_very_long_word_is_not_compared() {
        assertThat(Nearest.some("note", List.of("noted", "notes", "not", "vote", "nothing"), 3))
                .containsExactly("not", "noted", "notes");
        assertThat(Nearest.some("x".repeat(101), List.of("x".repeat(101)), 3)).isEmpty();
    }

    @Test
    void the_mend_names_up_to_three_or_says_what_else_to_do() {
        assertThat(Nearest.mend("titel", KNOWN, "look it up")).isEqualTo("did you mean title?");
        assertThat(Nearest.mend("gearbox", KNOWN, "look it up")).isEqualTo("look it up");
    }
}
