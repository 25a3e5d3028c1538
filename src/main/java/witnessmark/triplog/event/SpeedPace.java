package witnessmark.triplog.event;

import witnessmark.triplog.signal.RowBlock;
import witnessmark.triplog.signal.Signal;

/**
 * How often a new road speed comes, where that is more seldom than rows do: a satellite receiver tells its speed once a
 * second, and late. While the truck speeds up or slows down such a speed stands for several rows and then leaps; one that
 * is only rounded goes on by its smallest step.
 */
final class SpeedPace {
    private static final double DRIVEN_KMH = 10;
    /** A leap is more than this many of the smallest steps met. */
    private static final double STEPS = 1.5;

    private static final int STOOD_ROWS = 2;
    private static final double LONGEST_SECONDS = 3;
    private static final long ENOUGH = 30;
    private static final double MOSTLY = 0.5;

    private double before = Double.NaN;
    private double smallestStep = Double.POSITIVE_INFINITY;
    private int stoodRows;
    private double stoodSeconds;
    private long changes;
    private long leaps;
    private double leapSeconds;

    void over(RowBlock block, int from, int to) {
        double[] road = block.column(Signal.ROAD_SPEED);
        double[] shaft = block.column(Signal.OUTPUT_SHAFT_SPEED);
        double[] seconds = block.secondsBefore();
        double last = before;
        int rows = stoodRows;
        double stood = stoodSeconds;
        for (int i = from; i < to; i++) {
            double kmh = road[i];
            rows++;
            stood = seconds[i] == 0 && block.isAfresh(i) ? LONGEST_SECONDS : stood + seconds[i];
            if (kmh == last || Double.isNaN(kmh)) {
                continue;
            }
            if (!Double.isNaN(last) && !(shaft[i] > 0)) {
                changed(kmh, Math.abs(kmh - last), rows, stood);
            }
            last = kmh;
            rows = 0;
            stood = 0;
        }
        before = last;
        stoodRows = rows;
        stoodSeconds = stood;
    }

    private void changed(double kmh, double step, int rows, double stood) {
        smallestStep = step < smallestStep ? step : smallestStep;
        if (kmh < DRIVEN_KMH || stood >= LONGEST_SECONDS) {
            return;
        }
        changes++;
        if (rows >= STOOD_ROWS && step > STEPS * smallestStep) {
            leaps++;
            leapSeconds += stood;
        }
    }

    /** Seconds from one road speed to the next; 0 where it comes with the rows, or too little was driven to tell. */
    double seconds() {
        return changes >= ENOUGH && leaps > MOSTLY * changes ? leapSeconds / leaps : 0;
    }
}
