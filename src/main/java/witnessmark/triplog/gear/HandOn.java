package witnessmark.triplog.gear;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Hands things on, in order, to whoever works on them next: at once, or on a thread of its own that may lag a few things
 * behind. What goes wrong there is thrown at whoever hands on.
 */
abstract class HandOn<T> implements AutoCloseable {
    abstract void accept(T thing);

    /** Waits until all is worked off; to be called once, after the last thing. */
    abstract void end();

    /** Gives up whatever is not yet worked off; does nothing after {@link #end}. */
    @Override
    public abstract void close();

    /** Works within the call. */
    static <T> HandOn<T> atOnce(Consumer<T> work) {
        return new HandOn<>() {
            @Override
            void accept(T thing) {
                work.accept(thing);
            }

            @Override
            void end() {
                // Nothing waits.
            }

            @Override
            public void close() {
                // Nothing waits.
            }
        };
    }

    /** Works on a thread of its own. */
    static <T> HandOn<T> aside(String name, Consumer<T> work) {
        return new Aside<>(name, work);
    }

    private static final class Aside<T> extends HandOn<T> {
        private static final int AHEAD = 3;

        private record Thing<T>(@Nullable T value) {}

        private final BlockingQueue<Thing<T>> waiting = new ArrayBlockingQueue<>(AHEAD);
        private final Consumer<T> work;
        private final Thread thread;
        private volatile @Nullable Throwable failure;

        Aside(String name, Consumer<T> work) {
            this.work = work;
            this.thread = new Thread(this::workOff, name);
            thread.setDaemon(true);
            thread.start();
        }

        private void workOff() {
            try {
                for (T next = waiting.take().value();
                        next != null;
                        next = waiting.take().value()) {
                    // After a failure the rest is taken and dropped, so that nobody waits for room for ever.
                    if (failure == null) {
                        workOff(next);
                    }
                }
            } catch (InterruptedException givenUp) {
                Thread.currentThread().interrupt();
            }
        }

        private void workOff(T thing) {
            try {
                work.accept(thing);
            } catch (RuntimeException | Error e) {
                failure = e;
            }
        }

        @Override
        void accept(T thing) {
            throwFailure();
            put(new Thing<>(thing));
        }

        @Override
        void end() {
            put(new Thing<>(null));
            try {
                thread.join();
            } catch (InterruptedException e) {
                throw interrupted();
            }
            throwFailure();
        }

        private void put(Thing<T> thing) {
            try {
                waiting.put(thing);
            } catch (InterruptedException e) {
                throw interrupted();
            }
        }

        private static IllegalStateException interrupted() {
            Thread.currentThread().interrupt();
            return new IllegalStateException("reading was interrupted");
        }

        private void throwFailure() {
            if (failure instanceof RuntimeException e) {
                throw e;
            }
            if (failure instanceof Error e) {
                throw e;
            }
        }

        @Override
        public void close() {
            thread.interrupt();
        }
    }
}
