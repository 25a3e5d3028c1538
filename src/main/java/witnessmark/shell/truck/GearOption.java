package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.TruckProfile;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.Nearest;

/** Reads the word by which a command names a gear. */
final class GearOption {
    private GearOption() {}

    /** The gear so named; {@link WrongUsage} names the ones that may be meant. */
    static Gear of(TruckProfile truck, String option, String word) {
        if (word.isEmpty()) {
            throw new WrongUsage(
                    option + " is missing", "give one of " + ids(truck.gears().all()));
        }
        String plain = word.strip().toLowerCase(Locale.ROOT);
        List<Gear> all = truck.gears().all();
        return all.stream()
                .filter(gear -> gear.id().toLowerCase(Locale.ROOT).equals(plain)
                        || gear.title().toLowerCase(Locale.ROOT).equals(plain))
                .findFirst()
                .orElseThrow(() -> new WrongUsage(option + " '" + Terminal.harmless(word) + "' " + mend(all, plain)));
    }

    private static String mend(List<Gear> all, String plain) {
        List<Gear> split = all.stream()
                .filter(gear -> gear.id().toLowerCase(Locale.ROOT).matches(Pattern.quote(plain) + "[dou]"))
                .toList();
        if (!split.isEmpty()) {
            return "is split in this box; give "
                    + split.stream()
                            .map(gear -> gear.id() + " (" + gear.title() + ")")
                            .collect(Collectors.joining(" or "));
        }
        List<String> names = all.stream()
                .flatMap(gear -> Stream.of(gear.id(), gear.title()))
                .distinct()
                .toList();
        List<String> near = Nearest.some(plain, names, 3);
        return "is not a gear of this box; " + (near.isEmpty() ? "" : "did you mean " + String.join(", ", near) + "? ")
                + "It has " + ids(all);
    }

    private static String ids(List<Gear> gears) {
        return gears.stream().map(Gear::id).collect(Collectors.joining(" "));
    }
}
