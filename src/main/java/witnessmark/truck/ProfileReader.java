package witnessmark.truck;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.ProfileFault;
import witnessmark.gearbox.ProfileRefused;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;

/** Fills a draft from one YAML text and says where in the text each fault stands. */
final class ProfileReader {

    private static final String RATIOS = "gearbox.main-ratios";
    private static final String SPLITTER = "gearbox.splitter";
    private static final String SIZE = "tyre.size";
    private static final String CURVE = "engine.torque-curve";
    private static final String CURVE_US = "engine.torque-curve-lbft";

    private record Written(Parameter parameter, Unit unit) {}

    private static final Map<String, Written> PARAMETERS = parameters();

    private final String label;
    private final Map<String, Mark> marks = new LinkedHashMap<>();
    private final List<ProfileFault> faults = new ArrayList<>();

    ProfileReader(String label) {
        this.label = label;
    }

    private static Map<String, Written> parameters() {
        Map<String, Written> byKey = new LinkedHashMap<>();
        for (Parameter parameter : Parameter.values()) {
            parameter.writtenIn().forEach(unit -> byKey.put(parameter.key(unit), new Written(parameter, unit)));
        }
        return byKey;
    }

    TruckProfile read(String text) {
        FlatYaml yaml = FlatYaml.read(label, text, path -> path.equals(CURVE) || path.equals(CURVE_US));
        marks.putAll(yaml.marks());
        faults.addAll(yaml.faults());
        if (yaml.entries().isEmpty() && !faults.isEmpty()) {
            throw new ProfileRefused(located(faults));
        }
        Map<String, Node> entries = new LinkedHashMap<>(yaml.entries());
        TruckDraft draft = names(entries);
        ratios(entries, draft);
        splitter(entries, draft);
        tyreSize(entries, draft);
        curve(entries, draft);
        entries.forEach((path, node) -> parameter(path, node, draft));
        List<ProfileFault> all = new ArrayList<>(faults);
        draft.faults().stream().filter(fault -> !alreadyTold(fault.where())).forEach(all::add);
        if (!all.isEmpty()) {
            throw new ProfileRefused(located(all));
        }
        return draft.build();
    }

    /** An entry that could not be read is not also called missing. */
    private boolean alreadyTold(String where) {
        return faults.stream()
                .map(ProfileFault::where)
                .anyMatch(told -> !told.isEmpty() && (told.startsWith(where) || where.startsWith(told)));
    }

    private List<ProfileFault> located(List<ProfileFault> plain) {
        return plain.stream()
                .map(fault -> new ProfileFault(
                        (place(fault.where()) + " " + fault.where()).strip(), fault.what(), fault.mend()))
                .toList();
    }

    private String place(String where) {
        String path = where;
        while (!path.isEmpty() && !marks.containsKey(path)) {
            path = path.substring(0, Math.max(0, Math.max(path.lastIndexOf('.'), path.lastIndexOf('['))));
        }
        Mark mark = marks.get(path);
        return mark == null ? label : label + ":" + (mark.getLine() + 1) + ":" + (mark.getColumn() + 1);
    }

    private TruckDraft names(Map<String, Node> entries) {
        Node truck = entries.remove("truck");
        Node title = entries.remove("title");
        if (truck == null) {
            faults.add(new ProfileFault(
                    "truck", "missing", "give the truck a name in lower-case words joined by hyphens"));
        }
        TruckDraft draft = TruckDraft.named(truck == null ? "unnamed" : text("truck", truck));
        return title == null ? draft : draft.title(text("title", title));
    }

