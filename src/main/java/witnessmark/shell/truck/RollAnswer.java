package witnessmark.shell.truck;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.Symbol;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.gearbox.evidence.RollingEvidence;
import witnessmark.gearbox.exposure.Exposure;
import witnessmark.gearbox.exposure.Exposure.Mode;
import witnessmark.gearbox.exposure.Exposure.Rub;
import witnessmark.gearbox.exposure.ExposureSymbols;
import witnessmark.gearbox.exposure.Journey;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.FigureText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;

/** Works out how far the floating gears rub in a coast or a tow, in words of a command. */
final class RollAnswer {

    /** The roll as typed; one of distance and minutes is given. */
    record Words(
            String range,
            String speed,
            String unit,
            String distance,
            Unit plainDistance,
            String minutes,
            boolean formulas) {}

    private RollAnswer() {}

    static TruckAnswer of(TruckProfile truck, Mode mode, Words words) {
        Exposure exposure = Exposure.of(truck, mode, RoadOptions.range(words.range()), journey(words));
        List<Symbol> symbols = ExposureSymbols.of(truck, exposure);
        ComputedFinding finding = RollingEvidence.of(truck, exposure);
        String id = String.format(
                Locale.ROOT,
                "%s-%s-range-%.0f-km",
                word(mode),
                words.range(),
                exposure.journey().km());
        return new TruckAnswer(
                Optional.of(truck),
                page -> print(page, truck, exposure, symbols, finding, words.formulas()),
                json(truck, exposure, symbols),
                List.of(finding),
                id);
    }

    private static Journey journey(Words words) {
        double kmh = RoadOptions.speed("--speed", words.speed(), words.unit()).value();
        if (words.distance().isEmpty() == words.minutes().isEmpty()) {
            throw new WrongUsage("give one of --distance (km, or with mi behind) and --minutes");
        }
        return words.minutes().isEmpty()
                ? Journey.overDistance(
                        kmh,
                        TypedFigure.quantity("--distance", words.distance(), words.plainDistance(), Unit.KILOMETRE))
                : Journey.overMinutes(
                        kmh, TypedFigure.quantity("--minutes", words.minutes(), Unit.MINUTE, Unit.MINUTE));
    }

    private static String word(Mode mode) {
        return mode.name().toLowerCase(Locale.ROOT);
    }

    private static void print(
            Page page,
            TruckProfile truck,
            Exposure exposure,
            List<Symbol> symbols,
            ComputedFinding finding,
            boolean formulas) {
        Unusual.print(page, Unusual.of(Figure.given(exposure.journey().kmh(), Unit.KILOMETRE_PER_HOUR)));
        page.line(TruckText.title(truck) + ": " + word(exposure.mode()) + " of "
                + km(page, exposure.journey().km())
                + " at " + speed(page, exposure) + ", "
                + exposure.range().name().toLowerCase(Locale.ROOT)
                + " range left in, "
                + (exposure.mode() == Mode.COAST ? "engine idling" : "engine off, drive wheels turning"));
        page.blank();
        if (exposure.shaft() != Exposure.ShaftSpeed.ORDINARY) {
            page.strong("Too fast by itself: " + exposure.shaft().words());
        }
        page.strong("The worst gear slides " + exposure.worst().distance().text(page.units()) + " on the mainshaft");
        page.item(finding.summary());
        page.item("mainshaft speed " + exposure.mainshaft().text() + ", "
                + ScreenFigures.times(exposure.timesOrdinary().value()) + " the most in ordinary driving");
        if (exposure.mode() == Mode.TOW) {
            page.item("best on a trailer; else lift all drive axles, pull the axle shafts or take the driveline off;"
                    + " the lever in neutral and the pedal down protect nothing");
        }
        page.blank();
        page.drawn(String.format(
                "  gear   turns, rpm   against shaft, rpm   %12s   slides",
                "rubs at, " + rubUnit(page).symbol()));
        exposure.gears().forEach(rub -> page.drawn(row(page, rub)));
        if (exposure.gears().stream().anyMatch(Rub::onPocketBearing)) {
            page.line("  * direct: no gear floats here, the pocket bearing takes the difference instead");
        }
        new FigureText(page, formulas).print(exposure.figures(), symbols);
    }

    private static String row(Page page, Rub rub) {
        return String.format(
                Locale.ROOT,
                "  %-5s %11s   %18s   %12.2f   %s",
                rub.lever().name() + (rub.onPocketBearing() ? "*" : ""),
                rub.gearSpeed().number(),
                rub.difference().number(),
                rub.speed().in(rubUnit(page)).value(),
                rub.distance().text(page.units()));
    }

    private static Unit rubUnit(Page page) {
        return page.units().shown(Unit.METRE_PER_SECOND);
    }

    private static String km(Page page, double km) {
        return Figure.given(km, Unit.KILOMETRE).text(page.units());
    }

    private static String speed(Page page, Exposure exposure) {
        return Figure.given(exposure.journey().kmh(), Unit.KILOMETRE_PER_HOUR).text(page.units());
    }

    private static Map<String, Object> json(TruckProfile truck, Exposure exposure, List<Symbol> symbols) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("truck", truck.id());
        json.put("mode", word(exposure.mode()));
        json.put("range", exposure.range() == Range.LOW ? "low" : "high");
        json.put("kmh", exposure.journey().kmh());
        json.put("km", exposure.journey().km());
        Unusual.put(json, Unusual.of(Figure.given(exposure.journey().kmh(), Unit.KILOMETRE_PER_HOUR)));
        json.put("mainshaft", FigureJson.of(exposure.mainshaft()));
        json.put("timesOrdinary", FigureJson.of(exposure.timesOrdinary()));
        json.put("shaftSpeed", exposure.shaft().words());
        json.put("oilThrow", exposure.oilThrow().words());
        json.put("gears", exposure.gears().stream().map(RollAnswer::json).toList());
        json.put("inputs", FigureJson.of(symbols));
        return json;
    }

    private static Map<String, Object> json(Rub rub) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("gear", rub.lever().name());
        json.put("onPocketBearing", rub.onPocketBearing());
        json.put("gearSpeed", FigureJson.of(rub.gearSpeed()));
        json.put("difference", FigureJson.of(rub.difference()));
        json.put("rubbingSpeed", FigureJson.of(rub.speed()));
        json.put("distance", FigureJson.of(rub.distance()));
        return json;
    }
}
