package witnessmark.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Writes the steps for one part of the graph: leaves into their neighbours, then the core in its sweep order. */
final class PartSteps {
    private final Graph graph;
    private final int[] vertices;
    private final List<Step> steps = new ArrayList<>();
    private final boolean[] done;
    private final List<Integer> inTable = new ArrayList<>();
    /** The empty table, with the weight 1, stands at 0. */
    private int tableAt = 0;

    private int tape = 1;
    private int widestTable = 1;

    /**
     * @throws TooDense if the tables would need more entries than allowed
     */
    PartSteps(Graph graph, int[] vertices, long statesAllowed) {
        this.graph = graph;
        this.vertices = vertices;
        done = new boolean[graph.size()];
        sumLeavesIn();
        int[] core = Arrays.stream(vertices).filter(v -> !done[v]).toArray();
        var order = new SweepOrder(graph, core);
        if (order.states() > statesAllowed) {
            throw new TooDense(order.states(), statesAllowed, "too many findings share causes");
        }
        for (int v : order.vertices()) {
            sweep(v);
        }
    }

    Plan.Part part() {
        int[] causes = IntStream.of(vertices).filter(graph::isCause).sorted().toArray();
        return new Plan.Part(causes, vertices, steps.toArray(Step[]::new), tableAt);
    }

    int tape() {
        return tape;
    }

    int widestTable() {
        return widestTable;
    }

    private void sumLeavesIn() {
        var degree = new int[graph.size()];
        var leaves = new ArrayList<Integer>();
        for (int v : vertices) {
            degree[v] = graph.neighbours(v).length;
            if (degree[v] == 1) {
                leaves.add(v);
            }
        }
        for (int next = 0; next < leaves.size(); next++) {
            int leaf = leaves.get(next);
            if (degree[leaf] == 1) {
                int left = sumIn(leaf);
                degree[leaf]--;
                if (--degree[left] == 1) {
                    leaves.add(left);
                }
            }
        }
    }

    private int sumIn(int leaf) {
        int i = 0;
        while (done[graph.neighbours(leaf)[i]]) {
            i++;
        }
        int onto = graph.neighbours(leaf)[i];
        steps.add(new Step.SumIn(leaf, onto, tape, graph.isCause(leaf), graph.strengths(leaf)[i]));
        tape += 2;
        done[leaf] = true;
        return onto;
    }

    private void sweep(int vertex) {
        if (!inTable.contains(vertex)) {
            introduce(vertex);
        }
        int[] neighbours = graph.neighbours(vertex);
        for (int i = 0; i < neighbours.length; i++) {
            if (inTable.contains(neighbours[i])) {
                activate(vertex, neighbours[i], graph.strengths(vertex)[i]);
            }
        }
        for (int i = 0; i < neighbours.length; i++) {
            if (!done[neighbours[i]] && !inTable.contains(neighbours[i])) {
                introduce(neighbours[i]);
                activate(vertex, neighbours[i], graph.strengths(vertex)[i]);
            }
        }
        steps.add(new Step.Forget(vertex, tableAt, 1 << inTable.size(), inTable.indexOf(vertex)));
        inTable.remove((Integer) vertex);
        done[vertex] = true;
    }

    private void introduce(int vertex) {
        int size = 1 << inTable.size();
        int to = tape;
        steps.add(new Step.Introduce(vertex, tableAt, to, size));
        inTable.add(vertex);
        tableAt = to;
        tape = to + 2 * size;
        widestTable = Math.max(widestTable, 2 * size);
    }

    private void activate(int vertex, int neighbour, double strength) {
        int cause = graph.isCause(vertex) ? vertex : neighbour;
        int finding = graph.isCause(vertex) ? neighbour : vertex;
        steps.add(new Step.Activate(
                tableAt, 1 << inTable.size(), inTable.indexOf(cause), inTable.indexOf(finding), strength));
    }
}
