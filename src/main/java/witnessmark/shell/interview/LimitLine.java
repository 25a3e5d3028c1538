package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import witnessmark.casefile.Limits;
import witnessmark.casefile.PlainNumber;
import witnessmark.gearbox.Unit;
import witnessmark.interview.NotAnAnswer;
import witnessmark.knowledge.Measure;

/** Limits as they are typed in one line: "57 to 62", "3,9-4,3 bar", "min 57", "at most 2 s; from the maker's sheet", "57". */
final class LimitLine {
    private static final Pattern TOKEN = Pattern.compile("\\d+(?:[.,]\\d+)?|[<>]=?|[\\-–=]|[^\\s\\d<>=–-]+");
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");
    private static final Pattern AT_LEAST = Pattern.compile("(?i)\\b(al|por lo) menos\\b");
    private static final Set<String> LOWEST = Set.of(
            ">", ">=", "low", "lowest", "min", "minimum", "over", "above", "least", "more", "mín", "mínimo", "minimo",
            "más", "mas", "bajo");
    private static final Set<String> HIGHEST = Set.of(
            "<", "<=", "high", "highest", "max", "maximum", "under", "below", "most", "less", "up", "within", "máx",
            "máximo", "maximo", "menos", "alto");
    private static final Set<String> NOT = Set.of("not", "no");
    private static final Set<String> BETWEEN = Set.of(
            "-", "–", "=", ",", ":", "to", "and", "from", "between", "at", "than", "a", "y", "de", "desde", "entre",
            "hasta", "is", "good");
    private static final int LONGEST_UNIT_WORDS = 3;

    private final Unit unit;
    private final Measure measure;
    private OptionalDouble low = OptionalDouble.empty();
    private OptionalDouble high = OptionalDouble.empty();
    private final List<Double> plain = new ArrayList<>();

    private LimitLine(Unit unit, Measure measure) {
        this.unit = unit;
        this.measure = measure;
    }

    /**
     * The limits in a line, in this unit; throws {@link NotAnAnswer} where it holds none.
     *
     * @param source whose limits they are where the line does not say
     */
    static Limits of(String line, Unit unit, Measure measure, String source) {
        LimitLine limits = new LimitLine(unit, measure);
        String from = source;
        for (String part : line.split(";")) {
            String said = part.strip();
            if (said.matches("\\D*") && !said.isEmpty()) {
                from = said.replaceFirst("(?i)^(from|de|del)\\s+", "");
            } else {
                limits.read(said);
            }
        }
        limits.sides(line);
        if (limits.low.isPresent() && limits.high.isPresent() && limits.low.getAsDouble() > limits.high.getAsDouble()) {
            throw new NotAnAnswer(
                    "refused.limits-crossed",
                    PlainNumber.of(limits.low.getAsDouble()),
                    PlainNumber.of(limits.high.getAsDouble()));
        }
        return new Limits(limits.low, limits.high, unit, from);
    }

    private void read(String part) {
        List<String> tokens = TOKEN.matcher(AT_LEAST.matcher(part).replaceAll("min"))
                .results()
                .map(result -> result.group())
                .toList();
        Optional<Boolean> lowest = Optional.empty();
        boolean turned = false;
        for (int at = 0; at < tokens.size(); at++) {
            String token = tokens.get(at).toLowerCase(Locale.ROOT);
            if (NUMBER.matcher(token).matches()) {
                int words = unitWords(tokens, at + 1);
                put(lowest, value(tokens, at, words));
                lowest = Optional.empty();
                turned = false;
                at += words;
            } else if (LOWEST.contains(token) || HIGHEST.contains(token)) {
                lowest = Optional.of(LOWEST.contains(token) != turned);
            } else if (NOT.contains(token)) {
                turned = true;
            } else if (!BETWEEN.contains(token)) {
                throw refused(tokens.get(at));
            }
        }
    }

    /** A dash before a number is its sign, unless it stands between two numbers. */
    private double value(List<String> tokens, int at, int unitWords) {
        boolean negative = at > 0
                && tokens.get(at - 1).equals("-")
                && (at == 1 || BETWEEN.contains(tokens.get(at - 2).toLowerCase(Locale.ROOT)));
        Unit in = unitWords == 0
                ? unit
                : Unit.parse(joined(tokens, at + 1, unitWords), unit.quantity()).orElseThrow();
        return in.convert(AnswerLine.number(tokens.get(at)) * (negative ? -1 : 1), unit);
    }

    /** How many words from here on name a unit of this kind. */
    private int unitWords(List<String> tokens, int from) {
        for (int words = Math.min(LONGEST_UNIT_WORDS, tokens.size() - from); words > 0; words--) {
            if (Unit.parse(joined(tokens, from, words), unit.quantity()).isPresent()) {
                return words;
            }
        }
        return 0;
    }

    private static String joined(List<String> tokens, int from, int words) {
        return String.join(" ", tokens.subList(from, from + words)).replaceFirst("[,.]$", "");
    }

    private void put(Optional<Boolean> lowest, double value) {
        if (lowest.isEmpty()) {
            plain.add(value);
        } else if (lowest.get()) {
            low = OptionalDouble.of(value);
        } else {
            high = OptionalDouble.of(value);
        }
    }

    /** A bare number is the one side that this measure is judged by. */
    private void sides(String line) {
        boolean none = low.isEmpty() && high.isEmpty();
        if (plain.size() == 2 && none) {
            low = OptionalDouble.of(plain.get(0));
            high = OptionalDouble.of(plain.get(1));
        } else if (plain.size() == 1
                && none
                && measure.below().isPresent() != measure.above().isPresent()) {
            if (measure.below().isPresent()) {
                low = OptionalDouble.of(plain.get(0));
            } else {
                high = OptionalDouble.of(plain.get(0));
            }
        } else if (!plain.isEmpty() || none) {
            throw refused(line.strip());
        }
    }

    private NotAnAnswer refused(String said) {
        return new NotAnAnswer("refused.no-limit", said);
    }
}
