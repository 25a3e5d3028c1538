package witnessmark.document.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.event.HabitEvent;
import witnessmark.triplog.summary.Timeline;

/** Road speed and engine speed along the covered time of a trip, with the events marked where they happened. */
public final class TripTimelineChart {
    private static final int MOST_MARKS = 500;

    private TripTimelineChart() {}

    /**
     * One {@code <svg>} element; an empty timeline gives empty axes.
     *
     * @param events marked; beyond some hundred, the first ones
     */
    public static String svg(
            String title,
            List<Timeline.Bin> bins,
            List<HabitEvent> events,
            ChartLabels words,
            int widthPixels,
            int heightPixels) {
        double minutes = bins.stream().mapToDouble(Timeline.Bin::seconds).sum() / 60;
        XYSeries road = new XYSeries(words.axis("road-highest", Unit.KILOMETRE_PER_HOUR), false);
        XYSeries engine = new XYSeries(words.axis("engine-highest", Unit.RPM), false);
        double at = 0;
        for (Timeline.Bin bin : bins) {
            road.add(at + bin.seconds() / 120, words.speed(bin.highestKmh()));
            engine.add(at + bin.seconds() / 120, bin.highestRpm());
            at += bin.seconds() / 60;
        }
        CombinedDomainXYPlot plot =
                new CombinedDomainXYPlot(ChartLook.axis(words.say("covered-time") + " (min)", minutes));
        plot.add(
                panel(
                        road,
                        marks(bins, events, words.say("event"), event -> words.speed(event.roadKmh())),
                        words.units().shown(Unit.KILOMETRE_PER_HOUR),
                        ChartLook.INKS.get(0)),
                1);
        plot.add(
                panel(
                        engine,
                        marks(bins, events, words.say("event-engine"), HabitEvent::engineRpm),
                        Unit.RPM,
                        ChartLook.INKS.get(1)),
                1);
        return SvgCanvas.svg(
                ChartLook.name(title),
                ChartLook.withLegend(title, plot),
                widthPixels,
                heightPixels,
                title,
                words.say("timeline-described"));
    }

    private static XYSeries marks(
            List<Timeline.Bin> bins, List<HabitEvent> events, String name, ToDoubleFunction<HabitEvent> height) {
        XYSeries marks = new XYSeries(name, false);
        for (HabitEvent event : events.stream().limit(MOST_MARKS).toList()) {
            double minute = minuteOf(bins, event.startMicros());
            if (minute >= 0) {
                marks.add(minute, height.applyAsDouble(event));
            }
        }
        return marks;
    }

    /** Minute on the covered time of a moment of the log, or -1 if no bin holds it. */
    private static double minuteOf(List<Timeline.Bin> bins, long micros) {
        double before = 0;
        for (Timeline.Bin bin : bins) {
            double inside = (micros - bin.startMicros()) / 1e6;
            if (inside >= 0 && inside <= bin.seconds() + 1) {
                return (before + Math.min(inside, bin.seconds())) / 60;
            }
            before += bin.seconds();
        }
        return -1;
    }

    private static XYPlot panel(XYSeries line, XYSeries marks, Unit unit, Color ink) {
        XYSeriesCollection data = new XYSeriesCollection();
        data.addSeries(line);
        data.addSeries(marks);
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
        renderer.setDrawSeriesLineAsPath(true);
        renderer.setSeriesPaint(0, ink);
        renderer.setSeriesStroke(0, new BasicStroke(1.4f));
        renderer.setSeriesShapesVisible(0, false);
        renderer.setSeriesPaint(1, ChartLook.ALARM);
        renderer.setSeriesLinesVisible(1, false);
        renderer.setSeriesShape(1, new Ellipse2D.Double(-3, -3, 6, 6));
        renderer.setSeriesVisibleInLegend(1, unit != Unit.RPM);
        NumberAxis up = ChartLook.axis(unit.symbol(), 1.1 * Math.max(1, Math.max(highest(line), highest(marks))));
        XYPlot plot = new XYPlot(data, null, up, renderer);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        return plot;
    }

    private static double highest(XYSeries series) {
        return series.isEmpty() ? 0 : series.getMaxY();
    }
}
