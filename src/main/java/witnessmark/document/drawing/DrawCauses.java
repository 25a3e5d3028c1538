package witnessmark.document.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Paint;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.CombinedDomainCategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.data.category.DefaultCategoryDataset;
import witnessmark.diagnosis.RankedCause;
import witnessmark.document.ShippedFont;
import witnessmark.document.VisibleText;
import witnessmark.document.chart.SvgCanvas;
import witnessmark.language.Texts;

/**
 * Draws the causes as bars: on the left how probable each is, on the right the weight of each finding for it (grey, to
 * the right) and against it (white, to the left), one segment a finding.
 */
public final class DrawCauses {
    /** Narrow, so that its letters can be read on a phone. */
    static final int WIDTH = 470;

    private static final int ROW = 62;
    private static final int LETTERS = 13;

    /** Widest name over the width of the drawing. */
    private static final float NAMES = 0.41f;

    private static final int LINES = 3;

    /** As much of a name as these lines hold. */
    private static final int LONGEST_NAME = 450;

    private static final int SEGMENTS = 8;
    private static final Color DARK = new Color(0x40, 0x40, 0x40);
    private static final Color MIDDLE = new Color(0x8c, 0x8c, 0x8c);

    private DrawCauses() {}

    /** The chart as one SVG element; empty without causes. */
    public static String draw(List<RankedCause> causes, Texts words) {
        if (causes.isEmpty()) {
            return "";
        }
        CategoryAxis names = new CategoryAxis();
        names.setTickLabelFont(ShippedFont.REGULAR.sized(LETTERS));
        names.setMaximumCategoryLabelLines(LINES);
        names.setMaximumCategoryLabelWidthRatio(NAMES);
        // Text is drawn a little wider than the library measures it.
        names.setCategoryLabelPositionOffset(22);
        names.setCategoryMargin(0.3);
        CombinedDomainCategoryPlot both = new CombinedDomainCategoryPlot(names);
        CategoryPlot weights = plot(weights(causes), weightAxis(words));
        weights.setRangeZeroBaselineVisible(true);
        both.add(plot(chances(causes), chanceAxis(words)), 2);
        both.add(weights, 3);
        both.setOrientation(PlotOrientation.HORIZONTAL);
        both.setGap(18);
        both.setBackgroundPaint(Color.WHITE);
        JFreeChart chart = new JFreeChart(null, null, both, false);
        chart.setBackgroundPaint(Color.WHITE);
        return SvgCanvas.svg(
                "causes",
                chart,
                WIDTH,
                70 + ROW * causes.size(),
                words.text("causes.title"),
                words.text("causes.described"));
    }

    private static CategoryPlot plot(DefaultCategoryDataset data, NumberAxis axis) {
        StackedBarRenderer bars = new StackedBarRenderer() {
            @Override
            public Paint getItemPaint(int row, int column) {
                Number value = data.getValue(row, column);
                if (value != null && value.doubleValue() < 0) {
                    return Color.WHITE;
                }
                return row % 2 == 0 ? MIDDLE : Color.LIGHT_GRAY;
            }
        };
        bars.setBarPainter(new StandardBarPainter());
        bars.setShadowVisible(false);
        bars.setDrawBarOutline(true);
        bars.setDefaultOutlinePaint(DARK);
        bars.setDefaultOutlineStroke(new BasicStroke(1.2f));
        bars.setMaximumBarWidth(0.5);
        CategoryPlot plot = new CategoryPlot(data, null, axis, bars);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
        return plot;
    }

    private static NumberAxis chanceAxis(Texts words) {
        NumberAxis axis = axis(words.text("causes.chance"));
        axis.setRange(0, 100);
        return axis;
    }

    private static NumberAxis weightAxis(Texts words) {
        NumberAxis axis = axis(words.text("causes.weights"));
        axis.setNumberFormatOverride(new OddsTicks());
        axis.setAutoRangeIncludesZero(true);
        axis.setLowerMargin(0.1);
        axis.setUpperMargin(0.1);
        return axis;
    }

    private static NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setLabelFont(ShippedFont.REGULAR.sized(LETTERS));
        axis.setTickLabelFont(ShippedFont.REGULAR.sized(LETTERS));
        return axis;
    }

    private static DefaultCategoryDataset chances(List<RankedCause> causes) {
        DefaultCategoryDataset data = new DefaultCategoryDataset();
        for (String name : names(causes)) {
            data.addValue(100 * causes.get(data.getColumnCount()).probability(), Integer.valueOf(0), name);
        }
        return data;
    }

    private static DefaultCategoryDataset weights(List<RankedCause> causes) {
        DefaultCategoryDataset data = new DefaultCategoryDataset();
        List<String> names = names(causes);
        for (int c = 0; c < causes.size(); c++) {
            data.addValue(0, Integer.valueOf(0), names.get(c));
            List<RankedCause.Weight> all = new ArrayList<>(causes.get(c).evidenceFor());
            all.addAll(causes.get(c).evidenceAgainst());
            for (int w = 0; w < Math.min(2 * SEGMENTS, all.size()); w++) {
                data.addValue(all.get(w).decibans(), Integer.valueOf(w + 1), names.get(c));
            }
        }
        return data;
    }

    private static List<String> names(List<RankedCause> causes) {
        List<String> names = new ArrayList<>();
        for (int c = 0; c < causes.size(); c++) {
            names.add((c + 1) + "  " + Svg.cut(VisibleText.of(causes.get(c).title()), LONGEST_NAME, LETTERS));
        }
        return names;
    }
}
