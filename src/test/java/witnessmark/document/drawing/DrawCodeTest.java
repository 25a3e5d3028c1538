package witnessmark.document.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.decoder.Decoder;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class DrawCodeTest {
    private static final Pattern MODULE = Pattern.compile("M(\\d+) (\\d+)h1");
    private static final Pattern SIZE = Pattern.compile("viewBox=\"0 0 (\\d+) ");

    @Test
    void a_scanner_reads_back_what_was_drawn_and_finds_four_modules_of_white_around_it() throws Exception {
        String text = "witnessmark:a-case:8:" + "0123456789abcdef".repeat(4);
        String svg = DrawCode.draw(text, "end of the chain");
        Matcher size = SIZE.matcher(svg);
        assertThat(size.find()).isTrue();
        int modules = Integer.parseInt(size.group(1)) - 8;
        BitMatrix bits = new BitMatrix(modules);
        Matcher module = MODULE.matcher(svg);
        while (module.find()) {
            bits.set(Integer.parseInt(module.group(1)) - 4, Integer.parseInt(module.group(2)) - 4);
        }

        assertThat(new Decoder().decode(bits).getText()).isEqualTo(text);
        // ISO/IEC 18004: version n has 17 + 4 n modules a side (from memory).
        assertThat((modules - 17) % 4).isZero();
    }
}
