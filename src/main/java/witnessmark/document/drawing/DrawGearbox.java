package witnessmark.document.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.document.drawing.Svg.Ink;
import witnessmark.document.drawing.Svg.Lettering;
import witnessmark.language.Texts;

/** Draws the gearbox of a case as its layout says, with the parts concerned marked by hatching and label. */
public final class DrawGearbox {
    /** As large against the drawing as letters must be that are read on a phone of 360 pixels, where it fills the width. */
    private static final double LETTERS = 27;

    private static final double BALLOON = 21;
    /** How far a balloon goes out of its way to cover one part less. */
    private static final double COVERING = 18;
    /** Boxes larger than this are sections, hatched wide so that what lies in them can be seen. */
    private static final double LARGE = 12_000;

    private static final String FOUND = "#8c1414";
    private static final String NEXT = "#0b4a8f";

    private final GearboxPlan plan;
    private final Texts words;
    private final Svg svg = new Svg(GearboxPlan.WIDTH, GearboxPlan.HEIGHT);
    private final List<Box> taken = new ArrayList<>();

    private DrawGearbox(GearboxPlan plan, Texts words) {
        this.plan = plan;
        this.words = words;
    }

    /** The drawing as one SVG element, labelled from the documents' words. */
    public static String draw(GearboxPlan plan, List<Mark> marks, Texts words) {
        return new DrawGearbox(plan, words).drawn(marks);
    }

    private String drawn(List<Mark> marks) {
        outlines();
        if (plan.hasAir()) {
            airLines();
        }
        parts();
        captions();
        List<Mark> shown = marks.stream().filter(m -> plan.shows(m.part())).toList();
        shown.forEach(this::shade);
        shown.forEach(this::balloon);
        return svg.finish(words.text("drawing.title"), described(shown));
    }

    private String described(List<Mark> marks) {
        if (marks.isEmpty()) {
            return words.text("drawing.no-part");
        }
        return String.join(
                "; ",
                marks.stream()
                        .map(m -> m.label() + ": " + m.partName() + " (" + m.look() + ")")
                        .toList());
    }

    private void outlines() {
        Ink housing = new Ink("#f4f4f4", "#333333", 2, "");
        for (String id : List.of("bell-housing", "front-section", "auxiliary-section")) {
            plan.parts().getOrDefault(id, List.of()).forEach(box -> svg.rect(box, housing));
        }
        double end = plan.rearEnd();
        svg.line(new Ink("none", "#777777", 1.2, "7 4"), 234, 404, end - 4, 404);
    }

    private void airLines() {
        Ink line = new Ink("none", "#555555", 1.4, "5 3");
        svg.line(line, 82, 49, 100, 49).line(line, 144, 49, 162, 49);
        Box valve = plan.parts().get("control-valve").get(0);
        svg.line(line, 212, 49, valve.x(), 49);
        svg.line(line, valve.x() + valve.width(), valve.centreY(), 426, valve.centreY(), 426, 82, 640, 82);
        svg.line(line, 477, 82, 477, 146);
        for (String id : List.of("splitter-valve", "range-valve")) {
            plan.parts().getOrDefault(id, List.of()).forEach(box -> {
                svg.line(line, Math.min(640, box.centreX()), 82, box.centreX(), 82, box.centreX(), box.y());
                svg.line(line, box.centreX(), box.y() + box.height(), box.centreX(), 136);
            });
        }
    }

    private void parts() {
        Map<String, List<Box>> parts = new LinkedHashMap<>(plan.parts());
        parts.keySet().removeAll(plan.whenMarked());
        List.of("bell-housing", "front-section", "auxiliary-section").forEach(parts::remove);
        Ink shaft = new Ink("#d9d9d9", "#333333", 1, "");
        for (String id :
                List.of("input-shaft", "mainshaft", "countershaft", "auxiliary-countershaft", "output-shaft")) {
            if (parts.containsKey(id)) {
                parts.remove(id).forEach(box -> svg.rect(box, shaft));
            }
        }
        if (plan.hasAuxiliary()) {
            svg.rect(new Box(560, 304, 200, 12), shaft);
        }
        plan.gears().forEach(this::gear);
        parts.values().forEach(boxes -> boxes.forEach(box -> svg.rect(box, Ink.THIN)));
    }

    private void gear(Box box) {
        svg.rect(box, Ink.THIN);
        Ink tooth = new Ink("none", "#999999", 0.7, "");
        for (double y : new double[] {box.y() + 4, box.y() + box.height() - 4}) {
            svg.line(tooth, box.x(), y, box.x() + box.width(), y);
        }
    }

