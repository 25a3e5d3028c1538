package witnessmark.gearbox.shift;

/** Why a range shift is not proper. */
public enum Reason {
    ENERGY_ABOVE_PROPER("the cone takes more energy than in the hardest proper shift"),
    SPEED_ABOVE_GOVERNED("the new gear turns the input faster than governed speed"),
    /** Common practice: an engine that labours hammers the gears. */
    BELOW_IDLE("the new gear pulls the engine below idle, where it labours and hammers the gears"),
    LEVER_HOME_FIRST("the lever was home before the cone was done, so the cone drags the front section too"),
    ROLLING_AGAINST(
            "the truck rolls against the new gear: with the lever in neutral the cone works as it does going forward, but"
                    + " once the lever goes home the road turns the input backwards; stop before moving the range"),
    SPEEDS_ADD(
            "the lever was home and the input turning while the truck rolled against the gear: at the cone the two speeds"
                    + " add"),
    ROLLING_BACK(
            "the truck rolls back: to the cone it is as going forward, but common practice is to stop before moving the"
                    + " range"),
    CONE_CANNOT_FINISH("the cone's torque does not beat the drag, so the shift never finishes");

    private final String words;

    Reason(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
