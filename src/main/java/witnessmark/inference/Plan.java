package witnessmark.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * In which order causes and open findings enter and leave the tables, for one set of open findings. It holds no numbers
 * of the case but link strengths, so it serves every variation of the other evidence.
 *
 * <p>Causes and open findings are the vertices of a graph, links its edges. Parts that are not joined are apart. Within a
 * part, vertices with a single link are first summed into their neighbour, one after another; what is left is swept in an
 * order that keeps few vertices in the table at a time. The table has one bit for each vertex in it, cause or finding:
 * whichever are fewer end up staying.
 */
final class Plan {
    /**
     * A set of vertices that no link joins to the others.
     *
     * @param causes its causes, ascending
     * @param vertices its vertices, causes included
     * @param result where on the tape the total stands after the steps
     */
    record Part(int[] causes, int[] vertices, Step[] steps, int result) {}

    /** Of a vertex by itself: on the tape, behind the empty table, and in its own. */
    private static final int TAPE_ALONE = 3;

    private static final int TABLE_ALONE = 2;

    private static final int[] NO_CAUSES = {};

    private final Part[] parts;
    private final int[] partOf;
    private final int[] open;
    private final Observed.State[] states;
    private final int tape;
    private final int widestTable;

    private Plan(Observed observed, Graph graph, List<Part> parts, int tape, int widestTable) {
        this.parts = parts.toArray(Part[]::new);
        this.open = observed.open();
        this.states = observed.states();
        this.tape = tape;
        this.widestTable = widestTable;
        partOf = new int[graph.size()];
        for (int p = 0; p < this.parts.length; p++) {
            for (int v : this.parts[p].vertices()) {
                partOf[v] = p;
            }
        }
    }

    /**
     * A plan for the open findings of the evidence.
     *
     * @throws TooDense if the best order found needs more table entries than allowed
     */
    static Plan of(Observed observed, long statesAllowed) {
        var graph = new Graph(observed);
        var parts = new ArrayList<Part>();
        var seen = new boolean[graph.size()];
        int tape = TAPE_ALONE;
        int widestTable = TABLE_ALONE;
        for (int v = 0; v < seen.length; v++) {
            if (graph.isAlone(v)) {
                parts.add(graph.isCause(v) ? observed.network.alone(v) : alone(v, NO_CAUSES));
            } else if (!seen[v]) {
                var steps = new PartSteps(graph, graph.partOf(v, seen), statesAllowed);
                parts.add(steps.part());
                tape = Math.max(tape, steps.tape());
                widestTable = Math.max(widestTable, steps.widestTable());
            }
        }
        return new Plan(observed, graph, parts, tape, widestTable);
    }

    /** A cause that no link joins to an open finding: most of them, in most cases. */
    static Part alone(int cause) {
        return alone(cause, new int[] {cause});
    }

    private static Part alone(int vertex, int[] causes) {
        Step[] steps = {new Step.Introduce(vertex, 0, 1, 1), new Step.Forget(vertex, 1, TABLE_ALONE, 0)};
        return new Part(causes, new int[] {vertex}, steps, 1);
    }

    /** Whether the plan was made for the same open findings and free causes. */
    boolean suits(Observed observed) {
        return Arrays.equals(open, observed.open()) && Arrays.equals(states, observed.states());
    }

    Part[] parts() {
        return parts;
    }

    /** Index of the part in which a vertex is; a cause is the vertex of its own index. */
    int partOf(int vertex) {
        return partOf[vertex];
    }

    int vertices() {
        return partOf.length;
    }

    int tape() {
        return tape;
    }

    int widestTable() {
        return widestTable;
    }
}
