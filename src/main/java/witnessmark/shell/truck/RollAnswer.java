package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
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
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;

/** Works out how far the floating gears rub in a coast or a tow, in words of a command. */
final class RollAnswer {

    /** The roll as typed; one of distance and minutes is given. */
    record Words(
            Range range,
            String speed,
            String unit,
            String distance,
            Unit plainDistance,
            String minutes,
            boolean formulas) {}

    private RollAnswer() {}

    static TruckAnswer of(TruckProfile truck, Mode mode, Words words) {
        Exposure exposure = Exposure.of(truck, mode, words.range(), journey(words));
        List<Symbol> symbols = ExposureSymbols.of(truck, exposure);
        ComputedFinding finding = RollingEvidence.of(truck, exposure);
        String id = String.format(
                Locale.ROOT,
                "%s-%s-range-%.0f-km",
                word(mode),
                words.range().name().toLowerCase(Locale.ROOT),
                exposure.journey().km());
        return new TruckAnswer(
                Optional.of(truck),
                page -> print(page, truck, exposure, symbols, finding, words.formulas()),
                Form.of(truck, exposure, symbols),
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
        new FigureText(page, FigureText.Formulas.of(formulas)).print(exposure.figures(), symbols);
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

    private record Form(
            String truck,
            Mode mode,
            Range range,
            double kmh,
            double km,
            Optional<List<String>> unusual,
            FigureJson mainshaft,
            FigureJson timesOrdinary,
            String shaftSpeed,
            String oilThrow,
            List<RubForm> gears,
            List<FigureJson.Letter> inputs) {
        static Form of(TruckProfile truck, Exposure exposure, List<Symbol> symbols) {
            double kmh = exposure.journey().kmh();
            return new Form(
                    truck.id(),
                    exposure.mode(),
                    exposure.range(),
                    kmh,
                    exposure.journey().km(),
                    Json.some(Unusual.of(Figure.given(kmh, Unit.KILOMETRE_PER_HOUR))),
                    FigureJson.of(exposure.mainshaft()),
                    FigureJson.of(exposure.timesOrdinary()),
                    exposure.shaft().words(),
                    exposure.oilThrow().words(),
                    exposure.gears().stream().map(RubForm::of).toList(),
                    FigureJson.of(symbols));
        }
    }

    private record RubForm(
            String gear,
            boolean onPocketBearing,
            FigureJson gearSpeed,
            FigureJson difference,
            FigureJson rubbingSpeed,
            FigureJson distance) {
        static RubForm of(Rub rub) {
            return new RubForm(
                    rub.lever().name(),
                    rub.onPocketBearing(),
                    FigureJson.of(rub.gearSpeed()),
                    FigureJson.of(rub.difference()),
                    FigureJson.of(rub.speed()),
                    FigureJson.of(rub.distance()));
        }
    }
}
