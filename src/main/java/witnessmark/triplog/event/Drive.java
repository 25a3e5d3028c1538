package witnessmark.triplog.event;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import witnessmark.triplog.gear.Gear;
import witnessmark.triplog.gear.GearTable;

/**
 * What all detectors of one log share.
 *
 * @param table the truck's numbers
 * @param limits where events begin
 * @param outputRpmPerKmh output shaft speed per km/h as this truck has it; it may be known better as the log goes on
 * @param chances counts what the log held
 * @param found takes the events
 */
record Drive(
        GearTable table,
        HabitLimits limits,
        DoubleSupplier outputRpmPerKmh,
        Chances chances,
        Consumer<HabitEvent> found) {

    double perKmh() {
        return outputRpmPerKmh.getAsDouble();
    }

    /** Engine speed in rpm that this gear needs at this road speed. */
    double engineRpm(Gear gear, double kmh) {
        return kmh * perKmh() * gear.ratio();
    }

    /** Road speed in km/h at which this gear would turn the engine at governed speed. */
    double ceilingKmh(Gear gear) {
        return table.governedRpm() / (gear.ratio() * perKmh());
    }

    static Map<String, Double> figures(Object... namesAndValues) {
        Map<String, Double> figures = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            figures.put((String) namesAndValues[i], ((Number) namesAndValues[i + 1]).doubleValue());
        }
        return figures;
    }

    static String words(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    /** Hands on an event that is a spell. */
    void found(
            EventKind kind,
            Spell spell,
            Optional<String> gear,
            double severity,
            double confidence,
            Map<String, Double> figures,
            String sentence) {
        found.accept(event(kind, spell, gear, severity, confidence, figures, sentence));
    }

    /** An event that is a spell. */
    static HabitEvent event(
            EventKind kind,
            Spell spell,
            Optional<String> gear,
            double severity,
            double confidence,
            Map<String, Double> figures,
            String sentence) {
        return new HabitEvent(
                kind,
                spell.startMicros,
                spell.seconds(),
                spell.firstLine,
                spell.lastLine,
                spell.highestKmh,
                spell.highestRpm,
                gear,
                gear,
                severity,
                confidence,
                figures,
                sentence);
    }
}
