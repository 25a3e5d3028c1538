package witnessmark.shell.print;

import java.util.List;
import java.util.Map;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Symbol;

/** Computed figures as text, with their formulas where they are asked for. */
public final class FigureText {
    private static final int NAME_WIDTH = 37;

    private final Page page;
    private final Formulas formulas;

    /** Whether each figure's formula is shown, and all that went in. */
    public enum Formulas {
        SHOWN,
        LEFT_OUT;

        /** As the option {@code --formulas} says. */
        public static Formulas of(boolean shown) {
            return shown ? SHOWN : LEFT_OUT;
        }
    }

    public FigureText(Page page, Formulas formulas) {
        this.page = page;
        this.formulas = formulas;
    }

    /** The figures, and after them what was assumed, or with formulas all that went in. */
    public void print(Map<String, Figure> figures, List<Symbol> symbols) {
        page.heading("Figures");
        figures.forEach((name, figure) -> {
            row(name, figure.text(page.units()));
            if (formulas == Formulas.SHOWN) {
                page.indented("      ", "        ", figure.note());
            }
        });
        if (formulas == Formulas.SHOWN) {
            page.heading("What the letters stand for");
            symbols.forEach(
                    symbol -> page.item(symbol.symbol() + ": " + symbol.meaning() + ", " + with(symbol.figure())));
        } else {
            assumed(symbols);
        }
    }

    private void assumed(List<Symbol> symbols) {
        List<Symbol> assumed = symbols.stream()
                .filter(symbol -> symbol.figure().basis() == Basis.ASSUMED)
                .toList();
        if (!assumed.isEmpty()) {
            page.heading("Assumed, because the truck's profile does not say");
            assumed.forEach(symbol ->
                    page.item(symbol.meaning() + ": " + symbol.figure().text(page.units()) + "; "
                            + symbol.figure().note()));
        }
    }

    private String with(Figure figure) {
        return switch (figure.basis()) {
            case GIVEN -> figure.text(page.units()) + ", given";
            case ASSUMED -> figure.text(page.units()) + ", assumed: " + figure.note();
            case COMPUTED -> figure.text(page.units());
        };
    }

    /** A name and its value. */
    public void row(String name, String value) {
        page.indented(
                "  " + name + " ".repeat(Math.max(1, NAME_WIDTH - name.length())), " ".repeat(NAME_WIDTH + 2), value);
    }
}
