package witnessmark.document.chart;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.w3c.dom.Document;

/** Writes a laid out plot as one {@code <svg>} element; the same plot gives the same bytes with the same fonts. */
final class PlotSvg {
    private static final String SVG = "http://www.w3.org/2000/svg";
    static final Color INK = new Color(0x1F4E79);
    static final Color SECOND_INK = new Color(0xB45309);
    static final Color ALARM = new Color(0x991B1B);

    private PlotSvg() {}

    static String svg(String title, XYPlot plot, boolean legend, int width, int height) {
        JFreeChart chart = new JFreeChart(title, new Font(Font.SANS_SERIF, Font.BOLD, 15), plot, legend);
        chart.setBackgroundPaint(Color.WHITE);
        SVGGraphics2D graphics = new SVGGraphics2D(emptyDocument());
        graphics.setSVGCanvasSize(new Dimension(width, height));
        chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        StringWriter out = new StringWriter();
        try {
            graphics.stream(out, true);
        } catch (IOException e) {
            throw new UncheckedIOException("chart: '" + title + "' cannot be written", e);
        }
        String whole = out.toString().replace("\r\n", "\n");
        return whole.substring(whole.indexOf("<svg"));
    }

    static NumberAxis axis(String label, double most) {
        NumberAxis axis = new NumberAxis(label);
        axis.setNumberFormatOverride(new DecimalFormat("0.##", DecimalFormatSymbols.getInstance(Locale.ROOT)));
        axis.setRange(0, most > 0 ? most : 1);
        return axis;
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
}
