package witnessmark.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Which characters are kept: surrogates are D800 to DFFF and noncharacters the last two of each plane (The Unicode
 * Standard, sections 23.6 and 23.7; from memory), all others but controls are characters.
 */
class PlainTextTest {
    private static final int ANY_LENGTH = 1_000;

    @ParameterizedTest
    @ValueSource(ints = {0x20, 0x7E, 0xA0, 0xD7FF, 0xE000, 0xFFFD, 0x10000, 0x1FFFD, 0x10FFFD, '\n', '\t'})
    void characters_are_kept(int codePoint) {
        assertThat(PlainText.refusal(Character.toString(codePoint), ANY_LENGTH)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {0x0, 0x1B, 0x7F, 0x9F, 0xD800, 0xDFFF, 0xFFFE, 0xFFFF, 0x1FFFE, 0x10FFFF, '\r'})
    void what_is_no_character_or_steers_is_named_with_its_place(int codePoint) {
        assertThat(PlainText.refusal("ab" + Character.toString(codePoint), ANY_LENGTH))
                .hasValueSatisfying(r -> assertThat(r.what())
                        .isEqualTo(String.format("character U+%04X at place 3 cannot be kept", codePoint)));
    }

    @Test
    void a_text_may_be_as_long_as_it_may_be() {
        assertThat(PlainText.refusal("x".repeat(9), 9)).isEmpty();
        assertThat(PlainText.refusal("x".repeat(10), 9)).isPresent();
    }

    @Test
    void a_number_may_have_four_hundred_digits() {
        assertThat(PlainText.number("0".repeat(399) + "7")).hasValue(7);
        assertThat(PlainText.number("0".repeat(400) + "7")).isEmpty();
    }
}
