package witnessmark.document.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.shift.AnalyseRangeShift;
import witnessmark.gearbox.shift.RangeShift;
import witnessmark.gearbox.shift.RangeShiftQuestion;
import witnessmark.gearbox.speed.RoadSpeeds;

/** Slip energy of a range downshift over road speed, from direct and, where high range splits, from the split. */
public final class SlipEnergyChart {

    private static final int POINTS = 41;
    /** How far past the ceiling the curves run. */
    private static final double REACH = 2;

    private SlipEnergyChart() {}

    /** For a shift into that low-range gear; throws where the gear is not one, or is reverse. */
    public static Chart of(TruckProfile truck, Gear low, ChartLabels words) {
        if (low.range() != Range.LOW || low.reverse()) {
            throw new QuestionRefused(
                    "chart: gear " + low.id() + " is not a forward gear of low range", "give one that is");
        }
        double ceiling = new RoadSpeeds(truck).ceiling(low).roadSpeed().value();
        AnalyseRangeShift analysis = new AnalyseRangeShift(truck);
        List<Series> series = new ArrayList<>();
        Gear slowest = truck.gears().forwardIn(Range.HIGH).get(0);
        for (Gear from :
                truck.gears().forwardIn(Range.HIGH).subList(0, truck.splitter().isPresent() ? 2 : 1)) {
            DoubleFunction<RangeShift> shift = kmh -> analysis.of(RangeShiftQuestion.proper(from, low, kmh));
            series.add(curve(
                    name(from, words),
                    from.equals(slowest) ? Style.FULL_LINE : Style.DASHED_LINE,
                    ceiling,
                    shift,
                    words));
        }
        // An overdrive that is put in direct before the cone works costs the cone no more than direct.
        if (series.size() == 2 && series.get(0).points().equals(series.get(1).points())) {
            series = new ArrayList<>(List.of(new Series(
                    words.say("from-either"), Style.FULL_LINE, series.get(0).points())));
        }
        double top = series.stream()
                .flatMap(line -> line.points().stream())
                .mapToDouble(Point::y)
                .max()
                .orElseThrow();
        series.add(new Series(
                words.say("ceiling", low.id()),
                Style.DOTTED_LINE,
                List.of(new Point(words.speed(ceiling), 0), new Point(words.speed(ceiling), top))));
        return new Chart(
                words.titleOf(truck) + ": " + words.say("slip", low.id()),
                words.axis("road-speed", Unit.KILOMETRE_PER_HOUR),
                words.axis("slip-energy", Unit.KILOJOULE),
                series,
                ShiftPlanChart.ceilings(truck, words).stream().toList());
    }

    private static String name(Gear from, ChartLabels words) {
        return words.say(
                switch (from.split()) {
                    case SPLIT -> "from-split";
                    case DIRECT -> "from-direct";
                    case NONE -> "from-high";
                });
    }

    private static Series curve(
            String name, Style style, double ceiling, DoubleFunction<RangeShift> shift, ChartLabels words) {
        List<Point> points = IntStream.range(0, POINTS)
                .mapToDouble(i -> Math.min(200, REACH * ceiling * i / (POINTS - 1)))
                .mapToObj(kmh -> new Point(
                        words.speed(kmh),
                        words.shown(shift.apply(kmh).cone().slipEnergy().value(), Unit.KILOJOULE)))
                .toList();
        return new Series(name, style, points);
    }
}
