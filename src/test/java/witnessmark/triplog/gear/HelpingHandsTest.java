package witnessmark.triplog.gear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class HelpingHandsTest {
    private static final List<Integer> THINGS =
            IntStream.range(0, 20_000).boxed().toList();

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void each_stage_gets_every_thing_in_order_and_one_at_a_time(int helpers) {
        List<Integer> first = new ArrayList<>();
        List<Integer> second = new ArrayList<>();
        AtomicInteger atWork = new AtomicInteger();
        AtomicInteger mostAtWork = new AtomicInteger();
        try (HelpingHands hands = new HelpingHands(helpers)) {
            HandOn<Integer> last = hands.before(second::add);
            HandOn<Integer> stage = hands.before((Integer thing) -> {
                mostAtWork.accumulateAndGet(atWork.incrementAndGet(), Math::max);
                first.add(thing);
                last.accept(thing);
                atWork.decrementAndGet();
            });

            THINGS.forEach(stage::accept);
            stage.end();
            last.end();
        }

        assertThat(first).isEqualTo(THINGS);
        assertThat(second).isEqualTo(THINGS);
        assertThat(mostAtWork).hasValue(1);
    }

    @Test
    void only_a_few_things_wait_however_slow_a_stage_is() {
        AtomicInteger waiting = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        try (HelpingHands hands = new HelpingHands(1)) {
            HandOn<Integer> slow = hands.before((Integer thing) -> {
                IntStream.range(0, 200).forEach(i -> Thread.onSpinWait());
                waiting.decrementAndGet();
            });
            for (int thing : THINGS) {
                most.accumulateAndGet(waiting.incrementAndGet(), Math::max);
                slow.accept(thing);
            }
            slow.end();
        }

        // Three before the stage, one in each of two pairs of hands.
        assertThat(most.get()).isLessThanOrEqualTo(5);
    }

    @Test
    void whoever_hands_on_too_much_does_the_work_himself_while_the_helper_is_held_up() throws InterruptedException {
        CountDownLatch heldUp = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        List<Thread> workers = new ArrayList<>();
        try (HelpingHands hands = new HelpingHands(1)) {
            HandOn<Integer> holding = hands.before((Integer thing) -> {
                heldUp.countDown();
                await(goOn);
            });
            HandOn<Integer> stage = hands.before((Integer thing) -> workers.add(Thread.currentThread()));
            holding.accept(0);
            heldUp.await();

            for (int thing = 0; thing < 10; thing++) {
                stage.accept(thing);
            }
            goOn.countDown();
            stage.end();
            holding.end();
        }

        assertThat(workers).hasSize(10).startsWith(Thread.currentThread());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Nested
    class Refusals {
        @Test
        void what_goes_wrong_in_the_last_stage_is_thrown_at_whoever_hands_on_to_the_first() {
            try (HelpingHands hands = new HelpingHands(1)) {
                HandOn<Integer> last = hands.before((Integer thing) -> {
                    throw new IllegalStateException("no room for " + thing);
                });
                HandOn<Integer> first = hands.before(last::accept);

                assertThatThrownBy(() -> {
                            THINGS.forEach(first::accept);
                            first.end();
                            last.end();
                        })
                        .isInstanceOf(IllegalStateException.class)
                        .hasMessage("no room for 0");
            }
        }

        @Test
        void waiting_ends_when_the_reading_is_interrupted() throws InterruptedException {
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch never = new CountDownLatch(1);
            try (HelpingHands hands = new HelpingHands(1)) {
                HandOn<Integer> stuck = hands.before((Integer thing) -> {
                    begun.countDown();
                    HelpingHandsTest.await(never);
                });
                stuck.accept(0);
                begun.await();

                Thread.currentThread().interrupt();

                assertThatThrownBy(stuck::end).hasMessage("reading was interrupted");
                assertThat(Thread.interrupted()).isTrue();
            } finally {
                never.countDown();
            }
        }
    }
}
