package witnessmark.document.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnbrokenNumbersTest {
    private static List<String> pieces(String text) {
        UnbrokenNumbers breaker = new UnbrokenNumbers();
        breaker.setText(text);
        List<String> pieces = new ArrayList<>();
        int from = 0;
        for (int at = breaker.next(); at != BreakIterator.DONE; at = breaker.next()) {
            pieces.add(text.substring(from, at));
            from = at;
        }
        if (from < text.length()) {
            pieces.add(text.substring(from));
        }
        return pieces;
    }

    /** Lines are not broken within a number: Unicode's rules of line breaking (UAX 14, rule LB25; from memory). */
    @ParameterizedTest
    @ValueSource(strings = {"×4.2", "÷1.4", "÷2.2;", "×1000+", "÷5,8", "14.5"})
    void a_number_stays_whole_with_its_sign(String number) {
        assertThat(pieces("is so, " + number + " then")).contains(number + " ");
    }

    /** A number stays with its unit: ISO 80000-1, 7.1.4 (from memory). Of ranges and gears: common practice, no source. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "67 km/h",
                "1300 rpm",
                "350 - 450 rpm",
                "4: 27 km/h",
                "Ld: 38 mph",
                "5o-6d 1300",
                "83 %",
                "0.42 mm"
            })
    void a_number_stays_with_its_unit_and_its_gear(String figure) {
        assertThat(pieces("never above " + figure + " then")).contains(figure + " ");
    }

    @Test
    void a_number_may_part_from_a_word_that_only_begins_like_a_unit() {
        assertThat(pieces("in 3 minutes; that is: 2 bars")).contains("3 ", "is: ", "2 ");
    }

    @Test
    void lines_are_broken_between_words() {
        assertThat(pieces("one two, 3 four"))
                .containsSubsequence("one ", "two, ", "3 ")
                .last()
                .isEqualTo("four");
    }
}
