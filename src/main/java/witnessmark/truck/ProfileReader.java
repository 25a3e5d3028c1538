package witnessmark.truck;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.Unit;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Fills a draft from one YAML document and notes each fault where it stands. */
final class ProfileReader {

    private static final String TITLE_IN = "title-";

    /** The languages besides the first in which pages are written. */
    private static final List<String> TITLED_IN = List.of("es");

    private static final String RATIOS = "gearbox.main-ratios";
    private static final String SPLITTER = "gearbox.splitter";
    private static final String SIZE = "tyre.size";
    private static final String CURVE = "engine.torque-curve";
    private static final String CURVE_US = "engine.torque-curve-lbft";

    private record Written(Parameter parameter, Unit unit) {}

    private static final Map<String, Written> PARAMETERS = parameters();

    private final Entries written;
    private final Set<String> told = new HashSet<>();

    ProfileReader(YamlMap root) {
        this.written = new Entries(root, path -> path.equals(CURVE) || path.equals(CURVE_US));
    }

    private static Map<String, Written> parameters() {
        Map<String, Written> byKey = new LinkedHashMap<>();
        for (Parameter parameter : Parameter.values()) {
            parameter.writtenIn().forEach(unit -> byKey.put(parameter.key(unit), new Written(parameter, unit)));
        }
        return byKey;
    }

    /** What is written as a draft; what is at fault in it, or in the draft as a whole, is noted at its place. */
    TruckDraft draft() {
        TruckDraft draft = names();
        ratios(draft);
        splitter(draft);
        tyreSize(draft);
        curve(draft);
        written.rest().forEach((path, node) -> parameter(path, node, draft));
        draft.faults().stream()
                .filter(fault -> !isTold(fault.where()))
                .forEach(fault -> fault(fault.where(), fault.what(), fault.mend()));
        return draft;
    }

    private void fault(String path, String what, String mend) {
        told.add(path);
        written.nearest(path).fault(path + ": " + what, mend);
    }

    /** An entry that could not be read is not also called missing. */
    private boolean isTold(String where) {
        return told.stream().anyMatch(path -> path.startsWith(where) || where.startsWith(path));
    }

    private TruckDraft names() {
        Optional<YamlNode> truck = written.take("truck");
        if (truck.isEmpty()) {
            fault("truck", "missing", "give the truck a name in lower-case words joined by hyphens");
        }
        TruckDraft draft =
                TruckDraft.named(truck.flatMap(node -> text("truck", node)).orElse("unnamed"));
        written.take("title").flatMap(node -> text("title", node)).ifPresent(draft::title);
        for (String language : TITLED_IN) {
            String key = TITLE_IN + language;
            written.take(key).flatMap(node -> text(key, node)).ifPresent(words -> draft.titleIn(language, words));
        }
        return draft;
    }

    private Optional<String> text(String path, YamlNode node) {
        Optional<String> text = node.text(path);
        told.addAll(text.isPresent() ? Set.of() : Set.of(path));
        return text;
    }

    private OptionalDouble number(String path, YamlNode node) {
        OptionalDouble number = node.number(path);
        told.addAll(number.isPresent() ? Set.of() : Set.of(path));
        return number;
    }

    private void ratios(TruckDraft draft) {
        Optional<YamlNode> node = written.take(RATIOS);
        if (node.isPresent() && !node.get().isList()) {
            fault(RATIOS, "not a list", "write [2.74, 1.96, 1.40, 1.00], highest first");
        } else if (node.isPresent()) {
            List<Double> ratios = new ArrayList<>();
            for (YamlNode ratio : node.get().items(RATIOS)) {
                String path = RATIOS + "[" + (ratios.size() + 1) + "]";
                written.place(path, ratio);
                // The place is kept, so that the ratios around an unreadable one are still compared rightly.
                ratios.add(number(path, ratio).orElse(Double.NaN));
            }
            draft.mainRatios(ratios);
        }
    }

    private void splitter(TruckDraft draft) {
        Optional<YamlNode> ratio = written.take(SPLITTER + ".ratio");
        Optional<YamlNode> splits = written.take(SPLITTER + ".splits");
        if (ratio.isPresent() != splits.isPresent()) {
            fault(SPLITTER, "only half of it is given", "write { ratio: 0.85, splits: high-only } or splits: both");
        } else if (ratio.isPresent()) {
            Optional<String> which = text(SPLITTER + ".splits", splits.get());
            which.filter(word -> !word.equals("both") && !word.equals("high-only"))
                    .ifPresent(word ->
                            fault(SPLITTER + ".splits", "'" + word + "' is not known", "give high-only or both"));
            number(SPLITTER + ".ratio", ratio.get())
                    .ifPresent(value ->
                            draft.splitter(value, which.filter("both"::equals).isPresent()));
        }
    }

    private void tyreSize(TruckDraft draft) {
        written.take(SIZE).flatMap(node -> text(SIZE, node)).ifPresent(draft::tyreSize);
    }

    private void curve(TruckDraft draft) {
        Optional<YamlNode> metric = written.take(CURVE);
        Optional<YamlNode> customary = written.take(CURVE_US);
        if (metric.isPresent() && customary.isPresent()) {
            fault(CURVE_US, "the curve is given twice", "keep it in one unit");
        } else if (metric.isPresent()) {
            draft.torqueCurve(points(CURVE, metric.get(), Unit.NEWTON_METRE));
        } else if (customary.isPresent()) {
            draft.torqueCurve(points(CURVE_US, customary.get(), Unit.POUND_FOOT));
            written.place(CURVE, customary.get());
        }
    }

    private Map<Double, Double> points(String path, YamlNode node, Unit unit) {
        Map<Double, Double> points = new LinkedHashMap<>();
        if (!node.isMap()) {
            fault(path, "not a curve", "write { 1000: 2000, 1500: 1900 }, torque by engine speed");
            return points;
        }
        for (YamlMap.Entry point : node.map(path).entries()) {
            OptionalDouble rpm = number(path, point.key());
            OptionalDouble torque = number(path, point.value());
            if (rpm.isPresent()
                    && torque.isPresent()
                    && points.put(rpm.getAsDouble(), unit.convert(torque.getAsDouble(), Unit.NEWTON_METRE)) != null) {
                point.key().fault(path + ": one speed is given twice", "keep one");
            }
        }
        return points;
    }

    private void parameter(String path, YamlNode node, TruckDraft draft) {
        Written entry = PARAMETERS.get(path);
        if (entry == null) {
            String unknown = unknown(path);
            fault(unknown, "not an entry of a truck profile", "use one of " + neighbours(unknown));
            return;
        }
        Parameter parameter = entry.parameter();
        for (Unit other : parameter.writtenIn()) {
            if (other != entry.unit() && written.has(parameter.key(other)) && entry.unit() != parameter.unit()) {
                fault(path, "given twice, also as " + parameter.key(other), "keep one unit");
            }
        }
        written.placeIfAbsent(parameter.key(), node);
        number(path, node).ifPresent(value -> draft.set(parameter, value, entry.unit()));
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
        Stream<String> plain = Stream.of("truck", "title", TITLE_IN + "es", RATIOS, SPLITTER, SIZE, CURVE, CURVE_US);
        return Stream.concat(plain, PARAMETERS.keySet().stream())
                .filter(key -> key.startsWith(section))
                .map(key -> section.isEmpty() ? key.replaceFirst("\\..*", "") : key)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
