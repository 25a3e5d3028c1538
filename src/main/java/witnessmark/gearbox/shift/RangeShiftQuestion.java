package witnessmark.gearbox.shift;

import witnessmark.gearbox.Gear;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.Split;
import witnessmark.gearbox.TruckProfile;

/**
 * A range shift as it was, or may have been, made.
 *
 * @param from gear before
 * @param to gear after, in the other range
 * @param roadKmh road speed, not negative
 * @param rolling which way the truck rolls; back, whatever is given, where it comes out of reverse
 */
public record RangeShiftQuestion(
        Gear from, Gear to, double roadKmh, Clutch clutch, LeverTiming lever, Rolling rolling, SplitterMove splitter) {

    /** The clutch as the new gear takes up. */
    public enum Clutch {
        /** Pedal up: the engine turns with the input. */
        ENGAGED,
        /** Pedal down: only the disc turns with the input. */
        PEDAL_DOWN
    }

    /** When the range moved. */
    public enum LeverTiming {
        /** Selected beforehand: the range moves as the lever passes neutral, and the lever waits for it. */
        PRESELECTED,
        /** The range was moved with the lever resting in neutral. */
        IN_NEUTRAL,
        /** The lever was home in the new gear before the cone was done. */
        LEVER_HOME_FIRST
    }

    public enum Rolling {
        FORWARD,
        BACK
    }

    /** What the splitter does beside the range. */
    public enum SplitterMove {
        /** It goes where the two gears say; where it moves, the order that costs the cone more is taken. */
        AS_THE_GEARS_SAY,
        /** It is home before the cone works. */
        SPLITTER_FIRST,
        /** It moves once the cone is done. */
        RANGE_FIRST,
        /** On a box that splits high range only it stays in its own ratio although low range is not meant to be split. */
        STAYS_SPLIT
    }

    public RangeShiftQuestion {
        // In a reverse gear a truck rolls back.
        rolling = from.reverse() ? Rolling.BACK : rolling;
        if (from.range() == to.range()) {
            throw new QuestionRefused(
                    "range shift: " + from.id() + " to " + to.id() + " stays in one range",
                    "give a gear of low range and one of high range");
        }
        if (!(roadKmh >= 0 && roadKmh <= 200)) {
            throw new QuestionRefused(
                    "road speed: " + roadKmh + " km/h cannot be", "give 0 to 200, and rolling back as such");
        }
        if (splitter == SplitterMove.STAYS_SPLIT && (from.split() != Split.SPLIT || to.split() != Split.NONE)) {
            throw new QuestionRefused("splitter: it can stay split only from a split gear to an unsplit one, not "
                    + from.id() + " to " + to.id());
        }
        if ((splitter == SplitterMove.SPLITTER_FIRST || splitter == SplitterMove.RANGE_FIRST)
                && !otherSplit(from, to)) {
            throw new QuestionRefused(
                    "order: from " + from.id() + " to " + to.id()
                            + " the splitter does not move, so nothing comes first",
                    "leave the order out");
        }
    }

    private static boolean otherSplit(Gear from, Gear to) {
        return (from.split() == Split.SPLIT) != (to.split() == Split.SPLIT);
    }

    /** The shift made as it should be: preselected, clutch engaged again, rolling forward. */
    public static RangeShiftQuestion proper(Gear from, Gear to, double roadKmh) {
        return new RangeShiftQuestion(
                from,
                to,
                roadKmh,
                Clutch.ENGAGED,
                LeverTiming.PRESELECTED,
                Rolling.FORWARD,
                SplitterMove.AS_THE_GEARS_SAY);
    }

    /** Turns of the mainshaft to one of the output after the shift. */
    double auxiliaryAfter(TruckProfile truck) {
        return splitter == SplitterMove.STAYS_SPLIT
                ? to.auxiliaryRatio() * truck.splitter().orElseThrow().ratio()
                : to.auxiliaryRatio();
    }

    boolean splitterMoves() {
        return splitter != SplitterMove.STAYS_SPLIT && otherSplit(from, to);
    }

    /** Whether the splitter is home before the cone works; where that is not said, whichever costs the cone more. */
    boolean splitterFirst(TruckProfile truck) {
        return switch (splitter) {
            case SPLITTER_FIRST -> true;
            case RANGE_FIRST -> false;
                // The more turns of the mainshaft to one of the auxiliary, the more of its inertia the cone feels.
            case AS_THE_GEARS_SAY -> to.splitRatio(truck) >= from.splitRatio(truck);
            case STAYS_SPLIT -> false;
        };
    }

    /** Turns of the mainshaft to one of the auxiliary's input while the cone works. */
    double splitWhileConeWorks(TruckProfile truck) {
        return splitterFirst(truck) ? to.splitRatio(truck) : from.splitRatio(truck);
    }

    Gear lowGear() {
        return from.range() == Range.LOW ? from : to;
    }

    /** Whether it goes into reverse or out of it, which is done at a standstill (common practice). */
    public boolean withReverse() {
        return from.reverse() || to.reverse();
    }

    /** Whether the truck rolls against the direction of the new gear. */
    boolean againstTheGear() {
        return (rolling == Rolling.BACK) != to.reverse();
    }
}
