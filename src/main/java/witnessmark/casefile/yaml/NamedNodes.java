package witnessmark.casefile.yaml;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import witnessmark.casefile.CheckedText;

/** A map whose keys are names chosen by the writer, such as the findings. */
final class NamedNodes {
    private NamedNodes() {}

    /**
     * The values by name, in order, none for an empty value; a name that stands twice is a fault that says both values.
     *
     * @param thing one part in words, such as finding
     * @param most how many parts there may be
     * @param told how a value is told in a message, empty to leave it out
     */
    static Map<String, NodeTuple> of(Node node, String thing, int most, Function<Node, String> told, FaultList faults) {
        Map<String, NodeTuple> named = new LinkedHashMap<>();
        if (Fields.isEmpty(node)) {
            return named;
        }
        if (!(node instanceof MappingNode mapping)) {
            faults.add(node, thing + "s are not a map of names and values", "write each as name: value");
            return named;
        }
        if (mapping.getValue().size() > most) {
            faults.add(
                    node, mapping.getValue().size() + " " + thing + "s are given", "keep it to " + most + " at most");
            return named;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                faults.add(tuple.getKeyNode(), "the name of the " + thing + " is not a single word", "write its id");
                continue;
            }
            NodeTuple earlier = named.putIfAbsent(key.getValue(), tuple);
            if (earlier != null) {
                faults.add(
                        key,
                        thing + " '" + CheckedText.shown(key.getValue()) + "' stands twice ("
                                + twice(earlier, tuple, told) + ")",
                        "keep one");
            }
        }
        return named;
    }

    private static String twice(NodeTuple earlier, NodeTuple here, Function<Node, String> told) {
        String one = told.apply(earlier.getValueNode());
        String two = told.apply(here.getValueNode());
        int line = FaultList.line(earlier.getKeyNode());
        return one.isEmpty() || two.isEmpty()
                ? "line " + line + " and here"
                : "line " + line + ": " + one + ", here: " + two;
    }
}
