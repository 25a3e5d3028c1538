package witnessmark.document.chart;

import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/** The words on a chart in one language, and its figures in the units that are read. */
public record ChartLabels(Texts texts, Units units) {
    /** In English, and in the units that the program reckons in. */
    public static final ChartLabels PLAIN = new ChartLabels(Texts.of("document", Language.ENGLISH), Units.BOTH);

    String say(String key, Object... values) {
        return texts.text("chart-" + key, values);
    }

    /** What the truck is called in the language of the chart. */
    String titleOf(TruckProfile truck) {
        return truck.titleIn(texts.language().tag());
    }

    /** The name of an axis with its unit. */
    String axis(String key, Unit unit) {
        return say(key) + ", " + units.shown(unit).symbol();
    }

    /** A figure in the unit of its axis. */
    double shown(double value, Unit unit) {
        return unit.convert(value, units.shown(unit));
    }

    double speed(double kmh) {
        return shown(kmh, Unit.KILOMETRE_PER_HOUR);
    }
}
