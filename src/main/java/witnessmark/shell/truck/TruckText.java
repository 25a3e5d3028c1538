package witnessmark.shell.truck;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.shell.print.FigureText;
import witnessmark.shell.print.Page;

/** A truck's profile as text: what is given, and what is assumed in place of what is not. */
public final class TruckText {
    private final Page page;
    private final FigureText rows;

    TruckText(Page page) {
        this.page = page;
        this.rows = new FigureText(page, FigureText.Formulas.LEFT_OUT);
    }

    public static String title(TruckProfile truck) {
        return truck.title().equals(truck.id()) ? truck.id() : truck.title() + " (" + truck.id() + ")";
    }

    /** What is to be asked about the profile, before any figure that rests on it; nothing for an ordinary truck. */
    static void questions(Page page, TruckProfile truck) {
        truck.questions().forEach(question -> page.strong("Check the profile: " + question.text()));
        if (!truck.questions().isEmpty()) {
            page.blank();
        }
    }

    void print(TruckProfile truck) {
        questions(page, truck);
        page.line(title(truck));
        page.heading("Gears, whole ratio");
        gears(truck.gears().forward());
        gears(truck.gears().reverse());
        page.heading("Given");
        rows.row(
                "gearbox.main-ratios",
                truck.mainRatios().stream().map(TruckText::ratio).collect(Collectors.joining(", ")));
        truck.splitter()
                .ifPresent(splitter -> rows.row(
                        "gearbox.splitter",
                        ratio(splitter.ratio()) + ", splits "
                                + (splitter.bothRanges() ? "both ranges" : "high range")));
        truck.tyreSize().ifPresent(size -> rows.row("tyre.size", size));
        parameters(truck, Basis.GIVEN);
        parameters(truck, Basis.COMPUTED);
        if (truck.torque().basis() == Basis.GIVEN) {
            rows.row("engine.torque-curve, Nm by rpm", curve(truck));
        }
        page.heading("Assumed; give what you know in the profile to be surer");
        parameters(truck, Basis.ASSUMED);
        if (truck.torque().basis() == Basis.ASSUMED) {
            page.item("engine.torque-curve: " + curve(truck) + "; "
                    + truck.torque().note());
        }
        page.flush();
    }

    private void gears(List<Gear> gears) {
        page.indented(
                "  ",
                "  ",
                gears.stream()
                        .map(gear -> gear.id() + "=" + ratio(gear.ratio()))
                        .collect(Collectors.joining(", ")));
    }

    private void parameters(TruckProfile truck, Basis basis) {
        for (Map.Entry<Parameter, Figure> entry : truck.figures().entrySet()) {
            Figure figure = entry.getValue();
            if (figure.basis() == Basis.ASSUMED && basis == Basis.ASSUMED) {
                page.item(entry.getKey().key() + ": " + figure.text(page.units()) + "; "
                        + entry.getKey().meaning() + "; " + figure.note());
            } else if (figure.basis() == basis) {
                rows.row(entry.getKey().key(), figure.text(page.units()));
            }
        }
    }

    private static String curve(TruckProfile truck) {
        return truck.torque().points().entrySet().stream()
                .map(point -> String.format(Locale.ROOT, "%.0f: %.0f", point.getKey(), point.getValue()))
                .collect(Collectors.joining(", "));
    }

    static String ratio(double value) {
        return Figure.given(value, Unit.RATIO).text();
    }
}
