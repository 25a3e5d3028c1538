package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;

/** Two seconds are what people wait before they wonder: Nielsen, Usability Engineering (1993), from memory. */
class WaitingTest {
    private static final long SOON = 20;
    private static final long NEVER = Duration.ofHours(1).toMillis();

    private final ByteArrayOutputStream shown = new ByteArrayOutputStream();
    private final PrintStream error = new PrintStream(shown, true, StandardCharsets.UTF_8);
    private final StringWriter answer = new StringWriter();

    private String shown() {
        return shown.toString(StandardCharsets.UTF_8);
    }

    private static void await(BooleanSupplier what) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        while (!what.getAsBoolean() && System.nanoTime() < end) {
            Thread.sleep(5);
        }
        assertThat(what.getAsBoolean()).isTrue();
    }

    /** What a terminal shows of it in the end: each return begins the line anew and writes over what stands there. */
    private static String left(String written) {
        StringBuilder line = new StringBuilder();
        int at = 0;
        for (char c : written.toCharArray()) {
            if (c == '\r') {
                at = 0;
                continue;
            }
            line.replace(at, Math.min(at + 1, line.length()), String.valueOf(c));
            at++;
        }
        return line.toString().strip();
    }

    @Test
    void a_command_that_is_quick_says_nothing_beside_its_answer() {
        try (Waiting waiting = new Waiting("score", error, true, NEVER)) {
            waiting.until(new PrintWriter(answer, true)).println("done");
        }
        assertThat(shown()).isEmpty();
        assertThat(answer.toString()).startsWith("done");
    }

    @Test
    void one_that_is_slow_says_so_and_how_far_it_is_and_wipes_it_before_its_first_word() throws Exception {
        try (Waiting waiting = new Waiting("score", error, true, SOON)) {
            PrintWriter out = waiting.until(new PrintWriter(answer, true));
            Waiting.at(3, 1280);
            await(() -> shown().contains("score: 0 s, 3 of 1,280"));
            assertThat(left(shown())).startsWith("score: ");
            out.println("the answer");
            assertThat(left(shown())).isEmpty();
            int then = shown().length();
            Waiting.at(4, 1280);
            Thread.sleep(3 * SOON);
            assertThat(shown()).hasSize(then);
        }
    }

    @Test
    void an_empty_word_does_not_end_it() throws Exception {
        try (Waiting waiting = new Waiting("score", error, true, SOON)) {
            PrintWriter out = waiting.until(new PrintWriter(answer, true));
            out.write("");
            out.flush();
            await(() -> shown().contains("score: "));
        }
        assertThat(left(shown())).isEmpty();
    }

    @Test
    void nothing_is_said_where_nobody_sits_before_it() throws Exception {
        try (Waiting waiting = new Waiting("score", error, false, 0)) {
            Thread.sleep(3 * SOON);
        }
        assertThat(shown()).isEmpty();
    }

    @Test
    void it_leaves_the_line_to_another_who_says_more() throws Exception {
        try (Waiting waiting = new Waiting("log read", error, true, SOON)) {
            await(() -> shown().contains("log read: "));
            Waiting.leave();
            assertThat(left(shown())).isEmpty();
        }
    }

    @Test
    void the_line_fits_the_narrowest_window_so_that_it_can_be_wiped() throws Exception {
        try (Waiting waiting = new Waiting("a command with a name of very many words ".repeat(4), error, true, SOON)) {
            await(() -> !shown().isEmpty());
        }
        assertThat(shown().split("\r")).allSatisfy(line -> assertThat(line.length())
                .isLessThanOrEqualTo(Waiting.WIDEST)
                .isLessThan(50));
    }
}
