package witnessmark.document.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;
import witnessmark.document.font.ShippedFont;

/** Draws a chart as SVG; the same chart gives the same bytes. */
public final class DrawSvg {

    private static final List<Color> INKS =
            List.of(new Color(0x1F4E79), new Color(0xB45309), new Color(0x4B5563), new Color(0x166534));
    private static final Shape DOT = new Ellipse2D.Double(-3.5, -3.5, 7, 7);
    private static final Font PLAIN = ShippedFont.REGULAR.sized(12);

    private DrawSvg() {}

    /** One {@code <svg>} element without XML header, to stand alone or inside HTML; width and height in pixels. */
    public static String draw(Chart chart, int width, int height) {
        String name = chart.title().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        String series =
                String.join(", ", chart.series().stream().map(Series::name).toList());
        return SvgCanvas.svg(
                name,
                layOut(chart),
                width,
                height,
                chart.title(),
                chart.up() + " over " + chart.across() + ": " + series);
    }

    private static JFreeChart layOut(Chart chart) {
        XYSeriesCollection data = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
        // One path per series: dashes then run on from point to point.
        renderer.setDrawSeriesLineAsPath(true);
        for (int i = 0; i < chart.series().size(); i++) {
            data.addSeries(series(chart.series().get(i)));
            style(renderer, i, chart.series().get(i).style());
        }
        XYPlot plot =
                new XYPlot(data, axis(chart.across(), chart.farthestX()), axis(chart.up(), chart.highestY()), renderer);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        JFreeChart drawn = new JFreeChart(chart.title(), ShippedFont.REGULAR.sized(15), plot, true);
        drawn.setBackgroundPaint(Color.WHITE);
        drawn.getLegend().setItemFont(PLAIN);
        return drawn;
    }

    private static NumberAxis axis(String label, double most) {
        NumberAxis axis = new NumberAxis(label);
        axis.setNumberFormatOverride(new DecimalFormat("0.##", DecimalFormatSymbols.getInstance(Locale.ROOT)));
        axis.setRange(0, most > 0 ? 1.05 * most : 1);
        axis.setLabelFont(PLAIN);
        axis.setTickLabelFont(PLAIN);
        return axis;
    }

    private static XYSeries series(Series line) {
        XYSeries series = new XYSeries(line.name(), false, true);
        for (Point point : line.points()) {
            series.add(point.x(), point.y());
        }
        return series;
    }

    private static void style(XYLineAndShapeRenderer renderer, int index, Style style) {
        boolean marks = style == Style.MARKS;
        renderer.setSeriesLinesVisible(index, !marks);
        renderer.setSeriesShapesVisible(index, marks);
        renderer.setSeriesShape(index, DOT);
        renderer.setSeriesPaint(index, INKS.get(index % INKS.size()));
        renderer.setSeriesStroke(index, stroke(style));
    }

    private static BasicStroke stroke(Style style) {
        return switch (style) {
            case FULL_LINE, MARKS -> new BasicStroke(2);
            case DASHED_LINE -> dashed(8, 4);
            case DOTTED_LINE -> dashed(2, 4);
        };
    }

    private static BasicStroke dashed(float on, float off) {
        return new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {on, off}, 0);
    }
}
