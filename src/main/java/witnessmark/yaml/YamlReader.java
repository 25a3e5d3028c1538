package witnessmark.yaml;

import java.io.ByteArrayInputStream;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** Turns bytes into a tree of {@link YamlNode}s whose places are known; nothing is instantiated from tags. */
public final class YamlReader {
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
            return root.map(node -> new YamlNode(file, node, faults, 0));
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

    private static String oneLine(String text) {
        String plain = text == null
                ? "nested too deep"
                : text.replaceAll("\\p{Cntrl}+", " ").strip();
        return plain.length() > 160 ? plain.substring(0, 160) + "…" : plain;
    }
}
