package witnessmark.gearbox.shift;

/** Why a range shift is not proper. */
public enum Reason {
    ENERGY_ABOVE_PROPER("the cone takes more energy than in the hardest proper shift"),
    SPEED_ABOVE_GOVERNED("the new gear turns the input faster than governed speed"),
    LEVER_HOME_FIRST("the lever was home before the cone was done, so the cone drags the front section too"),
    ROLLING_AGAINST("the truck rolls against the new gear; stop before moving the range"),
    ROLLING_BACK("the truck rolls back; common practice is to stop before moving the range"),
    CONE_CANNOT_FINISH("the cone's torque does not beat the drag, so the shift never finishes");

    private final String words;

    Reason(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
