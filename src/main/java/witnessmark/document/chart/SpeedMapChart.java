package witnessmark.document.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Paint;
import java.util.Arrays;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.PaintScale;
import org.jfree.chart.renderer.xy.XYBlockRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.data.xy.DefaultXYZDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;
import witnessmark.triplog.summary.SpeedMap;

/** Time by road speed and engine speed, darker for longer, with each gear's ray: what lies off all rays is no gear. */
public final class SpeedMapChart {
    private SpeedMapChart() {}

    /** Seconds on a logarithmic scale from pale to dark; a moment still shows. */
    private record Darkness(double most) implements PaintScale {
        @Override
        public double getLowerBound() {
            return 0;
        }

        @Override
        public double getUpperBound() {
            return most;
        }

        @Override
        public Paint getPaint(double seconds) {
            double depth = Math.log1p(seconds) / Math.log1p(Math.max(1, most));
            int pale = (int) Math.round(225 - 205 * Math.min(1, depth));
            return new Color(pale, pale, Math.min(255, pale + 25));
        }
    }

    /**
     * One {@code <svg>} element.
     *
     * @param speedFactor true speed factor found in the log, for the rays
     */
    public static String svg(
            String title, SpeedMap map, GearTable table, double speedFactor, int widthPixels, int heightPixels) {
        double kmh = map.kmhBins() * SpeedMap.KMH_STEP;
        double rpm = 1.35 * table.governedRpm();
        XYBlockRenderer blocks = new XYBlockRenderer();
        blocks.setBlockWidth(SpeedMap.KMH_STEP);
        blocks.setBlockHeight(SpeedMap.RPM_STEP);
        blocks.setBlockAnchor(RectangleAnchor.BOTTOM_LEFT);
        double[][] cells = cells(map);
        double most = 0;
        double fastest = 60;
        for (int i = 0; i < cells[2].length; i++) {
            most = Math.max(most, cells[2][i]);
            fastest = Math.max(fastest, cells[0][i] + 4 * SpeedMap.KMH_STEP);
        }
        blocks.setPaintScale(new Darkness(most));
        DefaultXYZDataset data = new DefaultXYZDataset();
        data.addSeries("seconds", cells);
        double right = Math.min(kmh, fastest);
        XYPlot plot = new XYPlot(
                data, ChartLook.axis("road speed (km/h)", right), ChartLook.axis("engine speed (rpm)", rpm), blocks);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDataset(1, rays(table, speedFactor, right, rpm));
        plot.setRenderer(1, thin(table));
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        return SvgCanvas.svg(
                ChartLook.name(title),
                ChartLook.chart(title, plot),
                widthPixels,
                heightPixels,
                title,
                "Time by road speed and engine speed, darker for longer, with a ray for each gear");
    }

    private static double[][] cells(SpeedMap map) {
        int filled = 0;
        double[][] all = new double[3][map.kmhBins() * map.rpmBins()];
        for (int c = 0; c < map.kmhBins(); c++) {
            for (int r = 0; r < map.rpmBins(); r++) {
                if (map.seconds(c, r) > 0) {
                    all[0][filled] = c * SpeedMap.KMH_STEP;
                    all[1][filled] = r * SpeedMap.RPM_STEP;
                    all[2][filled++] = map.seconds(c, r);
                }
            }
        }
        double[][] cells = new double[3][];
        for (int i = 0; i < 3; i++) {
            cells[i] = Arrays.copyOf(all[i], filled);
        }
        return cells;
    }

    private static XYSeriesCollection rays(GearTable table, double factor, double kmh, double rpm) {
        XYSeriesCollection rays = new XYSeriesCollection();
        for (KnobGear gear : table.gears()) {
            if (!gear.isReverse()) {
                double slope = gear.ratio() * table.outputRpmPerKmh() * factor;
                double far = Math.min(kmh, rpm / slope);
                XYSeries ray = new XYSeries(gear.name(), false);
                ray.add(0, 0);
                ray.add(far, far * slope);
                rays.addSeries(ray);
            }
        }
        return rays;
    }

    private static XYLineAndShapeRenderer thin(GearTable table) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        for (int i = 0; i < table.gears().size(); i++) {
            renderer.setSeriesPaint(i, ChartLook.INKS.get(1));
            renderer.setSeriesStroke(i, new BasicStroke(0.7f));
        }
        return renderer;
    }
}
