package witnessmark.gearbox.shift;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;

/**
 * What a range shift does.
 *
 * @param outputSpeed speed of the output shaft
 * @param properCeiling the highest road speed at which this shift is proper: governed speed in the low-range gear of
 *     the two; not to be said of a shift into or out of reverse, which is made at a standstill
 */
public record RangeShift(
        RangeShiftQuestion question,
        Figure outputSpeed,
        Figure properCeiling,
        Cone cone,
        Engine engine,
        ShiftVerdict verdict,
        List<Reason> reasons) {

    /**
     * The synchronizer's part.
     *
     * @param mainshaftChange whole change of mainshaft speed
     * @param dogChange the part of it that the splitter's dogs take; empty where the splitter stays
     * @param slipSpeed speed difference at the cone
     * @param inertia all that the cone drags, referred to the cone's shaft
     * @param slipEnergy rigid-body energy, without drag
     * @param orders the same by which of range and splitter moves first; empty where the splitter stays
     * @param energyWithDrag empty where the shift never finishes
     * @param timesSameShiftProper slip energy over that of the same shift done properly at its ceiling
     * @param timesHardestProper slip energy over that of the hardest proper range shift of this box
     * @param time empty where drag beats the cone
     * @param sticks whether the cone's angle locks it by friction
     */
    public record Cone(
            Figure mainshaftChange,
            Optional<Figure> dogChange,
            Figure slipSpeed,
            Figure inertia,
            Figure slipEnergy,
            Optional<Orders> orders,
            Optional<Figure> energyWithDrag,
            Figure timesSameShiftProper,
            Figure timesHardestProper,
            Figure torque,
            Optional<Figure> time,
            boolean sticks) {}

    /**
     * Slip energy of the cone by the order in which splitter and range move.
     *
     * @param counted the order that the other figures are for
     */
    public record Orders(SplitterMove counted, Figure splitterFirst, Figure rangeFirst) {}

    /**
     * The engine's and the disc's part.
     *
     * @param inputAfter speed of the input shaft once the lever is home in the new gear; negative where it turns backwards
     * @param timesGoverned its size over governed speed
     */
    public record Engine(Figure inputAfter, Figure timesGoverned, Outcome outcome) {}

    /** What the speed of the new gear does. */
    public enum Outcome {
        STANDING("the truck stands, so the new gear drives nothing"),
        WITHIN_GOVERNED("the engine stays within governed speed"),
        BELOW_IDLE("the engine is pulled below idle and labours or stalls"),
        DISC_BELOW_IDLE(
                "with the pedal down the input turns slower than idle; let in, the clutch pulls the engine below it"),
        INPUT_WOULD_BE_BELOW_IDLE("the input would turn slower than idle if the lever went home"),
        ENGINE_OVERSPED("the engine is driven above governed speed"),
        DISC_OVERSPED("the clutch disc is driven above governed speed, unseen, with the pedal down"),
        INPUT_WOULD_BE_OVERSPED("the input would be driven above governed speed if the lever went home"),
        TURNED_BACKWARDS("the input is turned backwards against the engine"),
        INPUT_WOULD_TURN_BACKWARDS("the input would be turned backwards if the lever went home");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Every figure by its name, in the order to show them; each carries its formula. */
    public Map<String, Figure> figures() {
        Map<String, Figure> figures = new LinkedHashMap<>();
        figures.put("output shaft speed", outputSpeed);
        if (!question.withReverse()) {
            figures.put("highest proper road speed", properCeiling);
        }
        figures.put("input speed after the shift", engine.inputAfter());
        figures.put("input speed over governed", engine.timesGoverned());
        figures.put("mainshaft speed change", cone.mainshaftChange());
        cone.dogChange().ifPresent(figure -> figures.put("of it by the splitter's dogs", figure));
        figures.put("speed difference at the cone", cone.slipSpeed());
        figures.put("inertia at the cone", cone.inertia());
        figures.put("slip energy", cone.slipEnergy());
        cone.orders().ifPresent(orders -> {
            figures.put("slip energy, splitter first", orders.splitterFirst());
            figures.put("slip energy, range first", orders.rangeFirst());
        });
        figures.put("times the same shift done properly", cone.timesSameShiftProper());
        figures.put("times the hardest proper shift", cone.timesHardestProper());
        figures.put("cone torque", cone.torque());
        cone.energyWithDrag().ifPresent(figure -> figures.put("slip energy with drag", figure));
        cone.time().ifPresent(figure -> figures.put("time of the cone", figure));
        return figures;
    }
}
