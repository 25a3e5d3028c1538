package witnessmark.document.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Part;

/**
 * Where each part lies in the drawing, for one layout. Our own diagram, not to scale: engine on the left, front
 * section, auxiliary section, driveline on the right, air above, oil below.
 */
public final class GearboxPlan {
    static final double WIDTH = 960;
    static final double HEIGHT = 520;
    static final double SHAFT_Y = 310;
    static final double REACH = 80;
    /** Between the reverse pair, where the idler turns. */
    private static final double IDLER_GAP = 14;

    private static final double MAIN_LEFT = 230;
    private static final double MAIN_RIGHT = 560;

    private final Layout layout;
    private final Map<String, List<Box>> reckoned = new HashMap<>();
    private final Map<String, List<Box>> parts = new LinkedHashMap<>();
    private final Set<String> whenMarked = new HashSet<>();
    private final List<Box> gears = new ArrayList<>();

    /** @param known every part by its id, in the order in which they are drawn */
    public GearboxPlan(Layout layout, Map<String, Part> known) {
        this.layout = layout;
        reckon();
        for (Part part : known.values()) {
            List<Box> boxes = boxes(part, known);
            if (!boxes.isEmpty() && part.with().map(this::has).orElse(true)) {
                parts.put(part.id(), boxes);
                if (part.whenMarked()) {
                    whenMarked.add(part.id());
                }
            }
        }
    }

    private List<Box> boxes(Part part, Map<String, Part> known) {
        return part.of().isEmpty()
                ? boxes(part)
                : part.of().stream()
                        .flatMap(id -> boxes(known.get(id)).stream())
                        .toList();
    }

    private List<Box> boxes(Part part) {
        return part.drawn().isEmpty()
                ? reckoned.getOrDefault(part.id(), List.of())
                : part.drawn().stream().map(Box::of).toList();
    }

    /** Whether the drawing of this layout holds the part. */
    public boolean shows(String part) {
        return parts.containsKey(part);
    }

    /** The parts drawn only when marked. */
    Set<String> whenMarked() {
        return whenMarked;
    }

    private boolean has(Part.With with) {
        return switch (with) {
            case AUXILIARY -> hasAuxiliary();
            case SPLITTER -> hasSplitter();
            case RANGE -> hasRange();
            case RANGE_BY_AIR -> hasRange() && rangeByAir();
            case AIR -> hasAir();
            case OIL_PUMP -> fitted(layout.oilPump());
            case OIL_COOLER -> fitted(layout.oilCooler());
            case PTO -> fitted(layout.powerTakeOff());
        };
    }

    /** The boxes of each part drawn, by part id. */
    Map<String, List<Box>> parts() {
        return parts;
    }

    /** The gears, drawn with teeth lines. */
    List<Box> gears() {
        return gears;
    }

    boolean hasRange() {
        return layout.range().orElse(Layout.RangeShift.AIR) != Layout.RangeShift.NONE;
    }

    /** What the case does not say is drawn only where it is usual: a range by air, no splitter. */
    boolean hasSplitter() {
        return layout.splitter().orElse(Layout.Splitter.NONE) != Layout.Splitter.NONE;
    }

    boolean hasAuxiliary() {
        return hasRange() || hasSplitter();
    }

    boolean hasAir() {
        return hasSplitter() || layout.range().orElse(Layout.RangeShift.AIR) == Layout.RangeShift.AIR;
    }

    boolean rangeByAir() {
        return layout.range().orElse(Layout.RangeShift.AIR) == Layout.RangeShift.AIR;
    }

    boolean twin() {
        return layout.countershafts().orElse(Layout.Countershafts.SINGLE) == Layout.Countershafts.TWIN;
    }

    double rearEnd() {
        return hasAuxiliary() ? 790 : MAIN_RIGHT;
    }

    /** Gears on the mainshaft that move the truck forward: those that repeat in both ranges, without the drive gear. */
    int mainGears() {
        int ratios = layout.forwardRatios().orElse(0);
        if (!hasRange()) {
            return ratios == 0 ? 4 : Math.max(2, Math.min(6, ratios - 1));
        }
        return ratios == 10 ? 4 : 3;
    }

    /** The parts that the layout moves, or of which it says how many there are. */
    private void reckon() {
        mounts();
        mainSection();
        if (hasAuxiliary()) {
            auxiliary();
        }
        behind();
        shifting();
        oil();
    }

    private void put(String id, Box... boxes) {
        reckoned.put(id, List.of(boxes));
    }

    private void mounts() {
        put("mounts", new Box(130, 417, 36, 14), new Box(hasAuxiliary() ? 700 : 480, 422, 36, 14));
    }

