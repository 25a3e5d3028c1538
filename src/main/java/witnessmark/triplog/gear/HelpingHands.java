package witnessmark.triplog.gear;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Hands that do the work of several stages, each stage's things in order and one at a time. Whoever hands on too much helps
 * instead of waiting, so that with one hand for each core none of them lies idle; a thread for each stage left a core of two
 * idle for a fifth of the time, since the system does not move a thread for pauses of half a millisecond. What goes wrong in
 * a stage is thrown at whoever hands on.
 */
final class HelpingHands implements AutoCloseable {
    /** So many things may wait before a stage. */
    private static final int AHEAD = 3;

    /** The last stage first: of two with as much to do, it goes on before. */
    private final List<Stage<?>> stages = new ArrayList<>();

    private @Nullable Throwable failure;
    private boolean closed;

    /** @param helpers beside whoever hands on; at least 1 */
    HelpingHands(int helpers) {
        for (int i = 0; i < helpers; i++) {
            Thread helper = new Thread(this::help, "log-" + (i + 1));
            helper.setDaemon(true);
            helper.start();
        }
    }

    /** A stage that comes before those named so far. */
    synchronized <T> HandOn<T> before(Consumer<T> work) {
        Stage<T> stage = new Stage<>(work);
        stages.add(stage);
        return stage;
    }

    private void help() {
        try {
            for (Optional<Runnable> next = awaitWork(); next.isPresent(); next = awaitWork()) {
                next.get().run();
            }
        } catch (InterruptedException givenUp) {
            Thread.currentThread().interrupt();
        }
    }

    /** Empty when there will be none. */
    private synchronized Optional<Runnable> awaitWork() throws InterruptedException {
        while (!closed) {
            Optional<Runnable> work = takeWork();
            if (work.isPresent()) {
                return work;
            }
            wait();
        }
        return Optional.empty();
    }

    /** Of the stage before which the most waits: so each has something left while another is at work on the one before it. */
    private Optional<Runnable> takeWork() {
        Stage<?> fullest = null;
        for (Stage<?> stage : stages) {
            if (stage.isReady() && (fullest == null || stage.waiting.size() > fullest.waiting.size())) {
                fullest = stage;
            }
        }
        return Optional.ofNullable(fullest).map(Stage::take);
    }

    /** Does what there is to do until that is so. */
    private void helpUntil(BooleanSupplier done) {
        try {
            for (Optional<Runnable> next = workUnless(done); next.isPresent(); next = workUnless(done)) {
                next.get().run();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("reading was interrupted");
        }
    }

    /** Empty once that is so. */
    private synchronized Optional<Runnable> workUnless(BooleanSupplier done) throws InterruptedException {
        while (true) {
            throwFailure();
            if (done.getAsBoolean()) {
                return Optional.empty();
            }
            Optional<Runnable> work = takeWork();
            if (work.isPresent()) {
                return work;
            }
            wait();
        }
    }

    private void throwFailure() {
        if (failure instanceof RuntimeException e) {
            throw e;
        }
        if (failure instanceof Error e) {
            throw e;
        }
    }

    private synchronized void worked(Stage<?> stage, @Nullable Throwable thrown) {
        stage.busy = false;
        failure = failure == null ? thrown : failure;
        closed |= failure != null;
        notifyAll();
    }

    /** Gives up whatever is not yet worked off. */
    @Override
    public synchronized void close() {
        closed = true;
        notifyAll();
    }

    private final class Stage<T> implements HandOn<T> {
        private final Queue<T> waiting = new ArrayDeque<>();
        private final Consumer<T> work;
        private boolean busy;

        Stage(Consumer<T> work) {
            this.work = work;
        }

        private boolean isReady() {
            return !busy && !waiting.isEmpty();
        }

        private Runnable take() {
            busy = true;
            T thing = waiting.remove();
            return () -> workOff(thing);
        }

        private void workOff(T thing) {
            Throwable thrown = null;
            try {
                work.accept(thing);
            } catch (RuntimeException | Error e) {
                thrown = e;
            } finally {
                worked(this, thrown);
            }
        }

        @Override
        public void accept(T thing) {
            helpUntil(() -> waiting.size() < AHEAD);
            synchronized (HelpingHands.this) {
                waiting.add(thing);
                HelpingHands.this.notifyAll();
            }
        }

        @Override
        public void end() {
            helpUntil(() -> waiting.isEmpty() && !busy);
        }
    }
}
