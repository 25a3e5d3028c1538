package witnessmark.document.page;

import java.util.List;
import java.util.OptionalDouble;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.document.Dossier;
import witnessmark.knowledge.Measure;

/**
 * One value measured.
 *
 * @param limits the limits with their source
 * @param result whether the value keeps them, in words
 */
public record MeasuredRow(String title, String value, String limits, String result, String note) {

    static List<MeasuredRow> of(Dossier dossier) {
        return dossier.file().measurements().values().stream()
                .map(m -> row(dossier, m))
                .toList();
    }

    private static MeasuredRow row(Dossier dossier, Measurement m) {
        Measure known = dossier.knowledge().measures().get(m.measure());
        return new MeasuredRow(
                known == null ? m.measure() : known.title(),
                PaperFigures.number(m.value()) + " " + m.unit().symbol(),
                m.limits()
                        .map(MeasuredRow::limits)
                        .orElse("none given: take the limit from the service manual of this unit"),
                m.limits().map(l -> result(m, l)).orElse("not judged"),
                m.note());
    }

    private static String limits(Limits limits) {
        String unit = " " + limits.unit().symbol();
        String span = limits.low().isEmpty()
                ? "at most " + number(limits.high()) + unit
                : limits.high().isEmpty()
                        ? "at least " + number(limits.low()) + unit
                        : number(limits.low()) + " to " + number(limits.high()) + unit;
        return span + " (" + limits.source() + ")";
    }

    private static String number(OptionalDouble value) {
        return PaperFigures.number(value.getAsDouble());
    }

    private static String result(Measurement m, Limits limits) {
        double value = m.unit().convert(m.value(), limits.unit());
        if (limits.low().isPresent() && value < limits.low().getAsDouble()) {
            return "below the low limit";
        }
        if (limits.high().isPresent() && value > limits.high().getAsDouble()) {
            return "above the high limit";
        }
        return "within the limits";
    }
}
