package witnessmark.inference;

import java.util.Arrays;

/** Causes (vertices 0 to causes - 1) and open findings (the vertices after them), joined by the links between them. */
final class Graph {
    private final int causes;
    private final int[][] neighbours;
    private final double[][] strengths;

    /** Free causes and open findings with all links above 0; causes that are known stand alone. */
    Graph(Observed observed) {
        var network = observed.network;
        int[] open = observed.open();
        causes = network.causes();
        neighbours = new int[causes + open.length][];
        strengths = new double[neighbours.length][];
        Arrays.fill(neighbours, new int[0]);
        Arrays.fill(strengths, new double[0]);
        for (int k = 0; k < open.length; k++) {
            int[] linked = network.linkedCauses(open[k]);
            double[] strength = network.strengths(open[k]);
            for (int i = 0; i < linked.length; i++) {
                if (observed.isFree(linked[i]) && strength[i] > 0) {
                    join(linked[i], causes + k, strength[i]);
                    join(causes + k, linked[i], strength[i]);
                }
            }
        }
    }

    int size() {
        return neighbours.length;
    }

    boolean isCause(int vertex) {
        return vertex < causes;
    }

    int[] neighbours(int vertex) {
        return neighbours[vertex];
    }

    /** Strength of the links to {@link #neighbours}, in the same order. */
    double[] strengths(int vertex) {
        return strengths[vertex];
    }

    /** Whether no link joins the vertex to another. */
    boolean isAlone(int vertex) {
        return neighbours[vertex].length == 0;
    }

    /** The vertices joined to one, itself first, in the order in which they are reached; they are marked as seen. */
    int[] partOf(int vertex, boolean[] seen) {
        var reached = new int[size()];
        return Arrays.copyOf(reached, reach(vertex, seen, reached));
    }

    private int reach(int start, boolean[] seen, int[] reached) {
        int count = 1;
        reached[0] = start;
        seen[start] = true;
        for (int next = 0; next < count; next++) {
            for (int neighbour : neighbours[reached[next]]) {
                if (!seen[neighbour]) {
                    seen[neighbour] = true;
                    reached[count++] = neighbour;
                }
            }
        }
        return count;
    }

    private void join(int vertex, int neighbour, double strength) {
        int n = neighbours[vertex].length;
        neighbours[vertex] = Arrays.copyOf(neighbours[vertex], n + 1);
        neighbours[vertex][n] = neighbour;
        strengths[vertex] = Arrays.copyOf(strengths[vertex], n + 1);
        strengths[vertex][n] = strength;
    }
}
