package witnessmark.interview;

import java.util.List;

/** How far an interview has come. */
public enum Stage {
    TRUCK(),
    KILOMETRES(),
    FORWARD_RATIOS(),
    RANGE("air", "mechanical", "none"),
    SPLITTER("none", "high-only", "both"),
    COUNTERSHAFTS("twin", "single"),
    LINKAGE("direct", "remote"),
    UNIT_STATE(UnitState.words()),
    COMPLAINT(),
    ACCOUNT(),
    CHECKS();

    private final List<String> choices;

    Stage(String... choices) {
        this.choices = List.of(choices);
    }

    /** The words allowed, besides saying nothing; empty where any words are taken. */
    public List<String> choices() {
        return choices;
    }

    /** Whether the answer says how the gearbox is built. */
    public boolean isOfTheGearbox() {
        return compareTo(FORWARD_RATIOS) >= 0 && compareTo(LINKAGE) <= 0;
    }

    public Stage next() {
        return values()[Math.min(ordinal() + 1, CHECKS.ordinal())];
    }

    public Stage before() {
        return values()[Math.max(ordinal() - 1, 0)];
    }
}
