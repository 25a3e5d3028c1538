package witnessmark.triplog.gear;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Lever;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Split;
import witnessmark.gearbox.Splitter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.start.StartGears;

/** Draws up, from a truck's profile, the numbers that the reading of its logs needs. */
public final class TabulateGears {
    private TabulateGears() {}

    /** Gears by their short names; start gears by the physics where both masses are given, else left to the trade's rule. */
    public static GearTable of(TruckProfile truck) {
        List<KnobGear> gears =
                truck.gears().all().stream().map(gear -> gear(truck, gear)).toList();
        return new GearTable(
                gears,
                truck.value(Parameter.TYRE_REVS),
                truck.value(Parameter.AXLE_RATIO),
                truck.value(Parameter.GOVERNED_RPM),
                truck.value(Parameter.IDLE_RPM),
                truck.value(Parameter.LOWEST_PULLING_RPM),
                truck.rangeRatio(),
                truck.splitter().map(Splitter::ratio),
                startGears(truck));
    }

    private static KnobGear gear(TruckProfile truck, witnessmark.gearbox.Gear gear) {
        return new KnobGear(
                gear.id(), gear.ratio(), range(truck, gear), splitter(truck, gear.split()), lever(gear.lever()));
    }

    private static KnobGear.Range range(TruckProfile truck, witnessmark.gearbox.Gear gear) {
        if (!truck.hasRange()) {
            return KnobGear.Range.NONE;
        }
        return switch (gear.range()) {
            case LOW -> KnobGear.Range.LOW;
            case HIGH -> KnobGear.Range.HIGH;
        };
    }

    private static KnobGear.Splitter splitter(TruckProfile truck, Split split) {
        return switch (split) {
            case NONE -> KnobGear.Splitter.NONE;
            case DIRECT -> KnobGear.Splitter.DIRECT;
            case SPLIT -> truck.splitter().orElseThrow().overdrive()
                    ? KnobGear.Splitter.OVERDRIVE
                    : KnobGear.Splitter.UNDERDRIVE;
        };
    }

    private static int lever(Lever lever) {
        return switch (lever.kind()) {
            case LOW -> 0;
            case MAIN -> lever.number();
            case REVERSE -> -1;
        };
    }

    private static Optional<GearTable.StartGears> startGears(TruckProfile truck) {
        boolean given = truck.figure(Parameter.MASS_EMPTY).basis() == Basis.GIVEN
                && truck.figure(Parameter.MASS_LOADED).basis() == Basis.GIVEN;
        if (!given) {
            return Optional.empty();
        }
        Optional<String> loaded = highest(truck, StartGears.Load.LOADED);
        Optional<String> empty = highest(truck, StartGears.Load.EMPTY);
        return loaded.flatMap(l -> empty.map(e -> new GearTable.StartGears(l, e)));
    }

    private static Optional<String> highest(TruckProfile truck, StartGears.Load load) {
        return StartGears.of(truck, load).tallest().map(witnessmark.gearbox.Gear::id);
    }
}
