package witnessmark.document.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import witnessmark.document.ShippedFont;
import witnessmark.document.VisibleText;

/** An SVG drawing being put together; it uses no ids, so that several can stand on one page. */
final class Svg {
    private final StringBuilder body = new StringBuilder();
    private final double width;
    private final double height;

    Svg(double width, double height) {
        this.width = width;
        this.height = height;
    }

    /** How a shape is drawn. */
    record Ink(String fill, String stroke, double strokeWidth, String dashes) {
        static final Ink THIN = new Ink("#ffffff", "#333333", 1, "");
        static final Ink OUTLINE = new Ink("none", "#333333", 1.5, "");

        Ink dashed(String pattern) {
            return new Ink(fill, stroke, strokeWidth, pattern);
        }
    }

    /** How text is lettered: its size, where its given point is, and how heavy it is. */
    record Lettering(double size, String anchor, String weight) {
        static Lettering from(double size) {
            return new Lettering(size, "start", "");
        }

        static Lettering centred(double size) {
            return new Lettering(size, "middle", "");
        }

        /** Ending at the point. */
        static Lettering upTo(double size) {
            return new Lettering(size, "end", "");
        }

        /** Where a line of these letters stands. */
        Box room(String text, double x, double y) {
            double wide = (weight.isEmpty() ? ShippedFont.REGULAR : ShippedFont.BOLD).width(text, (float) size);
            double left = anchor.equals("end") ? x - wide : anchor.equals("middle") ? x - wide / 2 : x;
            return new Box(left, y - size, wide, 1.25 * size);
        }

        Lettering bold() {
            return new Lettering(size, anchor, " font-weight=\"700\"");
        }
    }

    Svg rect(Box box, Ink ink) {
        body.append(String.format(
                Locale.ROOT,
                "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"%s/>\n",
                box.x(),
                box.y(),
                box.width(),
                box.height(),
                style(ink)));
        return this;
    }

    Svg circle(double x, double y, double radius, Ink ink) {
        body.append(String.format(
                Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\"%s/>\n", x, y, radius, style(ink)));
        return this;
    }

    /** A line through these points: x, y, x, y … */
    Svg line(Ink ink, double... points) {
        StringBuilder at = new StringBuilder();
        for (int i = 0; i < points.length; i += 2) {
            at.append(String.format(Locale.ROOT, "%s%.1f,%.1f", i == 0 ? "" : " ", points[i], points[i + 1]));
        }
        body.append("<polyline points=\"")
                .append(at)
                .append('"')
                .append(style(ink))
                .append("/>\n");
        return this;
    }

    /** Diagonal lines inside the box, so that a mark can be told without colour. */
    Svg hatch(Box box, double spacing, Ink ink) {
        for (double at = spacing; at < box.width() + box.height(); at += spacing) {
            double x1 = box.x() + Math.min(at, box.width());
            double y1 = box.y() + Math.max(0, at - box.width());
            double x2 = box.x() + Math.max(0, at - box.height());
            double y2 = box.y() + Math.min(at, box.height());
            line(ink, x1, y1, x2, y2);
        }
        return this;
    }

    Svg text(String text, double x, double y, Lettering lettering) {
        body.append(String.format(
                        Locale.ROOT,
                        "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%.1f\" text-anchor=\"%s\"%s fill=\"#111111\">",
                        x,
                        y,
                        lettering.size(),
                        lettering.anchor(),
                        lettering.weight()))
                .append(escaped(text))
                .append("</text>\n");
        return this;
    }

    /** Lines of text one below the other; returns the y below the last. */
    double lines(List<String> lines, double x, double y, Lettering lettering) {
        double at = y;
        for (String line : lines) {
            text(line, x, at, lettering);
            at += 1.3 * lettering.size();
        }
        return at;
    }

    /** The drawing with what it shows in words, for those who cannot see it. */
    String finish(String title, String description) {
        return String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" width=\"%.0f\" height=\"%.0f\""
                                + " role=\"img\" aria-label=\"%s\" font-family=\"%s, Verdana, sans-serif\">\n",
                        width,
                        height,
                        width,
                        height,
                        escaped(title),
                        ShippedFont.FAMILY)
                + "<title>" + escaped(title) + "</title>\n<desc>" + escaped(description) + "</desc>\n"
                + body + "</svg>\n";
    }

    /** The text broken into lines no wider than {@code width}; a word that is wider is cut and the cut shown. */
    static List<String> wrapped(String text, double width, float size, int mostLines) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : VisibleText.of(text).strip().split("\\s+")) {
            String fitting = cut(word, width, size);
            String longer = line.isEmpty() ? fitting : line + " " + fitting;
            if (ShippedFont.REGULAR.width(longer, size) <= width) {
                line = longer;
            } else {
                lines.add(line);
                line = fitting;
            }
        }
        lines.add(line);
        if (lines.size() <= mostLines) {
            return lines;
        }
        List<String> kept = new ArrayList<>(lines.subList(0, mostLines));
        kept.set(mostLines - 1, cut(kept.get(mostLines - 1) + " …", width, size));
        return kept;
    }

    /** The text cut to the width, with the cut shown. */
    static String cut(String text, double width, float size) {
        String plain = text.length() > 300 ? text.substring(0, 300) : text;
        if (plain.length() == text.length() && ShippedFont.REGULAR.width(plain, size) <= width) {
            return text;
        }
        int end = plain.length();
        while (end > 0 && ShippedFont.REGULAR.width(plain.substring(0, end) + "…", size) > width) {
            end = plain.offsetByCodePoints(end, -1);
        }
        return plain.substring(0, end) + "…";
    }

    private static String style(Ink ink) {
        String dashes = ink.dashes().isEmpty() ? "" : " stroke-dasharray=\"" + ink.dashes() + "\"";
        return String.format(
                        Locale.ROOT,
                        " fill=\"%s\" stroke=\"%s\" stroke-width=\"%.1f\"",
                        ink.fill(),
                        ink.stroke(),
                        ink.strokeWidth())
                + dashes;
    }

    static String escaped(String text) {
        return VisibleText.of(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
