package witnessmark.document.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.w3c.dom.Document;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;

/** Draws a chart as SVG; the same chart gives the same bytes on one machine with one set of fonts. */
public final class DrawSvg {

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final List<Color> INKS =
            List.of(new Color(0x1F4E79), new Color(0xB45309), new Color(0x4B5563), new Color(0x166534));
    private static final Shape DOT = new Ellipse2D.Double(-3.5, -3.5, 7, 7);
    private static final Font PLAIN = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

    private DrawSvg() {}

    /** One {@code <svg>} element without XML header, to stand alone or inside HTML; width and height in pixels. */
    public static String draw(Chart chart, int width, int height) {
        SVGGraphics2D graphics = new SVGGraphics2D(emptyDocument());
        graphics.setSVGCanvasSize(new Dimension(width, height));
        layOut(chart).draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        StringWriter out = new StringWriter();
        try {
            graphics.stream(out, true);
        } catch (IOException e) {
            throw new UncheckedIOException("chart: '" + chart.title() + "' cannot be written", e);
        }
        String whole = out.toString().replace("\r\n", "\n");
        return whole.substring(whole.indexOf("<svg"));
    }

    private static Document emptyDocument() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("chart: this Java has no XML; run it on a full one", e);
        }
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
        JFreeChart drawn = new JFreeChart(chart.title(), new Font(Font.SANS_SERIF, Font.BOLD, 15), plot, true);
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
