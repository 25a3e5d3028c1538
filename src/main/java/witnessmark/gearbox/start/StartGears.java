package witnessmark.gearbox.start;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Lever;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.Split;
import witnessmark.gearbox.TruckProfile;

/**
 * The gears to start in, for one load and grade.
 *
 * @param lowest the lowest sensible one: loaded the lowest of all, empty one lever position up (common practice)
 * @param highest the fastest low-range gear whose start stays within the clutch's ordinary energy even when it is let in
 *     gently; both are empty where no gear starts sensibly
 * @param tallest the fastest one that stays within it with all the torque there is: above it no start was right
 * @param starts every candidate, slowest first
 */
public record StartGears(
        Load load, Optional<Gear> lowest, Optional<Gear> highest, Optional<Gear> tallest, List<StandingStart> starts) {

    public enum Load {
        EMPTY,
        LOADED
    }

    /** For the profile's own mass and start grade. */
    public static StartGears of(TruckProfile truck, Load load) {
        return of(truck, load, truck.value(Parameter.START_GRADE));
    }

    public static StartGears of(TruckProfile truck, Load load, double gradePercent) {
        return of(
                truck,
                load,
                truck.value(load == Load.EMPTY ? Parameter.MASS_EMPTY : Parameter.MASS_LOADED),
                gradePercent);
    }

    /** For a mass of one's own, counted as empty or loaded. */
    public static StartGears of(TruckProfile truck, Load load, double massKg, double gradePercent) {
        AnalyseStart analysis = new AnalyseStart(truck);
        List<StandingStart> starts = candidates(truck).stream()
                .map(gear -> analysis.of(new StartQuestion(gear, massKg, gradePercent)))
                .toList();
        List<Gear> sensible = starts.stream()
                .filter(start -> start.verdict() == StandingStart.Verdict.SENSIBLE)
                .map(start -> start.question().gear())
                .toList();
        return new StartGears(
                load,
                lowest(sensible, load),
                last(starts, EnumSet.of(StandingStart.Verdict.SENSIBLE)),
                last(starts, EnumSet.of(StandingStart.Verdict.SENSIBLE, StandingStart.Verdict.HOT_AT_PART_THROTTLE)),
                starts);
    }

    private static Optional<Gear> last(List<StandingStart> starts, Set<StandingStart.Verdict> verdicts) {
        return starts.stream()
                .filter(start -> verdicts.contains(start.verdict()))
                .reduce((earlier, later) -> later)
                .map(start -> start.question().gear());
    }

    private static List<Gear> candidates(TruckProfile truck) {
        return truck.gears().forwardIn(truck.hasRange() ? Range.LOW : Range.HIGH);
    }

    private static Optional<Gear> lowest(List<Gear> sensible, Load load) {
        if (load == Load.LOADED || sensible.isEmpty()) {
            return sensible.stream().findFirst();
        }
        Lever first = sensible.get(0).lever();
        return sensible.stream()
                .filter(gear -> !gear.lever().equals(first) && gear.split() != Split.SPLIT)
                .findFirst()
                .or(() -> sensible.stream().findFirst());
    }
}
