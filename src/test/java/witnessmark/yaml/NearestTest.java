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
    void a_word_of_a_hundred_letters_is_still_compared() {
        assertThat(Nearest.some("x".repeat(100), List.of("x".repeat(100)), 3)).hasSize(1);
    }

    @Test
    void a_word_that_holds_another_or_is_held_by_it_means_it_if_that_is_more_than_a_syllable() {
        assertThat(Nearest.some("my-notes-of-today", List.of("notes"), 3)).containsExactly("notes");
        assertThat(Nearest.some("the-note-of-today", List.of("note"), 3)).containsExactly("note");
        assertThat(Nearest.some("my-not-of-today", List.of("not"), 3)).isEmpty();
        assertThat(Nearest.some("out", List.of("regulator-outlet-low"), 3)).containsExactly("regulator-outlet-low");
        assertThat(Nearest.some("no", List.of("nothing-else"), 3)).isEmpty();
    }

    /** Optimal string alignment: an exchange of neighbours and a changed letter are one step each, so names decide. */
    @Test
    void letters_exchanged_count_as_one_change() {
        assertThat(Nearest.some("abyz", List.of("abzy", "abya"), 3)).containsExactly("abya", "abzy");
        assertThat(Nearest.some("ca", List.of("abc"), 3)).isEmpty();
    }

    @Test
    void the_mend_names_up_to_three_or_says_what_else_to_do() {
        assertThat(Nearest.mend("titel", KNOWN, "look it up")).isEqualTo("did you mean title?");
        assertThat(Nearest.mend("gearbox", KNOWN, "look it up")).isEqualTo("look it up");
    }
}
