package witnessmark.fleet;

import java.io.Serializable;

/** A column of a table of the fleet; a cell is a text, a whole number or a number, or an empty text for "not known". */
public record FleetColumn(String name, Type type) implements Serializable {
    /** What stands in a column. */
    public enum Type {
        TEXT,
        /** A {@link Long}. */
        COUNT,
        /** A {@link Double}. */
        NUMBER
    }

    static FleetColumn text(String name) {
        return new FleetColumn(name, Type.TEXT);
    }

    static FleetColumn count(String name) {
        return new FleetColumn(name, Type.COUNT);
    }

    static FleetColumn number(String name) {
        return new FleetColumn(name, Type.NUMBER);
    }

    /** To so many places: a table keeps no more than means anything. */
    static double rounded(double value, int places) {
        double scale = Math.pow(10, places);
        return Double.isNaN(value) ? value : Math.round(value * scale) / scale;
    }
}
