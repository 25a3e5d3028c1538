package witnessmark.inference;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * An order in which the vertices of a core leave the table, found greedily: next goes whichever leaves the smallest table
 * behind. The result depends on the first vertex, so several are tried, as long as trying costs less than sweeping.
 */
final class SweepOrder {
    private final int[] core;
    private final int[][] neighbours;
    private final boolean[] inTable;
    private final boolean[] gone;
    private final int[] newcomers;
    private final int[] order;
    private int[] best = {};
    private double bestStates = Double.POSITIVE_INFINITY;

    /** The order for the vertices of {@code core}, which may be empty of links but is joined. */
    SweepOrder(Graph graph, int[] core) {
        this.core = core;
        int n = core.length;
        var local = new int[graph.size()];
        Arrays.fill(local, -1);
        for (int i = 0; i < n; i++) {
            local[core[i]] = i;
        }
        neighbours = new int[n][];
        for (int i = 0; i < n; i++) {
            neighbours[i] = Arrays.stream(graph.neighbours(core[i]))
                    .map(v -> local[v])
                    .filter(v -> v >= 0)
                    .toArray();
        }
        inTable = new boolean[n];
        gone = new boolean[n];
        newcomers = new int[n];
        order = new int[n];
        search();
    }

    /** The vertices in the order in which they leave. */
    int[] vertices() {
        return Arrays.stream(best).map(i -> core[i]).toArray();
    }

    /** Table entries that the order needs, summed over all tables. */
    double states() {
        return bestStates;
    }

    private void search() {
        int[] starts = IntStream.range(0, core.length)
                .boxed()
                .sorted(Comparator.comparingInt(i -> neighbours[i].length))
                .mapToInt(Integer::intValue)
                .toArray();
        double spent = 0;
        for (int start : starts) {
            double states = tryFrom(start);
            if (states < bestStates) {
                bestStates = states;
                best = order.clone();
            }
            spent += (double) core.length * core.length;
            if (spent > 4 * bestStates) {
                return;
            }
        }
    }

    private double tryFrom(int start) {
        Arrays.fill(inTable, false);
        Arrays.fill(gone, false);
        for (int i = 0; i < core.length; i++) {
            newcomers[i] = neighbours[i].length;
        }
        int width = 0;
        double states = 0;
        int next = start;
        for (int step = 0; step < core.length; step++) {
            int peak = width + newcomers[next] + (inTable[next] ? 0 : 1);
            // Every vertex that enters doubles the table: 2^(width+1) + ... + 2^peak entries.
            states += Math.scalb(2.0, peak) - Math.scalb(2.0, width);
            if (states >= bestStates) {
                return Double.POSITIVE_INFINITY;
            }
            take(next);
            order[step] = next;
            width = peak - 1;
            next = cheapest();
        }
        return states;
    }

    private void take(int vertex) {
        if (!inTable[vertex]) {
            enter(vertex);
        }
        for (int neighbour : neighbours[vertex]) {
            if (!gone[neighbour] && !inTable[neighbour]) {
                enter(neighbour);
            }
        }
        inTable[vertex] = false;
        gone[vertex] = true;
    }

    private void enter(int vertex) {
        inTable[vertex] = true;
        for (int neighbour : neighbours[vertex]) {
            newcomers[neighbour]--;
        }
    }

    private int cheapest() {
        int cheapest = -1;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < core.length; i++) {
            if (!gone[i]) {
                int growth = 2 * newcomers[i] + (inTable[i] ? 1 : 2);
                if (growth < least) {
                    least = growth;
                    cheapest = i;
                }
            }
        }
        return cheapest;
    }
}
