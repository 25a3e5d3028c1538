package witnessmark.shell.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jline.utils.Signals;
import org.junit.jupiter.api.Test;

class WatchReadingTest {
    private final ByteArrayOutputStream told = new ByteArrayOutputStream();

    private WatchReading watch(boolean telling) {
        return new WatchReading(new PrintStream(told, true, StandardCharsets.UTF_8), telling);
    }

    /** Raises the interrupt as Ctrl-C does; the class for it is not part of the documented Java. */
    private static void pressControlC() throws ReflectiveOperationException {
        Class<?> signal = Class.forName("sun.misc.Signal");
        Object interrupt = signal.getConstructor(String.class).newInstance("INT");
        signal.getMethod("raise", signal).invoke(null, interrupt);
    }

    @Test
    void control_c_stops_the_reading_and_is_given_back_afterwards() throws Exception {
        CountDownLatch outer = new CountDownLatch(2);
        Object before = Signals.register("INT", outer::countDown);
        try (WatchReading watch = watch(false)) {
            assertThat(watch.goOn(1, 10)).isTrue();

            pressControlC();
            for (int tries = 0; tries < 600 && !watch.isStopped(); tries++) {
                Thread.sleep(100);
            }
            assertThat(watch.isStopped())
                    .as("a process that was started with the signal ignored never hears it")
                    .isTrue();

            assertThat(watch.goOn(2, 10)).isFalse();
            pressControlC();
        }
        pressControlC();
        assertThat(outer.await(60, TimeUnit.SECONDS)).isTrue();
        Signals.unregister("INT", before);
    }

    @Test
    void a_short_log_or_a_reader_without_a_terminal_is_not_told_of_progress() {
        try (WatchReading watch = watch(true)) {
            watch.goOn(1, 1_000_000);
        }
        try (WatchReading watch = watch(false)) {
            watch.goOn(1, 10_000_000_000L);
        }
        assertThat(told.size()).isZero();
    }

    @Test
    void progress_says_how_far_how_fast_and_how_long_still() {
        assertThat(WatchReading.words(2_500_000_000L, 10_000_000_000L, 10))
                .isEqualTo("reading:  25 % of 10,000 MB, 250 MB/s, about 30 s left; Ctrl-C stops  ")
                .hasSizeLessThan(80);
    }
}
