package witnessmark.triplog.event;

import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.KnobGear;

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

    /** Less sure than this that the gears were those, nothing is said of a change between them. */
    static final double LEAST_CONFIDENCE = 0.6;

    double perKmh() {
        return outputRpmPerKmh.getAsDouble();
    }

    /** Engine speed in rpm that this gear needs at this road speed. */
    double engineRpm(KnobGear gear, double kmh) {
        return kmh * perKmh() * gear.ratio();
    }

    /** Road speed in km/h at which this gear would turn the engine at governed speed. */
    double ceilingKmh(KnobGear gear) {
        return table.governedRpm() / (gear.ratio() * perKmh());
    }

    static String words(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    /** Hands on an event that is a spell. */
    void found(
            EventKind kind,
            LastingCondition spell,
            HabitEvent.Gears gears,
            double severity,
            double confidence,
            EventFigures figures,
            String sentence) {
        found.accept(HabitEvent.of(kind, spell.stretch(), gears, severity, confidence, figures, sentence));
    }

    /** An event that is the change from one gear to another. */
    HabitEvent shift(
            EventKind kind,
            GearRun from,
            GearRun after,
            double severity,
            double confidence,
            EventFigures figures,
            String sentence) {
        return HabitEvent.of(
                kind,
                new HabitEvent.Stretch(
                        from.endMicros,
                        (after.startMicros - from.endMicros) / 1e6,
                        from.lastLine,
                        after.lastLine,
                        after.startKmh,
                        after.highestRpm),
                HabitEvent.Gears.change(
                        table.gear(from.gear).name(), table.gear(after.gear).name()),
                severity,
                confidence,
                figures,
                sentence);
    }
}