    private void mainSection() {
        int count = mainGears() + 2;
        double pitch = 290.0 / count;
        List<Box> hubs = new ArrayList<>();
        List<Box> washers = new ArrayList<>();
        List<Box> clutches = new ArrayList<>();
        List<Box> teeth = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double x = 244 + i * pitch;
            double radius = 34 + 26.0 * i / (count - 1);
            pair(x, radius, i == count - 1 ? IDLER_GAP : 0);
            hubs.add(new Box(x, SHAFT_Y - 12, 24, 24));
            if (i > 0) {
                washers.add(new Box(x - 5, SHAFT_Y - 16, 5, 32));
            }
            if (i % 2 == 0) {
                clutches.add(new Box(x + 28, SHAFT_Y - 20, 12, 40));
                teeth.add(new Box(x + 24, SHAFT_Y - 26, 4, 52));
            }
        }
        put("mainshaft-hub", hubs.subList(1, hubs.size()).toArray(Box[]::new));
        put("mainshaft-washer", washers.toArray(Box[]::new));
        put("sliding-clutch", clutches.toArray(Box[]::new));
        put("clutching-teeth", teeth.toArray(Box[]::new));
        double reverse = 244 + (count - 1) * pitch;
        put("reverse-idler", new Box(reverse + 2, SHAFT_Y + 62, 20, 14));
        put("countershaft", shafts(246, MAIN_RIGHT - 4));
        put("countershaft-bearing", ends(236, MAIN_RIGHT - 10));
        put("gears", gears.toArray(Box[]::new));
    }

    /** A gear on the mainshaft and what it meshes with, apart by the gap. */
    private void pair(double x, double radius, double gap) {
        gears.add(new Box(x, SHAFT_Y - radius, 24, 2 * radius));
        double counter = REACH - radius - gap;
        gears.add(new Box(x, SHAFT_Y + REACH - counter, 24, 2 * counter));
        if (twin()) {
            gears.add(new Box(x, SHAFT_Y - REACH - counter, 24, 2 * counter));
        }
    }

    private Box[] shafts(double left, double right) {
        Box lower = new Box(left, SHAFT_Y + REACH - 5, right - left, 10);
        return twin() ? new Box[] {lower, new Box(left, SHAFT_Y - REACH - 5, right - left, 10)} : new Box[] {lower};
    }

    private Box[] ends(double left, double right) {
        List<Box> ends = new ArrayList<>();
        for (Box shaft : shafts(left, right)) {
            ends.add(new Box(left - 4, shaft.y() - 8, 12, 26));
            ends.add(new Box(right - 4, shaft.y() - 8, 12, 26));
        }
        return ends.toArray(Box[]::new);
    }

    private void auxiliary() {
        put("auxiliary-countershaft", shafts(578, 780));
        put("auxiliary-bearing", ends(576, 774));
        if (hasSplitter()) {
            Box gear = new Box(606, SHAFT_Y - 42, 24, 84);
            gears.add(gear);
            put("splitter", gear);
            gears.add(new Box(606, SHAFT_Y + 42, 24, 76));
        }
        if (hasRange()) {
            gears.add(new Box(728, SHAFT_Y - 54, 26, 108));
            gears.add(new Box(728, SHAFT_Y + 54, 26, 52));
        }
    }

    private void behind() {
        double end = rearEnd();
        put("output-shaft", new Box(end - 34, 304, 64, 12));
        put("output-bearing", new Box(end - 14, 286, 18, 48));
        put("output-seal", new Box(end + 6, 294, 8, 32));
        put("output-yoke", new Box(end + 22, 285, 22, 50));
        put("speed-sensor", new Box(end + 2, 256, 14, 24));
        put("driveline", new Box(end + 46, 301, 880 - end - 46, 18));
    }

    private void shifting() {
        List<Box> yokes = reckoned.get("sliding-clutch").stream()
                .map(c -> new Box(c.centreX() - 3, 186, 6, c.y() - 186))
                .toList();
        put("front-yoke", yokes.toArray(Box[]::new));
        put("shift-linkage", remote() ? new Box(270, 120, 92, 10) : new Box(361, 62, 8, 78));
        if (hasAir()) {
            put("control-valve", new Box(remote() ? 232 : 344, remote() ? 58 : 36, 42, 26));
        }
    }

    boolean remote() {
        return layout.linkage().orElse(Layout.Linkage.DIRECT) == Layout.Linkage.REMOTE;
    }

    private void oil() {
        double right = rearEnd() - MAIN_LEFT - 4;
        put("oil", new Box(MAIN_LEFT + 2, 404, right, 20));
    }

    private static boolean fitted(Optional<Layout.Fitted> said) {
        return said.filter(f -> f == Layout.Fitted.FITTED).isPresent();
    }
}
