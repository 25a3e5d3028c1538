package witnessmark.gearbox.speed;

import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Unit;

/** An upshift from one gear to a faster one; read backwards it is the downshift. */
public record ShiftStep(Gear from, Gear to) {

    /** What moves in a shift. */
    public enum Kind {
        SPLIT,
        LEVER,
        LEVER_AND_SPLIT,
        LEVER_AND_RANGE
    }

    public ShiftStep {
        if (from.reverse() || to.reverse() || from.ratio() <= to.ratio()) {
            throw new QuestionRefused(
                    "shift: " + from.id() + " to " + to.id() + " is not an upshift between forward gears",
                    "give the slower gear first");
        }
    }

    public Kind kind() {
        if (from.range() != to.range()) {
            return Kind.LEVER_AND_RANGE;
        }
        if (from.lever().equals(to.lever())) {
            return Kind.SPLIT;
        }
        return from.split() == to.split() ? Kind.LEVER : Kind.LEVER_AND_SPLIT;
    }

    /** How many times the engine turns before the shift for each turn after it. */
    public Figure step() {
        return Figure.computed(from.ratio() / to.ratio(), Unit.RATIO, "step = i_from / i_to");
    }

    /** Share of the engine speed that the upshift takes away. */
    public double dropShare() {
        return 1 - to.ratio() / from.ratio();
    }

    public Figure drop(double rpmBefore) {
        return Figure.computed(rpmBefore * dropShare(), Unit.RPM, "drop = n (1 - 1/step)");
    }

    public Figure rpmAfter(double rpmBefore) {
        return Figure.computed(rpmBefore * to.ratio() / from.ratio(), Unit.RPM, "n_after = n / step");
    }
}
