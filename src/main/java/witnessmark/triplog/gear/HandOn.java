package witnessmark.triplog.gear;

import java.util.function.Consumer;

/** Hands things on, in order, to whatever works on them next: at once, or by {@link HelpingHands} a few things later. */
interface HandOn<T> {
    void accept(T thing);

    /** Waits until all is worked off; to be called once, after the last thing. */
    void end();

    /** Works within the call. */
    static <T> HandOn<T> atOnce(Consumer<T> work) {
        return new HandOn<>() {
            @Override
            public void accept(T thing) {
                work.accept(thing);
            }

            @Override
            public void end() {
                // Nothing waits.
            }
        };
    }
}
