package witnessmark.document.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;

/** Draws a chart as SVG; the same chart gives the same bytes. */
public final class DrawSvg {

    /** The axes run a little past the farthest point. */
    private static final double ROOM = 1.05;

    private static final Shape DOT = new Ellipse2D.Double(-3.5, -3.5, 7, 7);

    private DrawSvg() {}

    /** One {@code <svg>} element without XML header, to stand alone or inside HTML; width and height in pixels. */
    public static String draw(Chart chart, int width, int height) {
        String series =
                String.join(", ", chart.series().stream().map(Series::name).toList());
        return SvgCanvas.svg(
                ChartLook.name(chart.title()),
                layOut(chart),
                width,
                height,
                chart.title(),
                chart.up() + " / " + chart.across() + ": " + series);
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
        XYPlot plot = new XYPlot(
                data,
                ChartLook.axis(chart.across(), ROOM * chart.farthestX()),
                ChartLook.axis(chart.up(), ROOM * chart.highestY()),
                renderer);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        return ChartLook.noted(ChartLook.withLegend(chart.title(), plot), chart.notes());
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
        renderer.setSeriesPaint(index, ChartLook.INKS.get(index % ChartLook.INKS.size()));
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
