package witnessmark.triplog.event;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import witnessmark.triplog.signal.Signal;

/** Holds events that rest on the clutch pedal or the gear back until it is known whether these can be believed. */
final class WaitingEvents implements Consumer<HabitEvent> {
    /** Beyond so many the signal counts as it has shown itself by then. */
    private static final int MOST = 20_000;

    private final Trust trust;
    private final Chances chances;
    private final Consumer<HabitEvent> found;
    private final List<HabitEvent> waiting = new ArrayList<>();

    WaitingEvents(Trust trust, Chances chances, Consumer<HabitEvent> found) {
        this.trust = trust;
        this.chances = chances;
        this.found = found;
    }

    @Override
    public void accept(HabitEvent event) {
        if (!byPedal(event) && !event.kind().needsGear()) {
            found.accept(event);
            return;
        }
        waiting.add(event);
        if (waiting.size() >= MOST) {
            end();
        }
    }

    private static boolean byPedal(HabitEvent event) {
        return event.kind().needs().stream().anyMatch(choice -> choice.contains(Signal.CLUTCH));
    }

    /** Hands on what waits, but for what is not believed. */
    void end() {
        // What waits shows a truck that drives or is held on a slope: neither can be told by a road speed at 0 all
        // along.
        boolean pedal = trust.clutchDoubt().isEmpty() && !trust.isAlwaysStanding();
        boolean gear = chances.gearDoubt().isEmpty();
        waiting.stream()
                .filter(e -> (pedal || !byPedal(e)) && (gear || !e.kind().needsGear()))
                .forEach(found);
        waiting.clear();
    }
}
