package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import witnessmark.casefile.EarlierSample;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PlainNumber;
import witnessmark.diagnosis.fact.Yields.Side;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.Measure;
import witnessmark.knowledge.Rise;
import witnessmark.knowledge.UsualValues;
import witnessmark.language.Texts;

/** Says what a value without a limit was read against, where the figures are from and what it came to. */
final class SayReading {
    private final Texts texts;

    SayReading(Texts texts) {
        this.texts = texts;
    }

    /** The figures that it was read against, such as "3 times its own earlier sample …; usually good to …". */
    String against(ReadSample sample) {
        List<String> said = new ArrayList<>();
        sample.highestEarlier().ifPresent(before -> said.add(earlier(sample, before)));
        sample.measure()
                .usual()
                .ifPresent(usual -> said.add(usual(usual, sample.measure().unit())));
        return String.join("; ", said);
    }

    /** What any value of the measure is read against without a limit. */
    List<String> without(Measure measure) {
        List<String> said = new ArrayList<>();
        measure.rise().ifPresent(rise -> said.add(texts.text("rise-alone", rise(rise, measure.unit()), rise.from())));
        measure.usual().ifPresent(usual -> said.add(usual(usual, measure.unit())));
        return said;
    }

    /** What it came to. */
    String outcome(ReadSample sample) {
        return sample.sides().entrySet().stream()
                .map(side -> outcome(side.getValue(), side.getKey()))
                .collect(Collectors.joining(", "));
    }

    private String outcome(FindingState state, Side side) {
        String word = side == Side.ABOVE ? "high" : "low";
        return switch (state) {
            case PRESENT -> texts.text("read-" + word);
            case ABSENT -> texts.text("read-not-" + word);
            case UNSURE, NOT_LOOKED_AT -> texts.text("read-open-" + word);
        };
    }

    private String earlier(ReadSample sample, EarlierSample before) {
        Unit unit = sample.read().unit();
        String of = texts.text(
                sample.read().earlier().size() > 1 ? "earlier-highest" : "earlier-only",
                before.day(),
                number(before.value()),
                unit.symbol(),
                before.odometerKm().isEmpty()
                        ? ""
                        : texts.text(
                                "earlier-odometer", number(before.odometerKm().getAsDouble())));
        double value = sample.read().value();
        String compared = before.value() > 0
                ? texts.text("earlier-times", PlainNumber.rounded(value / before.value(), 1), of)
                : texts.text("earlier-after", of);
        Rise rise = sample.measure().rise().orElseThrow();
        return texts.text("earlier", compared, rise(rise, sample.measure().unit()), rise.from());
    }

    private String rise(Rise rise, Unit unit) {
        if (rise.by() == 0) {
            return texts.text("rise-times", number(rise.times()));
        }
        return rise.times() == 1
                ? texts.text("rise-by", number(rise.by()), unit.symbol())
                : texts.text("rise-both", number(rise.times()), number(rise.by()), unit.symbol());
    }

    private String usual(UsualValues usual, Unit unit) {
        List<String> sides = new ArrayList<>();
        side(sides, "usual-bad-under", usual.badUnder(), unit);
        side(sides, "usual-good-from", usual.goodFrom(), unit);
        side(sides, "usual-good-to", usual.goodTo(), unit);
        side(sides, "usual-bad-over", usual.badOver(), unit);
        return texts.text("usual", String.join(", ", sides), usual.from());
    }

    private void side(List<String> sides, String key, OptionalDouble value, Unit unit) {
        value.ifPresent(v -> sides.add(texts.text(key, number(v), unit.symbol())));
    }

    private static String number(double value) {
        return PlainNumber.rounded(value, 3);
    }
}
