package witnessmark.triplog.event;

import java.util.Optional;

/**
 * One event found in a log. It says what the gearbox did, not what the hand asked, and names no driver.
 *
 * @param kind what happened
 * @param stretch when, on which lines, how fast
 * @param gears in hand before and after
 * @param severity figure of its hardness: 1 is serious, 2 severe
 * @param confidence how sure it is that this happened, 0 to 1
 * @param figures further figures
 * @param sentence all of it for a person
 * @param act whether it is an act of its own, or follows from another one
 */
public record HabitEvent(
        EventKind kind,
        Stretch stretch,
        Gears gears,
        double severity,
        double confidence,
        EventFigures figures,
        String sentence,
        Act act) {
    /**
     * Where in the log an event lies.
     *
     * @param startMicros time of its first row
     * @param seconds how long it took
     * @param firstLine first line of the file that shows it
     * @param lastLine last line of the file that shows it
     * @param roadKmh road speed, at its highest during the event
     * @param engineRpm engine speed, at its highest during the event
     */
    public record Stretch(
            long startMicros, double seconds, long firstLine, long lastLine, double roadKmh, double engineRpm) {
        Stretch upsideDown() {
            return new Stretch(startMicros, seconds, lastLine, firstLine, roadKmh, engineRpm);
        }

        long endMicros() {
            return startMicros + (long) (seconds * 1e6);
        }
    }

    /** Gear in hand before, where there was one, and after or during. */
    public record Gears(Optional<String> before, Optional<String> after) {
        public static final Gears NONE = new Gears(Optional.empty(), Optional.empty());

        static Gears in(String gear) {
            return new Gears(Optional.of(gear), Optional.of(gear));
        }

        static Gears into(String gear) {
            return new Gears(Optional.empty(), Optional.of(gear));
        }

        static Gears change(String before, String after) {
            return new Gears(Optional.of(before), Optional.of(after));
        }
    }

    /**
     * What was done at once: a shift, with what came of it.
     *
     * @param number of the act in its log, from 1; 0 before it is known
     * @param follows the kind of the event it follows from, empty for the act itself
     */
    public record Act(int number, Optional<EventKind> follows) {
        public static final Act UNKNOWN = new Act(0, Optional.empty());
    }

    public HabitEvent {
        if (!(confidence >= 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence " + confidence + " is not between 0 and 1");
        }
    }

    static HabitEvent of(
            EventKind kind,
            Stretch stretch,
            Gears gears,
            double severity,
            double confidence,
            EventFigures figures,
            String sentence) {
        return new HabitEvent(kind, stretch, gears, severity, confidence, figures, sentence, Act.UNKNOWN);
    }

    HabitEvent with(Act known) {
        return new HabitEvent(kind, stretch, gears, severity, confidence, figures, sentence, known);
    }

    HabitEvent with(EventFigures other) {
        return new HabitEvent(kind, stretch, gears, severity, confidence, other, sentence, act);
    }

    /** The same with the lines as they stand in the file, where it was read from its end. */
    public HabitEvent withLinesInOrder() {
        return firstLine() <= lastLine()
                ? this
                : new HabitEvent(kind, stretch.upsideDown(), gears, severity, confidence, figures, sentence, act);
    }

    /** Whether it follows from another event of the same act and so is no witness of its own. */
    public boolean isConsequence() {
        return act.follows().isPresent();
    }

    public Severity grade() {
        return Severity.of(severity);
    }

    public long startMicros() {
        return stretch.startMicros();
    }

    public double seconds() {
        return stretch.seconds();
    }

    public long firstLine() {
        return stretch.firstLine();
    }

    public long lastLine() {
        return stretch.lastLine();
    }

    public double roadKmh() {
        return stretch.roadKmh();
    }

    public double engineRpm() {
        return stretch.engineRpm();
    }

    public Optional<String> gearBefore() {
        return gears.before();
    }

    public Optional<String> gearAfter() {
        return gears.after();
    }
}
