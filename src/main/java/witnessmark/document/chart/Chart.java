package witnessmark.document.chart;

import java.util.List;

/**
 * A chart to be drawn: lines and single marks over two axes, both from zero.
 *
 * @param series at least one
 * @param notes lines to stand under it
 */
public record Chart(String title, String across, String up, List<Series> series, List<String> notes) {

    public Chart(String title, String across, String up, List<Series> series) {
        this(title, across, up, series, List.of());
    }

    /** How a series is drawn; each differs in more than its colour. */
    public enum Style {
        FULL_LINE,
        DASHED_LINE,
        DOTTED_LINE,
        MARKS
    }

    public record Point(double x, double y) {}

    /**
     * One line or set of marks.
     *
     * @param name as in the legend, different from the others
     * @param points at least one, in drawing order
     */
    public record Series(String name, Style style, List<Point> points) {

        public Series {
            points = List.copyOf(points);
            if (points.isEmpty()) {
                throw new IllegalArgumentException("chart: series '" + name + "' has no points; leave it out");
            }
        }
    }

    public Chart {
        series = List.copyOf(series);
        notes = List.copyOf(notes);
        if (series.isEmpty()) {
            throw new IllegalArgumentException("chart: '" + title + "' has no series; give one or more");
        }
    }

    public double farthestX() {
        return series.stream()
                .flatMap(line -> line.points().stream())
                .mapToDouble(Point::x)
                .max()
                .orElseThrow();
    }

    public double highestY() {
        return series.stream()
                .flatMap(line -> line.points().stream())
                .mapToDouble(Point::y)
                .max()
                .orElseThrow();
    }
}
