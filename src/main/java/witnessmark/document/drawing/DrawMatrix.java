package witnessmark.document.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import witnessmark.diagnosis.EvidenceMatrix;
import witnessmark.document.ShippedFont;
import witnessmark.document.chart.SvgCanvas;
import witnessmark.document.template.VisibleText;

/**
 * Draws the evidence matrix: a full circle where a finding speaks for a class, a hollow one where it speaks against it,
 * nothing where it is silent; the area goes with the weight.
 */
public final class DrawMatrix {
    /** Below this weight a finding is silent about a class, in decibans. */
    public static final double SILENT = 0.5;

    private static final int WIDTH = 900;
    private static final int ROW = 26;
    private static final double LARGEST_RADIUS = 12;
    private static final double LARGEST_DECIBANS = 20;

    private final EvidenceMatrix matrix;

    private DrawMatrix(EvidenceMatrix matrix) {
        this.matrix = matrix;
    }

    /**
     * The chart as one SVG element; empty without findings.
     *
     * @param classTitles titles of the matrix's classes, in its order
     */
    public static String draw(EvidenceMatrix matrix, List<String> classTitles) {
        if (matrix.rows().isEmpty()) {
            return "";
        }
        return new DrawMatrix(matrix).drawn(classTitles);
    }

    private String drawn(List<String> classTitles) {
        XYSeriesCollection data = new XYSeriesCollection();
        data.addSeries(points(true));
        data.addSeries(points(false));
        XYPlot plot = new XYPlot(data, classes(classTitles), findings(), new Circles(data));
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        JFreeChart chart = new JFreeChart(null, null, plot, false);
        chart.setBackgroundPaint(Color.WHITE);
        return SvgCanvas.svg(
                "matrix",
                chart,
                WIDTH,
                210 + ROW * matrix.rows().size(),
                "Evidence matrix: findings against classes of causes",
                "Full circle: speaks for the class. Hollow circle: against it. No circle: silent. The figures stand in"
                        + " the table.");
    }

    private XYSeries points(boolean speaksFor) {
        XYSeries series = new XYSeries(speaksFor ? "for" : "against", false, true);
        for (int row = 0; row < matrix.rows().size(); row++) {
            for (int column = 0; column < matrix.classes().size(); column++) {
                double weight = weight(row, column);
                if (Math.abs(weight) >= SILENT && weight > 0 == speaksFor) {
                    series.add(column, row);
                }
            }
        }
        return series;
    }

    private double weight(int row, int column) {
        return matrix.rows().get(row).decibans().get(matrix.classes().get(column));
    }

    private static NumberAxis classes(List<String> titles) {
        SymbolAxis axis = axis(titles);
        axis.setVerticalTickLabels(true);
        axis.setTickLabelFont(ShippedFont.REGULAR.sized(12));
        return axis;
    }

    private NumberAxis findings() {
        SymbolAxis axis = axis(matrix.rows().stream()
                .map(r -> Svg.cut(VisibleText.of(r.title()) + stateWord(r.state()), 420, 12))
                .toList());
        axis.setInverted(true);
        return axis;
    }

    private static String stateWord(String state) {
        return state.equals("present") ? "" : " (" + state + ")";
    }

    private static SymbolAxis axis(List<String> names) {
        SymbolAxis axis = new SymbolAxis("", names.toArray(String[]::new));
        axis.setRange(-0.5, names.size() - 0.5);
        axis.setGridBandsVisible(false);
        axis.setTickLabelFont(ShippedFont.REGULAR.sized(12));
        // Text is drawn a little wider than the library measures it.
        axis.setTickLabelInsets(new RectangleInsets(2, 4, 2, 18));
        axis.setLabelFont(ShippedFont.REGULAR.sized(12));
        return axis;
    }

    /** Circles whose area goes with the weight of the cell. */
    private final class Circles extends XYLineAndShapeRenderer {
        private static final long serialVersionUID = 1;

        private final transient XYSeriesCollection data;

        Circles(XYSeriesCollection data) {
            super(false, true);
            this.data = data;
            setUseFillPaint(true);
            setDrawOutlines(true);
            setUseOutlinePaint(true);
            setDefaultOutlinePaint(Color.BLACK);
            setAutoPopulateSeriesOutlinePaint(false);
            setAutoPopulateSeriesStroke(false);
            setDefaultOutlineStroke(new BasicStroke(1.6f));
            setAutoPopulateSeriesOutlineStroke(false);
        }

        @Override
        public Shape getItemShape(int series, int item) {
            int column = (int) data.getXValue(series, item);
            int row = (int) data.getYValue(series, item);
            double share = Math.min(1, Math.abs(weight(row, column)) / LARGEST_DECIBANS);
            double radius = Math.max(3, LARGEST_RADIUS * Math.sqrt(share));
            return new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
        }

        @Override
        public Paint getItemFillPaint(int series, int item) {
            return series == 0 ? new Color(0x30, 0x30, 0x30) : Color.WHITE;
        }
    }
}
