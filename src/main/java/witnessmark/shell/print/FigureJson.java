package witnessmark.shell.print;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Symbol;

/** Figures as JSON: value, unit, the same for a US reader, where it comes from, and how. */
public final class FigureJson {
    private FigureJson() {}

    public static Map<String, Object> of(Figure figure) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("value", figure.value());
        map.put("unit", figure.unit().symbol());
        figure.customary().ifPresent(us -> {
            map.put("usValue", us.value());
            map.put("usUnit", us.unit().symbol());
        });
        map.put("basis", figure.basis().name().toLowerCase(Locale.ROOT));
        if (!figure.note().isEmpty()) {
            map.put(figure.basis() == Basis.COMPUTED ? "formula" : "note", figure.note());
        }
        return map;
    }

    public static Map<String, Object> of(Map<String, Figure> figures) {
        Map<String, Object> map = new LinkedHashMap<>();
        figures.forEach((name, figure) -> map.put(name, of(figure)));
        return map;
    }

    public static List<Map<String, Object>> of(List<Symbol> symbols) {
        return symbols.stream()
                .map(symbol -> {
                    Map<String, Object> map = new LinkedHashMap<>();
                    map.put("symbol", symbol.symbol());
                    map.put("meaning", symbol.meaning());
                    map.putAll(of(symbol.figure()));
                    return map;
                })
                .toList();
    }
}
