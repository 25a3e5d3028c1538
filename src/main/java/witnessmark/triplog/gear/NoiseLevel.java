package witnessmark.triplog.gear;

import java.util.Arrays;
import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * How much engine and road speed scatter in this log, from the second differences of neighbouring rows: a steady or
 * evenly changing speed cancels out, noise does not. The median keeps shifts and dropouts out of it; the smallest step
 * between values stands in for noise where the log is rounded.
 *
 * @param engineRpm standard deviation of the engine speed
 * @param roadKmh standard deviation of the road speed
 */
record NoiseLevel(double engineRpm, double roadKmh) {
    private static final double LEAST_RPM = 4;
    private static final double LEAST_KMH = 0.05;
    private static final int ENOUGH = 100;
    /** Second differences of white noise have sqrt(6) times its deviation; a median is 0.6745 deviations. */
    private static final double MEDIAN_TO_DEVIATION = 1 / (0.6745 * Math.sqrt(6));

    static final NoiseLevel USUAL = new NoiseLevel(10, 0.25);

    /** From the moving rows of the block, or {@code before} if there are too few. */
    static NoiseLevel of(RowBlock block, NoiseLevel before) {
        double engine = deviation(block, block.column(Signal.ENGINE_SPEED), LEAST_RPM);
        double road = deviation(block, block.column(Signal.ROAD_SPEED), LEAST_KMH);
        return new NoiseLevel(
                Double.isNaN(engine) ? before.engineRpm : Math.min(engine, 60),
                Double.isNaN(road) ? before.roadKmh : Math.min(road, 2));
    }

    private static double deviation(RowBlock block, double[] values, double least) {
        double[] differences = new double[block.size()];
        double[] road = block.column(Signal.ROAD_SPEED);
        double smallestStep = Double.POSITIVE_INFINITY;
        int count = 0;
        for (int i = 2; i < block.size(); i++) {
            double before = block.secondsBefore(i - 1);
            double after = block.secondsBefore(i);
            double step = Math.abs(values[i] - values[i - 1]);
            if (step > 1e-9 && step < smallestStep) {
                smallestStep = step;
            }
            boolean even = before > 0 && Math.abs(after - before) < 0.2 * before && before < 1.5;
            double difference = Math.abs(values[i] - 2 * values[i - 1] + values[i - 2]);
            if (even && !(road[i] < 5) && difference >= 0) {
                differences[count++] = difference;
            }
        }
        if (count < ENOUGH) {
            return Double.NaN;
        }
        Arrays.sort(differences, 0, count);
        double scatter = differences[count / 2] * MEDIAN_TO_DEVIATION;
        double rounding = smallestStep / Math.sqrt(12);
        return Math.max(least, Math.max(scatter, rounding));
    }
}
