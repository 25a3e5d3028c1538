package witnessmark.shell.print;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import witnessmark.document.chart.Chart;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;

/** Draws a chart roughly in letters, for a terminal; each series has a letter of its own. */
public final class TerminalChart {

    private static final String LETTERS = "#o.+x";
    private static final int MARGIN = 8;
    private static final int LEAST_WIDTH = 30;
    private static final int LEAST_HEIGHT = 6;

    private final Chart chart;
    private final char[][] cells;

    private TerminalChart(Chart chart, int columns, int rows) {
        this.chart = chart;
        this.cells = new char[rows][columns];
        for (char[] row : cells) {
            Arrays.fill(row, ' ');
        }
    }

    /** Plain ASCII text, lines ended by a line feed; a smaller place than 30 by 6 is drawn as that. */
    public static String draw(Chart chart, int width, int height) {
        TerminalChart drawing =
                new TerminalChart(chart, Math.max(LEAST_WIDTH, width) - MARGIN - 1, Math.max(LEAST_HEIGHT, height) - 4);
        // The first series is the one that matters: drawn last, it stays on top.
        for (int i = chart.series().size() - 1; i >= 0; i--) {
            drawing.plot(chart.series().get(i), letter(i));
        }
        return drawing.text();
    }

    private static char letter(int series) {
        return LETTERS.charAt(series % LETTERS.length());
    }

    private void plot(Series series, char letter) {
        List<Point> points = series.points();
        mark(points.get(0), letter);
        for (int i = 1; i < points.size(); i++) {
            if (series.style() == Chart.Style.MARKS) {
                mark(points.get(i), letter);
            } else {
                line(points.get(i - 1), points.get(i), letter);
            }
        }
    }

    private void line(Point from, Point to, char letter) {
        int steps = 2 * (cells.length + cells[0].length);
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            mark(new Point(from.x() + share * (to.x() - from.x()), from.y() + share * (to.y() - from.y())), letter);
        }
    }

    private void mark(Point point, char letter) {
        int column = cell(point.x(), chart.farthestX(), cells[0].length);
        int row = cells.length - 1 - cell(point.y(), chart.highestY(), cells.length);
        cells[row][column] = letter;
    }

    private static int cell(double value, double most, int count) {
        double share = most > 0 ? value / most : 0;
        return (int) Math.round(Math.max(0, Math.min(1, share)) * (count - 1));
    }

    private String text() {
        StringBuilder text = new StringBuilder();
        text.append(chart.title()).append('\n').append(chart.up()).append('\n');
        for (int row = 0; row < cells.length; row++) {
            boolean labelled = row == 0 || row == cells.length / 2 || row == cells.length - 1;
            double value = chart.highestY() * (cells.length - 1 - row) / (cells.length - 1);
            text.append(String.format(Locale.ROOT, "%" + MARGIN + "s|", labelled ? number(value) : ""))
                    .append(new String(cells[row]).stripTrailing())
                    .append('\n');
        }
        String most = number(chart.farthestX());
        text.append(" ".repeat(MARGIN))
                .append('+')
                .append("-".repeat(cells[0].length))
                .append('\n');
        text.append(" ".repeat(MARGIN + 1))
                .append('0')
                .append(" ".repeat(Math.max(1, cells[0].length - 1 - most.length())))
                .append(most)
                .append('\n');
        text.append(" ".repeat(MARGIN + 1)).append(chart.across()).append('\n');
        for (int i = 0; i < chart.series().size(); i++) {
            text.append(" ".repeat(MARGIN + 1))
                    .append(letter(i))
                    .append(' ')
                    .append(chart.series().get(i).name())
                    .append('\n');
        }
        return text.toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, value >= 100 || value == Math.rint(value) ? "%.0f" : "%.2f", value);
    }
}
