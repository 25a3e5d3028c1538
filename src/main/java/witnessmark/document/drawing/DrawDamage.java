package witnessmark.document.drawing;

import java.util.ArrayList;
import java.util.List;
import witnessmark.document.drawing.Svg.Ink;
import witnessmark.document.drawing.Svg.Lettering;
import witnessmark.language.Texts;

/** Draws how damage comes about: what was at work, what it does to the parts, what was found. */
public final class DrawDamage {
    private static final double WIDTH = 720;
    private static final float SIZE = 13;
    private static final double LINE = 1.3 * SIZE;
    private static final double COLUMN = 216;
    private static final double GAP = 36;
    private static final double PAD = 10;
    private static final int MOST_LINES = 16;
    private static final int MOST_MARKS = 6;

    private DrawDamage() {}

    /** One row for each story, as one SVG element; empty without stories. */
    public static String draw(List<DamageStory> stories, Texts words) {
        if (stories.isEmpty()) {
            return "";
        }
        List<Row> rows = stories.stream().map(s -> Row.of(s, words)).toList();
        double height = 30 + rows.stream().mapToDouble(r -> r.height() + 34).sum();
        Svg svg = new Svg(WIDTH, height);
        heads(svg, words);
        double y = 34;
        for (Row row : rows) {
            row.drawAt(y, svg);
            y += row.height() + 34;
        }
        return svg.finish(words.text("damage.title"), described(stories, words));
    }

    private static void heads(Svg svg, Texts words) {
        List<String> heads = List.of(words.text("damage.acts"), words.text("damage.does"), words.text("damage.found"));
        for (int i = 0; i < heads.size(); i++) {
            svg.text(
                    heads.get(i),
                    left(i) + COLUMN / 2,
                    16,
                    Lettering.centred(14).bold());
        }
    }

    private static double left(int column) {
        return column * (COLUMN + GAP);
    }

    private static String described(List<DamageStory> stories, Texts words) {
        return String.join(
                " ",
                stories.stream()
                        .map(s -> words.text(
                                "damage.described",
                                s.standing(),
                                s.cause(),
                                s.mechanism(),
                                s.marks().isEmpty() ? words.text("damage.nothing") : String.join(", ", s.marks())))
                        .toList());
    }

    private record Row(String standing, List<List<String>> columns) {

        static Row of(DamageStory story, Texts words) {
            List<String> marks = new ArrayList<>();
            for (String mark :
                    story.marks().subList(0, Math.min(MOST_MARKS, story.marks().size()))) {
                marks.addAll(wrapped("- " + mark));
            }
            if (story.marks().size() > MOST_MARKS) {
                marks.addAll(wrapped(words.text("damage.more", story.marks().size() - MOST_MARKS)));
            }
            return new Row(
                    story.standing(),
                    List.of(
                            // Drawn bold, which is wider.
                            Svg.wrapped(story.cause(), 0.86 * (COLUMN - 2 * PAD), SIZE, MOST_LINES),
                            wrapped(story.mechanism()),
                            marks.isEmpty() ? wrapped(words.text("damage.none-found")) : marks));
        }

        private static List<String> wrapped(String text) {
            return Svg.wrapped(text, COLUMN - 2 * PAD, SIZE, MOST_LINES);
        }

        double height() {
            return 2 * PAD + LINE * columns.stream().mapToInt(List::size).max().orElse(1);
        }

        void drawAt(double y, Svg svg) {
            svg.text(Svg.cut(standing, WIDTH, SIZE), 0, y + 2, Lettering.from(SIZE));
            double top = y + 10;
            for (int i = 0; i < columns.size(); i++) {
                Ink ink = new Ink(i == 0 ? "#ececec" : "#ffffff", "#333333", i == 2 ? 2.5 : 1.2, "");
                svg.rect(new Box(left(i) + 1.5, top, COLUMN - 3, height()), ink);
                svg.lines(
                        columns.get(i),
                        left(i) + PAD,
                        top + PAD + SIZE - 2,
                        i == 0 ? Lettering.from(SIZE).bold() : Lettering.from(SIZE));
                if (i > 0) {
                    arrow(svg, left(i) - GAP + 4, left(i) - 4, top + height() / 2);
                }
            }
        }

        private static void arrow(Svg svg, double from, double to, double y) {
            svg.line(new Ink("none", "#333333", 2, ""), from, y, to - 2, y);
            svg.line(new Ink("#333333", "#333333", 1, ""), to - 9, y - 6, to, y, to - 9, y + 6, to - 9, y - 6);
        }
    }
}
