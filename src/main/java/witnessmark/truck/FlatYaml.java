package witnessmark.truck;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;
import witnessmark.gearbox.ProfileFault;

/**
 * A YAML text as entries by dotted path, with where each stands.
 *
 * @param entries the node of each path, in the order of the text
 * @param marks where each path, a mapping's too, begins
 * @param faults what could not be read
 */
record FlatYaml(Map<String, Node> entries, Map<String, Mark> marks, List<ProfileFault> faults) {

    private static final int MOST_CHARACTERS = 100_000;
    private static final int MOST_LEVELS = 4;
    private static final int DEEPEST = 20;

    /** Reads a text; a mapping for which {@code whole} holds is kept as one entry. */
    static FlatYaml read(String label, String text, Predicate<String> whole) {
        FlatYaml flat = new FlatYaml(new LinkedHashMap<>(), new LinkedHashMap<>(), new ArrayList<>());
        try {
            if (isTooDeep(label, text)) {
                flat.faults.add(new ProfileFault("", "too many maps and lists inside each other", "write it flatter"));
                return flat;
            }
            Optional<Node> root = new Compose(settings(label, text)).composeString(text);
            if (root.isPresent() && root.get() instanceof MappingNode mapping) {
                flat.walk("", mapping, whole);
            } else {
                flat.faults.add(new ProfileFault("", "this is no truck profile", "begin it with 'truck: a-name'"));
            }
        } catch (MarkedYamlEngineException e) {
            e.getProblemMark().ifPresent(mark -> flat.marks.put("", mark));
            flat.faults.add(new ProfileFault("", "not readable as YAML: " + oneLine(e.getProblem()), "mend the spot"));
        } catch (YamlEngineException e) {
            flat.faults.add(new ProfileFault("", "not readable as YAML: " + oneLine(e.getMessage()), "mend the file"));
        }
        return flat;
    }

    /** Counted first, since composing goes as deep as the text does. */
    private static boolean isTooDeep(String label, String text) {
        LoadSettings settings = settings(label, text);
        ParserImpl events = new ParserImpl(settings, new StreamReader(settings, text));
        int depth = 0;
        while (events.hasNext()) {
            Event event = events.next();
            depth += event instanceof CollectionStartEvent ? 1 : event instanceof CollectionEndEvent ? -1 : 0;
            if (depth > DEEPEST) {
                return true;
            }
        }
        return false;
    }

    private static LoadSettings settings(String label, String text) {
        return LoadSettings.builder()
                .setLabel(label)
                // The library fails on a character of two halves at the edge of its buffer: the text fits in whole.
                .setBufferSize(text.length() + 1)
                .setCodePointLimit(MOST_CHARACTERS)
                .setMaxAliasesForCollections(1)
                .build();
    }

    private static String oneLine(String text) {
        return text.lines().findFirst().orElse("").strip();
    }

    private void walk(String path, MappingNode mapping, Predicate<String> whole) {
        mapping.getStartMark().ifPresent(mark -> marks.putIfAbsent(path, mark));
        for (NodeTuple tuple : mapping.getValue()) {
            String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
            String inner = path.isEmpty() ? key : path + "." + key;
            if (marks.containsKey(inner)) {
                faults.add(new ProfileFault(inner, "given twice", "keep one"));
                continue;
            }
            tuple.getKeyNode().getStartMark().ifPresent(mark -> marks.put(inner, mark));
            if (tuple.getValueNode() instanceof MappingNode deeper
                    && !whole.test(inner)
                    && levels(inner) < MOST_LEVELS) {
                walk(inner, deeper, whole);
            } else {
                tuple.getValueNode().getStartMark().ifPresent(mark -> marks.put(inner, mark));
                entries.put(inner, tuple.getValueNode());
            }
        }
    }

    private static long levels(String path) {
        return path.chars().filter(c -> c == '.').count() + 1;
    }
}
