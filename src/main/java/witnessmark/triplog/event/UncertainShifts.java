package witnessmark.triplog.event;

import java.util.ArrayList;
import java.util.List;

/**
 * Lever shifts in which the pedal was not seen pressed. They count, as events and as chances, once the clutch signal has
 * moved again; a start from rest with the pedal up shows that it had stopped telling anything, and they are dropped. So
 * they are at the end of the log where the signal stood still over several of them, and the pedal was pressed in nearly
 * all other shifts: that is a signal that froze, and not a driver who floats the gears now and then.
 */
final class UncertainShifts {
    private static final int MOST = 1000;
    /** So many shifts, over so long, in which the signal stands still; common practice, no source. */
    private static final int SEVERAL = 3;

    private static final double STILL_SECONDS = 60;
    /** With so many other shifts, and hardly any of them without the pedal, a driver's way is known. */
    private static final int WAY_KNOWN = 10;

    private static final double HARDLY_ANY = 0.1;

    private final Drive drive;
    private final List<HabitEvent> waiting = new ArrayList<>();
    private final List<HabitEvent> still = new ArrayList<>();
    private int chances;
    private int stillChances;
    private int others;
    private int othersWithout;
    private long firstMicros;
    private long lastMicros;
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
        firstMicros = chances == 0 ? event.startMicros() : firstMicros;
        lastMicros = event.startMicros();
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

    /** A shift in which the pedal was seen pressed. */
    void pressed() {
        others++;
    }

    /** Decides on what is still open; to be called once, after the last row. */
    void end() {
        boolean frozen = others >= WAY_KNOWN && othersWithout < HARDLY_ANY * others;
        if (!frozen) {
            count(stillChances, still);
        }
        still.clear();
    }

    private void flush() {
        boolean stood = chances >= SEVERAL && lastMicros - firstMicros >= STILL_SECONDS * 1e6;
        if (stood && still.size() < MOST) {
            still.addAll(waiting);
            stillChances += chances;
        } else {
            others += chances;
            othersWithout += chances;
            count(chances, waiting);
        }
        drop();
    }

    private void count(int shifts, List<HabitEvent> events) {
        for (int i = 0; i < shifts; i++) {
            drive.chances().count(EventKind.Chance.LEVER_SHIFT);
        }
        events.forEach(drive.found());
    }
}
