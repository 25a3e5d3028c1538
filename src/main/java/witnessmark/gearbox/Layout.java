package witnessmark.gearbox;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * How a gearbox is built, as far as the case says; it decides which causes can apply.
 *
 * @param forwardRatios number of forward ratios (1 to 32), empty where not said
 * @param range how the range is shifted, or that there is none
 * @param splitter which ranges the splitter splits, or that there is none
 * @param countershafts single or twin
 * @param linkage lever on the box, or remote by rods or cables
 * @param oilPump whether a pump is fitted
 * @param oilCooler whether a cooler is fitted
 * @param powerTakeOff whether a power take-off is fitted
 */
public record Layout(
        OptionalInt forwardRatios,
        Optional<RangeShift> range,
        Optional<Splitter> splitter,
        Optional<Countershafts> countershafts,
        Optional<Linkage> linkage,
        Optional<Fitted> oilPump,
        Optional<Fitted> oilCooler,
        Optional<Fitted> powerTakeOff) {

    public enum RangeShift {
        NONE,
        AIR,
        MECHANICAL
    }

    public enum Splitter {
        NONE,
        HIGH_ONLY,
        BOTH
    }

    public enum Countershafts {
        SINGLE,
        TWIN
    }

    public enum Linkage {
        DIRECT,
        REMOTE
    }

    public enum Fitted {
        FITTED,
        NONE
    }

    public Layout {
        if (forwardRatios.isPresent() && (forwardRatios.getAsInt() < 1 || forwardRatios.getAsInt() > 32)) {
            throw new IllegalArgumentException(
                    "forward-ratios: " + forwardRatios.getAsInt() + " is not a number from 1 to 32");
        }
    }

    /** A layout of which nothing is known: every cause may apply. */
    public static Layout unknown() {
        return new Layout(
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
