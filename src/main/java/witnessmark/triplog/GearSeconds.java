package witnessmark.triplog;

import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.gear.TrackedRows;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/** Gathers tracked rows into seconds. */
final class GearSeconds implements TrackedRows {
    private static final long SECOND = 1_000_000;
    private static final int OTHER_CODES = -InHand.CANNOT_TELL;
    private static final double OTHER_CONFIDENCE = 0.95;
    private static final double OPINIONS_PER_ROW = 0.4;

    private final GearTable table;
    private final DoubleSupplier perKmh;
    private final Consumer<GearSecond> sink;
    private final int[] rowsInHand;
    private final double[] odds;
    private long start = Long.MIN_VALUE;
    private int rows;
    private double kmhSum;
    private int kmhRows;
    private double rpmSum;
    private int rpmRows;

    GearSeconds(GearTable table, DoubleSupplier perKmh, Consumer<GearSecond> sink) {
        this.table = table;
        this.perKmh = perKmh;
        this.sink = sink;
        this.rowsInHand = new int[table.gears().size() + OTHER_CODES];
        this.odds = new double[table.gears().size() + OTHER_CODES];
    }

    @Override
    public void rows(RowBlock block, int[] inHand, double[] scatter, int from, int to) {
        for (int i = from; i < to; i++) {
            if (block.isAfresh(i) || block.timeMicros(i) - start >= SECOND) {
                end();
                start = block.timeMicros(i);
            }
            int code = inHand[i] + OTHER_CODES;
            rows++;
            rowsInHand[code]++;
            double kmh = block.get(Signal.ROAD_SPEED, i);
            double rpm = block.get(Signal.ENGINE_SPEED, i);
            if (inHand[i] >= 0) {
                odds[code] += odds(inHand[i], rpm / (kmh * perKmh.getAsDouble()), scatter[i]);
            }
            kmhSum += Double.isNaN(kmh) ? 0 : kmh;
            kmhRows += Double.isNaN(kmh) ? 0 : 1;
            rpmSum += Double.isNaN(rpm) ? 0 : rpm;
            rpmRows += Double.isNaN(rpm) ? 0 : 1;
        }
    }

    private double odds(int gear, double ratio, double scatter) {
        double rival =
                Math.min(square(table.shorter(gear), ratio, scatter), square(table.taller(gear), ratio, scatter));
        return 0.5 * (rival - square(gear, ratio, scatter));
    }

    private double square(int gear, double ratio, double scatter) {
        if (gear < 0 || Double.isNaN(scatter)) {
            return 36;
        }
        double z = (ratio / table.gear(gear).ratio() - 1) / scatter;
        return Math.min(36, z * z);
    }

    @Override
    public void speedJump(long timeMicros, long line, double fromKmh, double toKmh, double seconds) {
        // Speeds that cannot be are already left out of the rows.
    }

    /** Hands on the second that is still open. */
    void end() {
        if (rows == 0) {
            return;
        }
        int most = 0;
        for (int i = 1; i < rowsInHand.length; i++) {
            most = rowsInHand[i] > rowsInHand[most] ? i : most;
        }
        int code = most - OTHER_CODES;
        double share = (double) rowsInHand[most] / rows;
        double sure = code >= 0 ? 1 / (1 + Math.exp(-OPINIONS_PER_ROW * odds[most])) : OTHER_CONFIDENCE;
        sink.accept(new GearSecond(
                start,
                InHand.word(table, code),
                code == InHand.CANNOT_TELL ? 0 : share * sure,
                kmhRows > 0 ? kmhSum / kmhRows : Double.NaN,
                rpmRows > 0 ? rpmSum / rpmRows : Double.NaN));
        clear();
    }

    private void clear() {
        Arrays.fill(rowsInHand, 0);
        Arrays.fill(odds, 0);
        rows = 0;
        kmhSum = 0;
        kmhRows = 0;
        rpmSum = 0;
        rpmRows = 0;
    }
}
