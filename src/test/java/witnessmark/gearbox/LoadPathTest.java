package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which pair carries load in which gear of a constant-mesh countershaft box. Textbook mechanics, from memory. */
class LoadPathTest {
    @ParameterizedTest
    @CsvSource({
        "3, 3, true",
        "3, 4, false",
        "3, head, true",
        "direct, head, false",
        "direct, 4, false",
        "R, R, true",
        "R, 1, false",
        "reverse, head, true"
    })
    void a_pair_carries_load_only_in_its_own_gear_and_the_head_pair_in_all_but_direct(
            String gear, String pair, boolean carries) {
        assertThat(LoadPath.carries(gear, pair)).isEqualTo(carries);
    }

    /** Two gears of one rail lie beside each other in the gate; reverse beside first. Common practice, no source. */
    @ParameterizedTest
    @CsvSource({"3-4, 3-4", "4-3, 3-4", "R-1, R-1", "1/r, R-1", "3-5, ", "9-10, ", "4, "})
    void two_gears_of_a_rail_are_neighbours(String text, String kept) {
        assertThat(LoadPath.parseRail(text)).isEqualTo(Optional.ofNullable(kept));
    }

    @Test
    void what_is_no_gear_is_refused() {
        assertThat(LoadPath.parse("0")).isEmpty();
        assertThat(LoadPath.parse("12")).isEmpty();
        assertThatThrownBy(() -> LoadPath.carries("high", "1"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("a main-box gear from 1 to 9");
    }
}
