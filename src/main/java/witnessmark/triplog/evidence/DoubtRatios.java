package witnessmark.triplog.evidence;

import java.util.Locale;
import java.util.Optional;
import witnessmark.triplog.gear.SpeedFactor;

/** Whether a log may have been read with the numbers of another gearbox, axle or tyre. */
public final class DoubtRatios {
    /** Tyre wear and size explain so much; beyond it another box may fit by chance (common practice, no source). */
    private static final double MOST_TYRE_SHARE = 0.05;

    private DoubtRatios() {}

    /** Why the log may be of another truck, in one sentence; empty where its ratios give no reason. */
    public static Optional<String> of(String name, SpeedFactor factor) {
        double away = Math.abs(factor.factor() - 1);
        return factor.isKnown() && away > MOST_TYRE_SHARE
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the ratios of '%s' fit only if road speed is %.0f %% off: another gearbox, axle or tyre",
                        name,
                        100 * away))
                : Optional.empty();
    }
}
