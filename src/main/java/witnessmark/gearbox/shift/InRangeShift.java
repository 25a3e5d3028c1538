package witnessmark.gearbox.shift;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.RangeShift.Outcome;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;

/**
 * A shift within one range, by lever, splitter or both. No cone works in it: the driver matches the speeds.
 * Kinematics.
 *
 * @param engineBefore input speed in the gear before
 * @param engineAfter input speed in the gear after
 * @param ceiling road speed at which the gear after is at governed speed
 * @param dogSpeedDifference what the splitter's dogs must lose or gain; empty where the splitter stays
 */
public record InRangeShift(
        Gear from,
        Gear to,
        Figure roadSpeed,
        Clutch clutch,
        Figure engineBefore,
        Figure engineAfter,
        Figure timesGoverned,
        Figure ceiling,
        Optional<Figure> dogSpeedDifference,
        Outcome outcome) {

    /** Throws where the gears are the same, or differ in range, or one is reverse. */
    public static InRangeShift of(TruckProfile truck, Gear from, Gear to, double kmh, Clutch clutch) {
        if (from.reverse() || to.reverse()) {
            throw new QuestionRefused(
                    "shift: " + from.id() + " to " + to.id()
                            + " goes into or out of reverse, which is done at a standstill",
                    "give two forward gears, or two of reverse that differ in range");
        }
        if (from.equals(to) || from.range() != to.range()) {
            throw new QuestionRefused(
                    "shift: " + from.id() + " to " + to.id() + " is not a shift under way within one range",
                    "give two forward gears");
        }
        if (!(kmh >= 0 && kmh <= 200)) {
            throw new QuestionRefused("road speed: " + kmh + " km/h cannot be", "give 0 to 200");
        }
        double output = truck.outputRpm(kmh);
        double governed = truck.value(Parameter.GOVERNED_RPM);
        double after = output * to.ratio();
        Optional<Figure> dogs = from.lever().equals(to.lever())
                ? Optional.of(SplitShift.of(truck, from, to, kmh).dogSpeedDifference())
                : Optional.empty();
        return new InRangeShift(
                from,
                to,
                Figure.given(kmh, Unit.KILOMETRE_PER_HOUR),
                clutch,
                Figure.computed(output * from.ratio(), Unit.RPM, "n_before = v i_from i_axle N_km / 60"),
                Figure.computed(after, Unit.RPM, "n_after = v i_to i_axle N_km / 60"),
                Figure.computed(after / governed, Unit.RATIO, "n_after / n_governed"),
                Figure.computed(
                        truck.roadKmh(governed / to.ratio()),
                        Unit.KILOMETRE_PER_HOUR,
                        "v_most = 60 n_governed / (i_to i_axle N_km)"),
                dogs,
                outcome(truck, after, clutch));
    }

    private static Outcome outcome(TruckProfile truck, double rpm, Clutch clutch) {
        if (rpm == 0) {
            return Outcome.STANDING;
        }
        if (rpm > truck.value(Parameter.GOVERNED_RPM) * ShiftVerdict.PROPER_SPEED) {
            return clutch == Clutch.ENGAGED ? Outcome.ENGINE_OVERSPED : Outcome.DISC_OVERSPED;
        }
        if (rpm < truck.value(Parameter.IDLE_RPM)) {
            return clutch == Clutch.ENGAGED ? Outcome.BELOW_IDLE : Outcome.DISC_BELOW_IDLE;
        }
        return Outcome.WITHIN_GOVERNED;
    }

    /** By the speed that the gear after gives engine or disc; an engine that labours below idle hammers the gears. */
    public ShiftVerdict verdict() {
        return outcome == Outcome.BELOW_IDLE ? ShiftVerdict.HARD : ShiftVerdict.ofSpeed(timesGoverned.value());
    }

    public boolean down() {
        return to.ratio() > from.ratio();
    }

    /** Every figure by its name, in the order to show them; each carries its formula. */
    public Map<String, Figure> figures() {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("engine speed before", engineBefore);
        figures.put("engine speed after", engineAfter);
        figures.put("engine speed after, over governed", timesGoverned);
        figures.put("highest road speed of gear " + to.id(), ceiling);
        dogSpeedDifference.ifPresent(figure -> figures.put("speed difference at the splitter's dogs", figure));
        return figures;
    }
}
