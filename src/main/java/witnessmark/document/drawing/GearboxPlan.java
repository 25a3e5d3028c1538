package witnessmark.document.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Layout;

/**
 * Where each part lies in the drawing, for one layout. Our own diagram, not to scale: engine on the left, front
 * section, auxiliary section, driveline on the right, air above, oil below.
 */
final class GearboxPlan {
    static final double WIDTH = 960;
    static final double HEIGHT = 520;
    static final double SHAFT_Y = 310;
    static final double REACH = 80;
    private static final double MAIN_LEFT = 230;
    private static final double MAIN_RIGHT = 560;

    private final Layout layout;
    private final Map<String, List<Box>> parts = new LinkedHashMap<>();
    private final List<Box> gears = new ArrayList<>();

    GearboxPlan(Layout layout) {
        this.layout = layout;
        front();
        mainSection();
        if (hasAuxiliary()) {
            auxiliary();
        }
        behind();
        shifting();
        if (hasAir()) {
            air();
        }
        oil();
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

    private void put(String id, Box... boxes) {
        parts.put(id, List.of(boxes));
    }

    private void front() {
        put("engine", new Box(8, 240, 66, 140));
        put("engine-rear-seal", new Box(68, 296, 8, 28));
        put("bell-housing", new Box(80, 205, 150, 210));
        put("pilot-bearing", new Box(84, 301, 14, 18));
        put("clutch", new Box(102, 245, 22, 130));
        put("release-bearing", new Box(140, 284, 18, 52));
        put("clutch-brake", new Box(172, 278, 10, 64));
        put("input-shaft", new Box(98, 304, 150, 12));
        put("input-seal", new Box(204, 294, 8, 32));
        put("input-bearing", new Box(220, 286, 18, 48));
        put("mounts", new Box(130, 417, 36, 14), new Box(hasAuxiliary() ? 700 : 480, 422, 36, 14));
    }

    private void mainSection() {
        put("front-section", new Box(MAIN_LEFT, 190, MAIN_RIGHT - MAIN_LEFT, 235));
        alias("front-section", "main-section", "case");
        put("mainshaft", new Box(262, 304, MAIN_RIGHT - 262, 12));
        alias("mainshaft", "shafts", "snap-ring");
        put("pocket-bearing", new Box(266, 299, 12, 22));
        int count = mainGears() + 2;
        double pitch = 290.0 / count;
        List<Box> hubs = new ArrayList<>();
        List<Box> washers = new ArrayList<>();
        List<Box> clutches = new ArrayList<>();
        List<Box> teeth = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double x = 244 + i * pitch;
            double radius = 34 + 26.0 * i / (count - 1);
            pair(x, radius, i == count - 1);
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
        alias("countershaft-bearing", "bearings");
        put("timing", new Box(244, SHAFT_Y + 30, 24, 18));
        put("gears", gears.toArray(Box[]::new));
    }

    private void pair(double x, double radius, boolean reverse) {
        gears.add(new Box(x, SHAFT_Y - radius, 24, 2 * radius));
        double counter = REACH - radius - (reverse ? 14 : 0);
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
        put("auxiliary-section", new Box(MAIN_RIGHT, 190, 230, 235));
        put("auxiliary-drive-bearing", new Box(555, 288, 12, 44));
        put("auxiliary-countershaft", shafts(578, 780));
        put("auxiliary-bearing", ends(576, 774));
        if (hasSplitter()) {
            put("splitter-sliding-clutch", new Box(582, SHAFT_Y - 18, 14, 36));
            put("splitter-yoke", new Box(586, 200, 6, SHAFT_Y - 218));
            Box gear = new Box(606, SHAFT_Y - 42, 24, 84);
            gears.add(gear);
            put("splitter", gear);
            gears.add(new Box(606, SHAFT_Y + 42, 24, 76));
            put("splitter-cylinder", new Box(566, 136, 60, 36));
            put("splitter-valve", new Box(576, 96, 40, 24));
        }
        if (hasRange()) {
            put("range-synchronizer", new Box(666, SHAFT_Y - 32, 14, 64), new Box(706, SHAFT_Y - 32, 14, 64));
            put("range-sliding-clutch", new Box(685, SHAFT_Y - 20, 16, 40));
            put("range-yoke", new Box(690, 200, 6, SHAFT_Y - 220));
            Box low = new Box(728, SHAFT_Y - 54, 26, 108);
            gears.add(low);
            gears.add(new Box(728, SHAFT_Y + 54, 26, 52));
            put("range-section", new Box(660, SHAFT_Y - 60, 100, 120));
            if (rangeByAir()) {
                put("range-cylinder", new Box(658, 136, 78, 36));
                put("range-valve", new Box(676, 96, 42, 24));
            }
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
        put("axle", new Box(880, 262, 66, 96));
    }

    private void shifting() {
        put("shift-tower", new Box(330, 140, 70, 34));
        put("lever-isolator", new Box(356, 112, 18, 12));
        put("shift-rail", new Box(250, 177, 300, 9));
        List<Box> yokes = parts.get("sliding-clutch").stream()
                .map(c -> new Box(c.centreX() - 3, 186, 6, c.y() - 186))
                .toList();
        put("front-yoke", yokes.toArray(Box[]::new));
        put("detent", new Box(408, 160, 16, 14));
        put("interlock", new Box(428, 160, 18, 14));
        put("shift-linkage", remote() ? new Box(270, 120, 92, 10) : new Box(361, 62, 8, 78));
        if (hasAir()) {
            put("control-valve", new Box(remote() ? 232 : 344, remote() ? 58 : 36, 42, 26));
            put("interlock-valve", new Box(456, 146, 42, 28));
        }
        put("breather", new Box(524, 156, 16, 20));
    }

    boolean remote() {
        return layout.linkage().orElse(Layout.Linkage.DIRECT) == Layout.Linkage.REMOTE;
    }

    private void air() {
        put("vehicle-air", new Box(12, 34, 70, 30));
        put("air-filter", new Box(100, 34, 44, 30));
        put("air-regulator", new Box(162, 34, 50, 30));
        put("air-system", new Box(6, 28, 212, 42));
        put("air-lines", new Box(456, 78, 190, 8));
    }

    private void oil() {
        double right = rearEnd() - MAIN_LEFT - 4;
        put("oil", new Box(MAIN_LEFT + 2, 404, right, 20));
        put("debris", new Box(372, 426, 26, 12));
        put("seals", parts.get("input-seal").get(0), parts.get("output-seal").get(0));
        put("oil-passage", new Box(262, 309, MAIN_RIGHT - 262, 3));
        fitted("oil-pump", layout.oilPump(), new Box(480, 428, 56, 24));
        fitted("oil-cooler", layout.oilCooler(), new Box(560, 462, 70, 24));
        fitted("pto", layout.powerTakeOff(), new Box(270, 428, 66, 30));
    }

    private void fitted(String id, java.util.Optional<Layout.Fitted> said, Box box) {
        if (said.filter(f -> f == Layout.Fitted.FITTED).isPresent()) {
            put(id, box);
        }
    }

    private void alias(String of, String... others) {
        for (String other : others) {
            parts.put(other, parts.get(of));
        }
    }
}
