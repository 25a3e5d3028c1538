package witnessmark.triplog.read;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.triplog.signal.Signal;

/** The first values of a column, which may tell what its name leaves open: a switch, a travel, a speed. */
final class ColumnValues {
    private static final Set<Signal> SWITCHES = Set.of(
            Signal.CLUTCH,
            Signal.CLUTCH_FLOOR,
            Signal.BRAKE,
            Signal.PARKING_BRAKE,
            Signal.RANGE_KNOB,
            Signal.POWER_TAKE_OFF,
            Signal.NEUTRAL_SWITCH,
            Signal.REVERSE_SWITCH);

    private final double highest;
    private final boolean numbers;
    private final boolean isSwitch;

    ColumnValues(List<String> values, char decimal) {
        List<String> plain = values.stream()
                .map(v -> decimal == ',' ? v.replace(',', '.') : v)
                .toList();
        List<String> numeric =
                plain.stream().filter(v -> v.matches("-?\\d+(\\.\\d+)?")).toList();
        highest = numeric.stream().mapToDouble(Double::parseDouble).max().orElse(0);
        numbers = !numeric.isEmpty();
        isSwitch = plain.stream().allMatch(v -> v.matches("[01](\\.0+)?") || NumberText.isWord(v));
    }

    /** The meaning that goes with the values; empty if none does. */
    Optional<HeaderTokens.Meaning> fitting(HeaderTokens.Meaning meant, Optional<String> unit) {
        Signal signal = meant.signal();
        if (signal == Signal.CLUTCH && !isSwitch && numbers && highest <= 100) {
            return Optional.of(meant.turnedTo(Signal.CLUTCH_PEDAL));
        }
        if (signal == Signal.REVERSE_SWITCH && !isSwitch && highest > 300) {
            return Optional.of(HeaderTokens.Meaning.likely(Signal.ENGINE_SPEED));
        }
        if (SWITCHES.contains(signal)) {
            return isSwitch ? Optional.of(meant) : Optional.empty();
        }
        boolean pedal = signal == Signal.CLUTCH_PEDAL && unit.isEmpty();
        if (pedal && isSwitch && numbers && highest == 1) {
            // 0 and 1 may be a switch or shares of the travel; both read the same.
            return Optional.of(meant.turnedTo(Signal.CLUTCH));
        }
        return numbers || !isSwitch || signal == Signal.LEVER || signal == Signal.CURRENT_GEAR
                ? Optional.of(meant)
                : Optional.empty();
    }
}
