package witnessmark.shell.print;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Symbol;

/** A figure as JSON: value, unit, the same for a US reader, where it comes from, and how. */
public record FigureJson(
        double value,
        String unit,
        Optional<Double> usValue,
        Optional<String> usUnit,
        Basis basis,
        Optional<String> formula,
        Optional<String> note) {

    /** A letter of a formula and what it stands for. */
    public record Letter(String symbol, String meaning, @Json.Inlined FigureJson figure) {}

    public static FigureJson of(Figure figure) {
        Optional<String> how = Optional.of(figure.note()).filter(note -> !note.isEmpty());
        boolean computed = figure.basis() == Basis.COMPUTED;
        return new FigureJson(
                figure.value(),
                figure.unit().symbol(),
                figure.customary().map(Figure::value),
                figure.customary().map(us -> us.unit().symbol()),
                figure.basis(),
                how.filter(note -> computed),
                how.filter(note -> !computed));
    }

    public static Map<String, FigureJson> of(Map<String, Figure> figures) {
        Map<String, FigureJson> map = new LinkedHashMap<>();
        figures.forEach((name, figure) -> map.put(name, of(figure)));
        return map;
    }

    public static List<Letter> of(List<Symbol> symbols) {
        return symbols.stream()
                .map(symbol -> new Letter(symbol.symbol(), symbol.meaning(), of(symbol.figure())))
                .toList();
    }
}