    private void shade(Mark mark) {
        for (Box box : plan.parts().get(mark.part())) {
            switch (mark.kind()) {
                case FOUND -> svg.hatch(box, isLarge(box) ? 16 : 5, new Ink("none", FOUND, 1.3, ""))
                        .rect(box, new Ink("none", FOUND, 2.6, ""));
                case UNSURE -> svg.hatch(box, isLarge(box) ? 30 : 11, new Ink("none", FOUND, 1, ""))
                        .rect(box, new Ink("none", FOUND, 1.8, ""));
                case LOOK_NEXT -> svg.rect(grown(box), new Ink("none", NEXT, 2.4, "6 4"));
            }
        }
    }

    private static Box grown(Box box) {
        return new Box(box.x() - 3, box.y() - 3, box.width() + 6, box.height() + 6);
    }

    /** A balloon near the part, where it covers least, with a line to it. */
    private void balloon(Mark mark) {
        List<Box> boxes = plan.parts().get(mark.part());
        Box box = boxes.get(boxes.size() / 2);
        double bestX = box.centreX();
        double bestY = box.centreY();
        double least = Double.POSITIVE_INFINITY;
        List<Box> small = smallParts();
        for (double away = 26; away < 220 && away < least; away += 14) {
            for (int step = 0; step < 24; step++) {
                double angle = Math.PI * step / 12 - Math.PI / 3;
                double x = box.centreX() + away * Math.cos(angle);
                double y = box.centreY() + away * Math.sin(angle);
                Box place = place(x, y);
                if (isFree(place)) {
                    double cost = away
                            + COVERING
                                    * small.stream().filter(b -> b.meets(place)).count();
                    if (cost < least) {
                        least = cost;
                        bestX = x;
                        bestY = y;
                    }
                }
            }
        }
        put(mark, box, bestX, bestY);
    }

    private static Box place(double x, double y) {
        return new Box(x - BALLOON - 2, y - BALLOON - 2, 2 * BALLOON + 4, 2 * BALLOON + 4);
    }

    private List<Box> smallParts() {
        return plan.parts().values().stream()
                .flatMap(List::stream)
                .distinct()
                .filter(b -> !isLarge(b))
                .toList();
    }

    private static boolean isLarge(Box box) {
        return box.width() * box.height() > LARGE;
    }

    private boolean isFree(Box place) {
        boolean inside = place.x() > 0
                && place.y() > 0
                && place.x() + place.width() < GearboxPlan.WIDTH
                && place.y() + place.height() < GearboxPlan.HEIGHT;
        return inside && taken.stream().noneMatch(place::meets);
    }

    private void put(Mark mark, Box box, double x, double y) {
        taken.add(place(x, y));
        String colour = mark.kind() == Mark.Kind.LOOK_NEXT ? NEXT : FOUND;
        double nearX = Math.max(box.x(), Math.min(x, box.x() + box.width()));
        double nearY = Math.max(box.y(), Math.min(y, box.y() + box.height()));
        svg.line(new Ink("none", colour, 1.4, ""), x, y, nearX, nearY);
        svg.circle(x, y, BALLOON, new Ink("#ffffff", colour, 2, mark.kind() == Mark.Kind.LOOK_NEXT ? "4 2" : ""));
        svg.text(mark.label(), x, y + 9, Lettering.centred(LETTERS).bold());
    }

    private void captions() {
        below("drawing.engine", 2, Lettering.from(LETTERS));
        caption("drawing.bell-housing", 20, 494, Lettering.from(LETTERS));
        below("drawing.front", 395, Lettering.centred(LETTERS).bold());
        if (plan.hasAuxiliary()) {
            below("drawing.auxiliary", 690, Lettering.centred(LETTERS).bold());
        }
        double y = 406;
        for (String line : Svg.wrapped(words.text("drawing.driveline"), 160, (float) LETTERS, 2)) {
            lettered(line, 956, y, Lettering.upTo(LETTERS));
            y += 1.15 * LETTERS;
        }
        if (plan.hasAir()) {
            caption("drawing.air", 8, 24, Lettering.from(LETTERS));
            boolean several = plan.hasSplitter() && plan.rangeByAir() && plan.hasRange();
            caption(several ? "drawing.valves" : "drawing.valve", 956, 56, Lettering.upTo(LETTERS));
        }
        if (plan.remote()) {
            caption("drawing.lever", 290, 112, Lettering.from(LETTERS));
        } else {
            caption("drawing.lever", 348, 112, Lettering.upTo(LETTERS));
        }
    }

    private void below(String key, double x, Lettering lettering) {
        caption(key, x, 463, lettering);
    }

    private void caption(String key, double x, double y, Lettering lettering) {
        lettered(words.text(key), x, y, lettering);
    }

    /** Letters that no balloon covers. */
    private void lettered(String text, double x, double y, Lettering lettering) {
        svg.text(text, x, y, lettering);
        taken.add(lettering.room(text, x, y));
    }
}
