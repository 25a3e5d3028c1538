package witnessmark.triplog.event;

import java.util.ArrayList;
import java.util.List;

/**
 * Lever shifts in which the pedal was not seen pressed. They count, as events and as chances, once the clutch signal has
 * moved again; a start from rest with the pedal up shows that it had stopped telling anything, and they are dropped.
 */
final class UncertainShifts {
    private static final int MOST = 1000;

    private final Drive drive;
    private final List<HabitEvent> waiting = new ArrayList<>();
    private int chances;
    private boolean pressed;

    UncertainShifts(Drive drive) {
        this.drive = drive;
    }

    void row(Moment m) {
        boolean now = m.isPedalPressed();
        if (now != pressed && (chances > 0)) {
            flush();
        }
        pressed = now;
    }

    /** Takes a shift; {@code sure} says whether it is an event too, and not only a chance for one. */
    void add(HabitEvent event, boolean sure) {
        chances++;
        if (sure) {
            waiting.add(event);
        }
        if (waiting.size() >= MOST) {
            flush();
        }
    }

    void drop() {
        waiting.clear();
        chances = 0;
    }

    void interrupted() {
        flush();
        pressed = false;
    }

    private void flush() {
        for (; chances > 0; chances--) {
            drive.chances().count(EventKind.Chance.LEVER_SHIFT);
        }
        waiting.forEach(drive.found());
        waiting.clear();
    }
}
