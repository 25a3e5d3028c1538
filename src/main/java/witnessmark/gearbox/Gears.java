package witnessmark.gearbox;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All gears of a box.
 *
 * @param forward slowest gear (highest ratio) first
 * @param reverse the same for reverse
 */
public record Gears(List<Gear> forward, List<Gear> reverse) {

    static Gears of(TruckProfile truck) {
        return new Gears(slowestFirst(forwardGears(truck)), slowestFirst(reverseGears(truck)));
    }

    /** The lever positions, low first, then the main ones, then reverse. */
    public static List<Lever> levers(TruckProfile truck) {
        List<Lever> levers = new ArrayList<>();
        if (truck.has(Parameter.LOW_RATIO)) {
            levers.add(new Lever(Lever.Kind.LOW, 0, truck.value(Parameter.LOW_RATIO)));
        }
        for (int i = 0; i < truck.mainRatios().size(); i++) {
            levers.add(new Lever(Lever.Kind.MAIN, i + 1, truck.mainRatios().get(i)));
        }
        levers.add(new Lever(Lever.Kind.REVERSE, 0, truck.value(Parameter.REVERSE_RATIO)));
        return levers;
    }

    /** Every forward and reverse gear. */
    public List<Gear> all() {
        return Stream.concat(forward.stream(), reverse.stream()).toList();
    }

    /** Forward gears of one range, slowest first. */
    public List<Gear> forwardIn(Range range) {
        return forward.stream().filter(gear -> gear.range() == range).toList();
    }

    public Gear top() {
        return forward.get(forward.size() - 1);
    }

    /** The gear of that short name or title, case aside; throws with the names that there are. */
    public Gear named(String name) {
        String plain = name.strip().toLowerCase(Locale.ROOT);
        return all().stream()
                .filter(gear -> gear.id().toLowerCase(Locale.ROOT).equals(plain)
                        || gear.title().toLowerCase(Locale.ROOT).equals(plain))
                .findFirst()
                .orElseThrow(() -> new QuestionRefused(
                        "gear: '" + name.strip() + "' is not a gear of this box",
                        "give one of " + all().stream().map(Gear::id).collect(Collectors.joining(" "))));
    }

    private static List<Gear> slowestFirst(Stream<Gear> gears) {
        return gears.sorted(Comparator.comparingDouble(Gear::ratio).reversed()).toList();
    }

    private static Stream<Gear> forwardGears(TruckProfile truck) {
        Range lowest = truck.hasRange() ? Range.LOW : Range.HIGH;
        return levers(truck).stream()
                .filter(lever -> lever.kind() != Lever.Kind.REVERSE)
                .flatMap(lever -> ranges(truck)
                        .filter(range -> lever.kind() == Lever.Kind.MAIN || range == lowest)
                        .flatMap(range -> splits(truck, lever, range)));
    }

    private static Stream<Gear> reverseGears(TruckProfile truck) {
        Lever reverse = levers(truck).get(levers(truck).size() - 1);
        return ranges(truck).flatMap(range -> splits(truck, reverse, range));
    }

    private static Stream<Range> ranges(TruckProfile truck) {
        return truck.hasRange() ? Stream.of(Range.LOW, Range.HIGH) : Stream.of(Range.HIGH);
    }

    private static Stream<Gear> splits(TruckProfile truck, Lever lever, Range range) {
        return truck.splitter()
                .filter(splitter -> splitter.splits(range))
                .map(splitter -> Stream.of(Split.DIRECT, Split.SPLIT))
                .orElse(Stream.of(Split.NONE))
                .map(split -> gear(truck, lever, range, split));
    }

    private static Gear gear(TruckProfile truck, Lever lever, Range range, Split split) {
        double rangeRatio = range == Range.LOW ? truck.rangeRatio() : 1;
        double splitRatio =
                split == Split.SPLIT ? truck.splitter().orElseThrow().ratio() : 1;
        boolean over = truck.splitter().map(Splitter::overdrive).orElse(false);
        return new Gear(
                shortName(truck, lever, range) + shortSplit(split, over),
                title(truck, lever, range) + titleSplit(split, over),
                lever,
                range,
                split,
                rangeRatio * splitRatio);
    }

    private static String shortName(TruckProfile truck, Lever lever, Range range) {
        return switch (lever.kind()) {
            case LOW -> "L";
            case MAIN -> String.valueOf(number(truck, lever, range));
            case REVERSE -> truck.hasRange() ? (range == Range.LOW ? "Rl" : "Rh") : "R";
        };
    }

    private static String title(TruckProfile truck, Lever lever, Range range) {
        return switch (lever.kind()) {
            case LOW -> "low";
            case MAIN -> String.valueOf(number(truck, lever, range));
            case REVERSE -> truck.hasRange() ? (range == Range.LOW ? "reverse low" : "reverse high") : "reverse";
        };
    }

    private static int number(TruckProfile truck, Lever lever, Range range) {
        boolean second = truck.hasRange() && range == Range.HIGH;
        return lever.number() + (second ? truck.mainRatios().size() : 0);
    }

    private static String shortSplit(Split split, boolean over) {
        return switch (split) {
            case NONE -> "";
            case DIRECT -> "d";
            case SPLIT -> over ? "o" : "u";
        };
    }

    private static String titleSplit(Split split, boolean over) {
        return switch (split) {
            case NONE -> "";
            case DIRECT -> " direct";
            case SPLIT -> over ? " overdrive" : " underdrive";
        };
    }
}
