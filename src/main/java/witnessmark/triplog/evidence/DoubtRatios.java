package witnessmark.triplog.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.gear.SpeedFactor;

/** Whether a log may have been read with the numbers of another gearbox, axle or tyre. */
public final class DoubtRatios {
    /** Tyre wear and size explain so much; beyond it another box may fit by chance (common practice, no source). */
    private static final double MOST_TYRE_SHARE = 0.05;

    /** So long in hand a lever position was driven in; common practice, no source, as the two figures below. */
    private static final double DRIVEN_SECONDS = 20;

    /** Whoever drives in a split passes the whole ratio before it for at least this share of the split's time. */
    private static final double PASSED_SHARE = 0.1;

    /** In so many positions: one or two last splits may be cruised in for hours. */
    private static final int SEVERAL = 3;

    /** Share of the driving in which a gear must fit; of 80 simulated logs of the right truck the lowest had 0.85. */
    private static final double LEAST_SHARE = 0.8;

    private static final double LEAST_TELLING_HOURS = 1.0 / 60;

    private DoubtRatios() {}

    /**
     * The same of what one log held: it is asked before logs are added up, for among fitting logs one that does not fit
     * hardly shows.
     */
    public static Optional<String> misfit(String name, LogRecord record) {
        return record.tellingHours() >= LEAST_TELLING_HOURS && record.gearShare() < LEAST_SHARE
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the ratios of this truck fit in only %.0f %% of the driving time of '%s': another truck, axle"
                                + " or tyre, or a speed signal that is wrong",
                        100 * record.gearShare(),
                        name))
                : Optional.empty();
    }

    /**
     * Why the log may be of another truck, one sentence each; empty where its ratios give no reason.
     *
     * @param name of the log
     * @param factor that its road speed needs to fit the table
     * @param hoursInHand hours by the names of the table's gears, as the log was read with it
     */
    public static List<String> of(String name, SpeedFactor factor, GearTable table, Map<String, Double> hoursInHand) {
        List<String> doubts = new ArrayList<>();
        tyre(name, factor).ifPresent(doubts::add);
        splitsAlone(name, table, hoursInHand).ifPresent(doubts::add);
        return doubts;
    }

    private static Optional<String> tyre(String name, SpeedFactor factor) {
        double away = Math.abs(factor.factor() - 1);
        return factor.isKnown() && away > MOST_TYRE_SHARE
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "the ratios of '%s' fit only if road speed is %.0f %% off: another gearbox, axle or tyre",
                        name,
                        100 * away))
                : Optional.empty();
    }

    /** A finely stepped box fits nearly any other by its splits; its whole ratios, on the way to them, then hardly appear. */
    private static Optional<String> splitsAlone(String name, GearTable table, Map<String, Double> hoursInHand) {
        int alone = 0;
        int whole = 0;
        for (KnobGear split : table.gears()) {
            OptionalInt before = wholeOf(split, table);
            if (before.isEmpty()) {
                continue;
            }
            double inSplit = 3600 * hoursInHand.getOrDefault(split.name(), 0.0);
            double inWhole = 3600
                    * hoursInHand.getOrDefault(table.gear(before.getAsInt()).name(), 0.0);
            if (inSplit + inWhole >= DRIVEN_SECONDS) {
                alone += inWhole < PASSED_SHARE * inSplit ? 1 : 0;
                whole += inWhole < PASSED_SHARE * inSplit ? 0 : 1;
            }
        }
        return alone >= SEVERAL && alone > whole
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "in '%s' %d of %d lever positions were driven in by their split alone, the whole ratio hardly"
                                + " appears: another gearbox that happens to fit",
                        name,
                        alone,
                        alone + whole))
                : Optional.empty();
    }

    /** The gear of the same lever position and range without the split; empty for a gear that is no split. */
    private static OptionalInt wholeOf(KnobGear split, GearTable table) {
        boolean isSplit =
                split.splitter() == KnobGear.Splitter.OVERDRIVE || split.splitter() == KnobGear.Splitter.UNDERDRIVE;
        if (!isSplit || split.isReverse()) {
            return OptionalInt.empty();
        }
        return IntStream.range(0, table.gears().size())
                .filter(i -> table.gear(i).splitter() == KnobGear.Splitter.DIRECT
                        && table.gear(i).lever() == split.lever()
                        && table.gear(i).range() == split.range())
                .findFirst();
    }
}
