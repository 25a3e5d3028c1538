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

    @Test
    void lines_are_broken_between_words() {
        assertThat(pieces("one two, 3 four"))
                .containsSubsequence("one ", "two, ", "3 ")
                .last()
                .isEqualTo("four");
    }
}
