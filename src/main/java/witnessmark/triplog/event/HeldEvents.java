package witnessmark.triplog.event;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import witnessmark.triplog.signal.Signal;

/** Holds events that rest on the clutch pedal back until it is known whether the pedal's signal can be believed. */
final class HeldEvents implements Consumer<HabitEvent> {
    /** Beyond so many the signal counts as it has shown itself by then. */
    private static final int MOST = 20_000;

    private final Trust trust;
    private final Consumer<HabitEvent> found;
    private final List<HabitEvent> held = new ArrayList<>();

    HeldEvents(Trust trust, Consumer<HabitEvent> found) {
        this.trust = trust;
        this.found = found;
    }

    @Override
    public void accept(HabitEvent event) {
        boolean byPedal = event.kind().needs().stream().anyMatch(choice -> choice.contains(Signal.CLUTCH));
        if (!byPedal) {
            found.accept(event);
            return;
        }
        held.add(event);
        if (held.size() >= MOST) {
            end();
        }
    }

    /** Hands on what was held, or drops it if the pedal is not believed. */
    void end() {
        if (trust.clutchDoubt().isEmpty()) {
            held.forEach(found);
        }
        held.clear();
    }
}
