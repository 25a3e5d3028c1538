package witnessmark.document.chart;

import java.awt.Color;
import java.awt.Font;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.RectangleEdge;
import witnessmark.document.ShippedFont;

/** What all charts have in common: inks, fonts, axes from zero, a white ground. */
final class ChartLook {
    static final List<Color> INKS =
            List.of(new Color(0x1F4E79), new Color(0xB45309), new Color(0x4B5563), new Color(0x166534));
    static final Color ALARM = new Color(0x991B1B);
    private static final Font PLAIN = ShippedFont.REGULAR.sized(12);

    private ChartLook() {}

    /** An axis from zero to {@code most}, numbers with a point in every country. */
    static NumberAxis axis(String label, double most) {
        NumberAxis axis = new NumberAxis(label);
        axis.setNumberFormatOverride(new DecimalFormat("0.##", DecimalFormatSymbols.getInstance(Locale.ROOT)));
        axis.setRange(0, most > 0 ? most : 1);
        axis.setLabelFont(PLAIN);
        axis.setTickLabelFont(PLAIN);
        return axis;
    }

    static JFreeChart chart(String title, Plot plot) {
        JFreeChart chart = new JFreeChart(title, ShippedFont.REGULAR.sized(15), plot, false);
        chart.setBackgroundPaint(Color.WHITE);
        return chart;
    }

    static JFreeChart withLegend(String title, Plot plot) {
        JFreeChart chart = new JFreeChart(title, ShippedFont.REGULAR.sized(15), plot, true);
        chart.setBackgroundPaint(Color.WHITE);
        chart.getLegend().setItemFont(PLAIN);
        return chart;
    }

    /** The chart with these lines under it. */
    static JFreeChart noted(JFreeChart chart, List<String> notes) {
        for (String note : notes) {
            TextTitle line = new TextTitle(note, PLAIN);
            line.setPosition(RectangleEdge.BOTTOM);
            chart.addSubtitle(line);
        }
        return chart;
    }

    /** Tells a drawing's ids from those of other drawings on a page. */
    static String name(String title) {
        return title.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    }
}
