package witnessmark.document.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.document.Dossier;
import witnessmark.document.chart.Chart;
import witnessmark.document.chart.ChartLabels;
import witnessmark.document.chart.DrawSvg;
import witnessmark.document.chart.ShiftPlanChart;
import witnessmark.document.chart.SlipEnergyChart;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.DrawUpCoachingCard;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.gearbox.start.StartGears;
import witnessmark.language.Language;

/** What the profile of the truck gives for its documents: figures for the driver's card, and charts. */
public final class TruckFigures {
    /** Narrow, so that their letters can be read on a phone. */
    private static final int WIDTH = 440;

    private static final int HEIGHT = 340;

    private TruckFigures() {}

    /** The figures for the driver by name, in the words and from the computation of the truck's own card. */
    static Map<String, Field> forDriver(TruckProfile truck, Language language, SpeedUnits units) {
        CoachingCard card = new DrawUpCoachingCard(truck).card();
        CoachingTexts words = CoachingTexts.in(language);
        Map<String, Field> fields = new LinkedHashMap<>();
        if (!card.ceilings().isEmpty()) {
            // One row, so that the card of a box with ten low-range gears still fits its sheet.
            fields.put(
                    "ceiling",
                    new Field(
                            words.say("ceiling"),
                            card.ceilings().stream().map(c -> c.line(units)).collect(Collectors.joining("; "))));
        }
        if (!card.plan().shifts().isEmpty()) {
            fields.put("shifts", new Field(words.say("shifts"), card.shiftsOnDial()));
        }
        if (!card.plan().gaps().isEmpty()) {
            fields.put(
                    "start-again",
                    new Field(
                            words.say("start-again-in"),
                            card.plan().gaps().stream()
                                    .map(gap -> gap.to().id())
                                    .collect(Collectors.joining(", "))));
        }
        start(fields, words, "loaded", card.loaded());
        start(fields, words, "empty", card.empty());
        card.drops()
                .forEach(drop -> fields.put(
                        "drop-" + EnumWord.of(drop.kind()),
                        new Field(words.say("drop-" + EnumWord.of(drop.kind())), drop.onDial() + " rpm")));
        fields.put("cruise", new Field(words.say("cruise"), card.cruise(units)));
        return fields;
    }

    private static void start(Map<String, Field> fields, CoachingTexts words, String key, StartGears start) {
        start.lowest()
                .flatMap(low -> start.highest().map(high -> words.startGears(low.id(), high.id())))
                .ifPresent(gears -> fields.put(key, new Field(words.say(key), gears)));
    }

    /** The charts for the evidence record. */
    static List<Dossier.Figure> charts(TruckProfile truck, ChartLabels words) {
        List<Dossier.Figure> figures = new ArrayList<>();
        CoachingCard card = new DrawUpCoachingCard(truck).card();
        if (!card.plan().shifts().isEmpty()) {
            figures.add(figure(
                    ShiftPlanChart.of(truck, card.plan(), words), words.texts().text("chart-plan-says")));
        }
        if (truck.hasRange()) {
            List<Gear> low = truck.gears().forwardIn(Range.LOW);
            figures.add(figure(
                    SlipEnergyChart.of(truck, low.get(low.size() - 1), words),
                    words.texts().text("chart-slip-says")));
        }
        return figures;
    }

    private static Dossier.Figure figure(Chart chart, String says) {
        return new Dossier.Figure(chart.title(), says, DrawSvg.draw(chart, WIDTH, HEIGHT));
    }
}
