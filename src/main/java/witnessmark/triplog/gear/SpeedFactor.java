package witnessmark.triplog.gear;

/**
 * The true road speed factor: how much faster the output shaft turns than road speed, nominal tyre and axle say. Worn
 * tyres turn faster, a wrong tyre entry shifts it either way. It is the factor under which the ratios seen in steady
 * driving gather best on the truck's gears.
 *
 * @param factor output speed per nominal output speed
 * @param rows steady rows it rests on
 * @param share how much of the steady driving lies on a gear with this factor, 0 to 1
 * @param ambiguous whether another factor, more than 2 % away, fits nearly as well
 * @param misfit whether factors farther away than tyres explain fit far better, but several of them do
 */
public record SpeedFactor(double factor, long rows, double share, boolean ambiguous, boolean misfit) {
    static final SpeedFactor NOMINAL = new SpeedFactor(1, 0, 0, false, false);

    /** Fewer steady rows than this do not move the factor from 1. */
    static final int ENOUGH_ROWS = 60;

    private static final double TYRES = 0.1;

    SpeedFactor misfitting() {
        return new SpeedFactor(factor, rows, share, ambiguous, true);
    }

    /** Whether it is farther from 1 than tyre wear and size explain. */
    public boolean isBeyondTyres() {
        return isKnown() && Math.abs(factor - 1) > TYRES;
    }

    /** Whether there is enough to go by and yet two factors fit nearly as well. */
    public boolean isAmbiguous() {
        return rows >= ENOUGH_ROWS && ambiguous;
    }

    public boolean isKnown() {
        return rows >= ENOUGH_ROWS && share >= 0.3 && !ambiguous;
    }
}
