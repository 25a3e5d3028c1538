package witnessmark.interview;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import witnessmark.knowledge.AccessStep;

/** How the unit stands before anybody looks: what can still be tried, and what lies open. */
public enum UnitState {
    RUNS(Optional.empty()),
    STANDS(Optional.of(AccessStep.Use.DRIVES)),
    BENCH(Optional.of(AccessStep.Use.IN_TRUCK), "gearbox-out"),
    FRONT_APART(Optional.of(AccessStep.Use.IN_TRUCK), "front-apart", "oil-sample"),
    REAR_APART(Optional.of(AccessStep.Use.IN_TRUCK), "gearbox-out", "auxiliary-apart", "oil-sample"),
    ALL_APART(Optional.of(AccessStep.Use.IN_TRUCK), "front-apart", "auxiliary-apart", "oil-sample");

    private final Optional<AccessStep.Use> ended;
    private final List<String> open;

    UnitState(Optional<AccessStep.Use> ended, String... open) {
        this.ended = ended;
        this.open = List.of(open);
    }

    /** What the truck no longer does with this unit; empty where it does everything. */
    Optional<AccessStep.Use> ended() {
        return ended;
    }

    /** The access steps that lie open, with all on the way to them. */
    List<String> open() {
        return open;
    }

    String word() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    /** The states as they are chosen from. */
    static String[] words() {
        return Arrays.stream(values()).map(UnitState::word).toArray(String[]::new);
    }

    /** The state so written; empty if it is none, or nothing was said. */
    static Optional<UnitState> parse(String text) {
        return Arrays.stream(values()).filter(s -> s.word().equals(text)).findFirst();
    }
}
