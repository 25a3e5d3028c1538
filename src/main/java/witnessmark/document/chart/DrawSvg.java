package witnessmark.document.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler.LegendPosition;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.w3c.dom.Document;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;

/** Draws a chart as SVG; the same chart gives the same bytes on one machine with one set of fonts. */
public final class DrawSvg {

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final List<Color> INKS =
            List.of(new Color(0x1F4E79), new Color(0xB45309), new Color(0x4B5563), new Color(0x166534));

    private DrawSvg() {}

    /** One {@code <svg>} element without XML header, to stand alone or inside HTML; width and height in pixels. */
    public static String draw(Chart chart, int width, int height) {
        SVGGraphics2D graphics = new SVGGraphics2D(emptyDocument());
        graphics.setSVGCanvasSize(new Dimension(width, height));
        layOut(chart, width, height).paint(graphics, width, height);
        StringWriter out = new StringWriter();
        try {
            graphics.stream(out, true);
        } catch (IOException e) {
            throw new UncheckedIOException("chart: '" + chart.title() + "' cannot be written", e);
        }
        String whole = out.toString();
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

    private static XYChart layOut(Chart chart, int width, int height) {
        XYChart drawn = new XYChartBuilder()
                .width(width)
                .height(height)
                .title(chart.title())
                .xAxisTitle(chart.across())
                .yAxisTitle(chart.up())
                .build();
        drawn.getStyler()
                .setLegendPosition(LegendPosition.OutsideS)
                .setChartBackgroundColor(Color.WHITE)
                .setChartTitleFont(new Font(Font.SANS_SERIF, Font.BOLD, 14))
                .setLegendFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        drawn.getStyler().setXAxisMin(0.0).setYAxisMin(0.0);
        drawn.getStyler().setXAxisDecimalPattern("0").setYAxisDecimalPattern("0.##");
        drawn.getStyler().setLocale(Locale.ROOT);
        for (int i = 0; i < chart.series().size(); i++) {
            add(drawn, chart.series().get(i), INKS.get(i % INKS.size()));
        }
        return drawn;
    }

    private static void add(XYChart drawn, Series line, Color ink) {
        XYSeries series = drawn.addSeries(
                line.name(),
                line.points().stream().mapToDouble(Point::x).toArray(),
                line.points().stream().mapToDouble(Point::y).toArray());
        BasicStroke stroke =
                switch (line.style()) {
                    case FULL_LINE -> SeriesLines.SOLID;
                    case DASHED_LINE -> SeriesLines.DASH_DASH;
                    case DOTTED_LINE -> SeriesLines.DOT_DOT;
                    case MARKS -> SeriesLines.NONE;
                };
        series.setMarkerColor(ink).setLineStyle(stroke).setLineColor(ink);
        series.setMarker(line.style() == Chart.Style.MARKS ? SeriesMarkers.DIAMOND : SeriesMarkers.NONE);
    }
}