    private String text(String path, Node node) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue();
        }
        faults.add(new ProfileFault(path, "not a plain value", "give one word or number"));
        return "";
    }

    private void ratios(Map<String, Node> entries, TruckDraft draft) {
        Node node = entries.remove(RATIOS);
        if (node == null) {
            return;
        }
        if (!(node instanceof SequenceNode sequence)) {
            faults.add(new ProfileFault(RATIOS, "not a list", "write [2.74, 1.96, 1.40, 1.00], highest first"));
            return;
        }
        List<Double> ratios = new ArrayList<>();
        for (int i = 0; i < sequence.getValue().size(); i++) {
            String path = RATIOS + "[" + (i + 1) + "]";
            Node ratio = sequence.getValue().get(i);
            ratio.getStartMark().ifPresent(mark -> marks.put(path, mark));
            // The place is kept, so that the ratios around an unreadable one are still compared rightly.
            ratios.add(number(path, ratio).orElse(Double.NaN));
        }
        draft.mainRatios(ratios);
    }

    private void splitter(Map<String, Node> entries, TruckDraft draft) {
        Node ratio = entries.remove(SPLITTER + ".ratio");
        Node splits = entries.remove(SPLITTER + ".splits");
        if (ratio == null && splits == null) {
            return;
        }
        if (ratio == null || splits == null) {
            faults.add(new ProfileFault(
                    SPLITTER, "only half of it is given", "write { ratio: 0.85, splits: high-only } or splits: both"));
            return;
        }
        String which = text(SPLITTER + ".splits", splits);
        if (!which.equals("both") && !which.equals("high-only")) {
            faults.add(
                    new ProfileFault(SPLITTER + ".splits", "'" + which + "' is not known", "give high-only or both"));
        }
        number(SPLITTER + ".ratio", ratio).ifPresent(value -> draft.splitter(value, which.equals("both")));
    }

    private void tyreSize(Map<String, Node> entries, TruckDraft draft) {
        Node size = entries.remove(SIZE);
        if (size != null) {
            draft.tyreSize(text(SIZE, size));
        }
    }

    private void curve(Map<String, Node> entries, TruckDraft draft) {
        Node metric = entries.remove(CURVE);
        Node customary = entries.remove(CURVE_US);
        if (metric != null && customary != null) {
            faults.add(new ProfileFault(CURVE_US, "the curve is given twice", "keep it in one unit"));
        } else if (metric != null) {
            draft.torqueCurve(points(CURVE, metric, Unit.NEWTON_METRE));
        } else if (customary != null) {
            draft.torqueCurve(points(CURVE_US, customary, Unit.POUND_FOOT));
            marks.put(CURVE, marks.get(CURVE_US));
        }
    }

    private Map<Double, Double> points(String path, Node node, Unit unit) {
        Map<Double, Double> points = new LinkedHashMap<>();
        if (!(node instanceof MappingNode mapping)) {
            faults.add(
                    new ProfileFault(path, "not a curve", "write { 1000: 2000, 1500: 1900 }, torque by engine speed"));
            return points;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            OptionalDouble rpm = number(path, tuple.getKeyNode());
            OptionalDouble torque = number(path, tuple.getValueNode());
            if (rpm.isPresent()
                    && torque.isPresent()
                    && points.put(rpm.getAsDouble(), unit.convert(torque.getAsDouble(), Unit.NEWTON_METRE)) != null) {
                faults.add(new ProfileFault(path, "one speed is given twice", "keep one"));
            }
        }
        return points;
    }

    private void parameter(String path, Node node, TruckDraft draft) {
        Written written = PARAMETERS.get(path);
        if (written == null) {
            String unknown = unknown(path);
            ProfileFault fault =
                    new ProfileFault(unknown, "not an entry of a truck profile", "use one of " + neighbours(unknown));
            if (!faults.contains(fault)) {
                faults.add(fault);
            }
            return;
        }
        Parameter parameter = written.parameter();
        for (Unit other : parameter.writtenIn()) {
            if (other != written.unit()
                    && marks.containsKey(parameter.key(other))
                    && written.unit() != parameter.unit()) {
                faults.add(new ProfileFault(path, "given twice, also as " + parameter.key(other), "keep one unit"));
            }
        }
        marks.putIfAbsent(parameter.key(), marks.get(path));
        number(path, node).ifPresent(value -> draft.set(parameter, value, written.unit()));
    }

    /** The part of the path that no entry begins with, as far up as it goes. */
    private static String unknown(String path) {
        String start = path;
        while (start.contains(".")
                && known(start.substring(0, start.lastIndexOf('.') + 1)).isEmpty()) {
            start = start.substring(0, start.lastIndexOf('.'));
        }
        return start;
    }

    private static String neighbours(String path) {
        return String.join(", ", known(path.substring(0, path.lastIndexOf('.') + 1)));
    }

    /** The entries of a section, or the sections where it is empty. */
    private static Set<String> known(String section) {
        Stream<String> plain = Stream.of("truck", "title", RATIOS, SPLITTER, SIZE, CURVE, CURVE_US);
        return Stream.concat(plain, PARAMETERS.keySet().stream())
                .filter(key -> key.startsWith(section))
                .map(key -> section.isEmpty() ? key.replaceFirst("\\..*", "") : key)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private OptionalDouble number(String path, Node node) {
        String text = node instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
        if (text.matches("[+-]?\\d{1,12}(\\.\\d{0,20})?([eE][+-]?\\d{1,2})?")) {
            return OptionalDouble.of(Double.parseDouble(text));
        }
        String shown = text.length() > 40 ? text.substring(0, 40) + "..." : text;
        faults.add(
                new ProfileFault(path, "'" + shown + "' is not a number", "write it with a decimal point and no unit"));
        return OptionalDouble.empty();
    }
}
