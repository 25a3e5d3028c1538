package witnessmark.document.page;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.diagnosis.ReadSample;
import witnessmark.diagnosis.Sentences;
import witnessmark.diagnosis.fact.Yields;
import witnessmark.document.Dossier;
import witnessmark.knowledge.Measure;

/**
 * One value measured.
 *
 * @param limits the limits with their source
 * @param result whether the value keeps them, in words
 * @param judged whether it was held against limits
 * @param within whether it lies between them
 * @param follows id of the finding that is present because of a value beyond them; empty where none is
 */
public record MeasuredRow(
        String title,
        String value,
        String limits,
        String result,
        boolean judged,
        boolean within,
        String follows,
        String note) {
    private static final String NOT_JUDGED = "measured-not-judged";
    private static final String WITHIN = "measured-within";
    private static final String BELOW = "measured-below";
    private static final String ABOVE = "measured-above";

    static List<MeasuredRow> of(Dossier dossier) {
        return dossier.file().measurements().values().stream()
                .map(m -> of(dossier, m))
                .toList();
    }

    /** The title of a measure; its id where the knowledge base does not know it. */
    static String title(Dossier dossier, String measure) {
        Measure known = dossier.knowledge().measures().get(measure);
        return known == null ? measure : known.title();
    }

    static MeasuredRow of(Dossier dossier, Measurement m) {
        SayOnPaper words = new SayOnPaper(dossier);
        Optional<ReadSample> sample = Optional.ofNullable(
                        dossier.knowledge().measures().get(m.measure()))
                .flatMap(measure -> ReadSample.of(measure, m));
        if (sample.isPresent()) {
            return withoutLimit(dossier, sample.get());
        }
        return new MeasuredRow(
                title(dossier, m.measure()),
                words.value(m.value(), m.unit()),
                m.limits().map(l -> limits(words, l)).orElseGet(() -> words.say("limits-none")),
                words.say(m.limits().map(l -> result(m, l)).orElse(NOT_JUDGED)),
                m.limits().isPresent(),
                m.limits().filter(l -> result(m, l).equals(WITHIN)).isPresent(),
                m.limits().map(l -> follows(dossier, m, l)).orElse(""),
                m.note());
    }

    private static MeasuredRow withoutLimit(Dossier dossier, ReadSample sample) {
        Sentences words = new Sentences(dossier.knowledge().language());
        Measurement read = sample.read();
        Map<Yields.Side, FindingState> sides = sample.sides();
        List<String> beyond = sides.entrySet().stream()
                .filter(side -> side.getValue() == FindingState.PRESENT)
                .flatMap(side -> (side.getKey() == Yields.Side.ABOVE
                                ? sample.measure().above()
                                : sample.measure().below())
                        .stream())
                .toList();
        return new MeasuredRow(
                sample.measure().title(),
                new SayOnPaper(dossier).value(read.value(), read.unit()),
                words.readAgainst(sample),
                words.readOutcome(sample),
                !sides.containsValue(FindingState.UNSURE),
                beyond.isEmpty() && !sides.containsValue(FindingState.UNSURE),
                beyond.stream().findFirst().orElse(""),
                read.note());
    }

    private static String limits(SayOnPaper words, Limits limits) {
        String span = limits.low().isEmpty()
                ? words.say("limit-at-most", side(words, limits.high(), limits))
                : limits.high().isEmpty()
                        ? words.say("limit-at-least", side(words, limits.low(), limits))
                        : words.say(
                                "limit-from-to", side(words, limits.low(), limits), side(words, limits.high(), limits));
        return span + " (" + limits.source() + ")";
    }

    private static String side(SayOnPaper words, OptionalDouble value, Limits limits) {
        return words.given(value.getAsDouble(), limits.unit());
    }

    private static String follows(Dossier dossier, Measurement m, Limits limits) {
        return Optional.ofNullable(dossier.knowledge().measures().get(m.measure()))
                .flatMap(known -> switch (result(m, limits)) {
                    case BELOW -> known.below();
                    case ABOVE -> known.above();
                    default -> Optional.<String>empty();
                })
                .orElse("");
    }

    private static String result(Measurement m, Limits limits) {
        double value = m.unit().convert(m.value(), limits.unit());
        if (limits.low().isPresent() && value < limits.low().getAsDouble()) {
            return BELOW;
        }
        if (limits.high().isPresent() && value > limits.high().getAsDouble()) {
            return ABOVE;
        }
        return WITHIN;
    }
}
