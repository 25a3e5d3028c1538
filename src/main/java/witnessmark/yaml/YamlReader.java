package witnessmark.yaml;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Turns bytes into a tree of {@link YamlNode}s whose places are known; nothing is instantiated from tags. */
public final class YamlReader {
    private static final int MOST_NODES = 500_000;
    private static final int DEEPEST = 50;

    private final int mostBytes;

    /** @param mostBytes inputs larger than this are refused unread */
    public YamlReader(int mostBytes) {
        this.mostBytes = mostBytes;
    }

    /** The document's root; empty if it could not be read at all, the reason then stands in {@code faults}. */
    public Optional<YamlNode> read(String file, byte[] content, Faults faults) {
        if (content.length > mostBytes) {
            faults.add(new Fault(
                    file,
                    0,
                    0,
                    "has " + content.length + " bytes",
                    "at most " + mostBytes + " are read; split it or take out what does not belong"));
            return Optional.empty();
        }
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setMaxAliasesForCollections(20)
                .setCodePointLimit(mostBytes)
                .setAllowDuplicateKeys(true)
                .build();
        try {
            Optional<Node> root = new Compose(settings).composeInputStream(new ByteArrayInputStream(content));
            if (root.isEmpty()) {
                faults.add(new Fault(file, 0, 0, "is empty", "write the document or give another file"));
            }
            int[] budget = {MOST_NODES};
            return root.map(node -> new YamlNode(file, tree(node, 0, budget), faults, 0));
        } catch (MarkedYamlEngineException e) {
            Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
            faults.add(new Fault(
                    file,
                    mark.map(m -> m.getLine() + 1).orElse(0),
                    mark.map(m -> m.getColumn() + 1).orElse(0),
                    "is not well-formed YAML: " + oneLine(e.getProblem()),
                    "mend the line (indentation, quotes, colons)"));
        } catch (YamlEngineException | StackOverflowError e) {
            faults.add(new Fault(
                    file, 0, 0, "cannot be read as YAML: " + oneLine(e.getMessage()), "mend or replace the file"));
        }
        return Optional.empty();
    }

    /** The tree of a parser's node. An alias repeats what it stands for, within the budget of nodes. */
    private static Tree tree(Node node, int depth, int[] budget) {
        if (--budget[0] < 0 || depth > DEEPEST) {
            throw new YamlEngineException("more than " + MOST_NODES + " values, or nested deeper than " + DEEPEST);
        }
        int line = node.getStartMark().map(m -> m.getLine() + 1).orElse(0);
        int column = node.getStartMark().map(m -> m.getColumn() + 1).orElse(0);
        if (node instanceof ScalarNode scalar) {
            return new Tree.Text(scalar.getValue(), line, column);
        }
        if (node instanceof SequenceNode list) {
            List<Tree> items = new ArrayList<>();
            list.getValue().forEach(item -> items.add(tree(item, depth + 1, budget)));
            return new Tree.Items(items, line, column);
        }
        List<Tree.Entry> entries = new ArrayList<>();
        ((MappingNode) node)
                .getValue()
                .forEach(e -> entries.add(new Tree.Entry(
                        tree(e.getKeyNode(), depth + 1, budget), tree(e.getValueNode(), depth + 1, budget))));
        return new Tree.Entries(entries, line, column);
    }

    private static String oneLine(String text) {
        String plain = text == null
                ? "nested too deep"
                : text.replaceAll("\\p{Cntrl}+", " ").strip();
        return plain.length() > 160 ? plain.substring(0, 160) + "…" : plain;
    }
}
