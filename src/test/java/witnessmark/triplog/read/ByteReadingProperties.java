package witnessmark.triplog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;

/** The byte-wise readings against what the Java library makes of the same text. */
class ByteReadingProperties {

    @Property(tries = 200)
    void lines_are_those_of_the_library(
            @ForAll @Size(max = 200) List<@StringLength(max = 400) @CharRange(from = 'a', to = 'z') String> lines)
            throws IOException {
        String text = String.join("\n", lines);
        ByteLines reader = new ByteLines(
                new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), new BrokenLines(), () -> true);
        List<String> read = new ArrayList<>();

        while (reader.next()) {
            read.add(new String(reader.buffer, reader.start, reader.end - reader.start, StandardCharsets.UTF_8));
        }

        assertThat(read).isEqualTo(text.lines().toList());
        assertThat(reader.line).isEqualTo(read.size());
    }

    @Property
    void eight_hexadecimal_digits_are_read_as_the_library_does(
            @ForAll @LongRange(min = 0, max = 0xFFFFFFFFL) long value) {
        String text = String.format(Locale.ROOT, "%08X", value);

        long upper = word(text);
        long lower = word(text.toLowerCase(Locale.ROOT));

        assertThat(HexText.isHex(upper)).isTrue();
        assertThat(HexText.value(upper)).isEqualTo(value);
        assertThat(HexText.value(lower)).isEqualTo(value);
    }

    @Property
    void eight_decimal_digits_are_read_as_the_library_does(
            @ForAll @IntRange(min = 0, max = 99_999_999) int value, @ForAll @IntRange(min = 1, max = 8) int count) {
        String text = String.format(Locale.ROOT, "%08d", value).substring(8 - count);

        assertThat(HexText.digits(word((text + "xxxxxxxx").substring(0, 8)), count))
                .isEqualTo(Long.parseLong(text));
    }

    @Property
    void anything_but_digits_is_told(@ForAll @StringLength(8) String text) {
        byte[] bytes = Arrays.copyOf(text.getBytes(StandardCharsets.UTF_8), 8);
        String cut = new String(bytes, StandardCharsets.ISO_8859_1);

        assertThat(HexText.isHex(ByteLines.word(bytes, 0))).isEqualTo(cut.matches("[0-9A-Fa-f]{8}"));
        assertThat(HexText.digits(ByteLines.word(bytes, 0)) >= 0).isEqualTo(cut.matches("[0-9]{8}"));
    }

    @Property
    void a_number_of_the_shape_of_another_is_read_as_the_library_does(
            @ForAll @IntRange(min = 0, max = 9999) int first,
            @ForAll @IntRange(min = 0, max = 999_999) int second,
            @ForAll @IntRange(min = 0, max = 3) int decimals,
            @ForAll boolean negative) {
        String form = (negative ? "-" : "") + "%." + decimals + "f";
        String before = String.format(Locale.ROOT, form, first / Math.pow(10, decimals));
        String after = String.format(Locale.ROOT, form, second / Math.pow(10, decimals));
        NumberShape shape = new NumberShape();

        long learnt = shape.learn(word(before + ",xxxxxxx"), before.length(), HexText.eightTimes('.'), 1);
        long read = shape.read(word(after + ",xxxxxxx"));

        assertThat(learnt).isEqualTo(first);
        assertThat(read).isEqualTo(after.length() == before.length() ? second : -1);
        assertThat(shape.fraction()).isEqualTo(decimals);
        assertThat(shape.isNegative()).isEqualTo(negative);
    }

    private static long word(String text) {
        return ByteLines.word(text.getBytes(StandardCharsets.ISO_8859_1), 0);
    }
}
