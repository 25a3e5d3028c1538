package witnessmark.document.chart;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import witnessmark.document.VisibleText;

/** Writes a chart of the chart library as one SVG element, which can stand with others on one page. */
public final class SvgCanvas {
    private static final String SVG = "http://www.w3.org/2000/svg";

    private SvgCanvas() {}

    /**
     * The chart as SVG.
     *
     * @param description what it shows, for those who cannot see it
     * @param name tells its ids from those of other drawings on the page
     */
    public static String svg(String name, JFreeChart chart, int width, int height, String title, String description) {
        Document document = emptyDocument();
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment("");
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
                return name + "-" + super.generateID(prefix);
            }
        });
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new Dimension(width, height));
        chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        Element root = graphics.getRoot();
        root.setAttribute("viewBox", "0 0 " + width + " " + height);
        root.setAttribute("role", "img");
        root.setAttribute("aria-label", title);
        say(document, root, "desc", description);
        say(document, root, "title", title);
        return written(graphics, root);
    }

    private static void say(Document document, Element root, String element, String words) {
        Element told = document.createElementNS(SVG, element);
        told.setTextContent(VisibleText.of(words));
        root.insertBefore(told, root.getFirstChild());
    }

    private static String written(SVGGraphics2D graphics, Element root) {
        StringWriter out = new StringWriter();
        try {
            graphics.stream(root, out, true, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
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
            throw new IllegalStateException("this Java has no XML; run it on a full one", e);
        }
    }
}
