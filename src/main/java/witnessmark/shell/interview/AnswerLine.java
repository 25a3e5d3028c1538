package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.gearbox.Unit;
import witnessmark.interview.NotAnAnswer;

/**
 * One answer as typed, such as "yes", "n; only when cold", "why" or "44 psi; low 57; high 62; from service manual".
 *
 * @param request what is wanted; for {@link Request#SAID} {@code state} is given, for {@link Request#VALUE} value and unit
 */
record AnswerLine(
        Request request,
        @Nullable FindingState state,
        double value,
        @Nullable Unit unit,
        Optional<Limits> limits,
        String note) {
    private static final Pattern VALUE = Pattern.compile(
            "(?i)(?:about|around|approx\\.?|roughly|~)?\\s*([-+]?\\d+(?:[.,]\\d+)?|\\d+\\s+\\d+/\\d+|\\d+/\\d+)\\s*(?!\\d|/)(\\S.*)?");
    private static final int LONGEST_UNIT_WORDS = 3;
    private static final Pattern LIMIT = Pattern.compile("(low|high)\\s+([-+]?\\d+(?:[.,]\\d+)?)\\s*");

    /** What an answer asks for. */
    enum Request {
        SAID,
        VALUE,
        WHY,
        BACK,
        SKIP,
        WHERE,
        STOP,
        HELP
    }

    /**
     * The answer in a line; throws {@link NotAnAnswer} where it is none.
     *
     * @param usual the unit of a bare number; empty where nothing can be measured
     */
    static AnswerLine of(String line, Optional<Unit> usual) {
        return of(line, usual, "service manual of this unit");
    }

    /**
     * The same.
     *
     * @param manual whose limits they are where the line does not say
     */
    static AnswerLine of(String line, Optional<Unit> usual, String manual) {
        String whole = line.strip();
        Optional<Request> request = request(whole.toLowerCase(Locale.ROOT));
        if (request.isPresent()) {
            return new AnswerLine(request.get(), null, 0, null, Optional.empty(), "");
        }
        Optional<SpokenAnswer> said = SpokenAnswer.of(whole);
        if (said.isPresent()) {
            return new AnswerLine(
                    Request.SAID,
                    said.get().state(),
                    0,
                    null,
                    Optional.empty(),
                    said.get().note());
        }
        List<String> parts = new ArrayList<>(List.of(whole.split(";", -1)));
        String first = parts.remove(0).strip();
        Matcher value = VALUE.matcher(first);
        if (!value.matches() || usual.isEmpty()) {
            throw new NotAnAnswer(usual.isPresent() ? "refused.no-answer-or-value" : "refused.no-answer", first);
        }
        return value(value, usual.get(), parts, manual);
    }

    /** The value with its unit that the words behind an answer begin with, as in "no, 1.6 mm on the feeler". */
    static Optional<AnswerLine> valueBehind(String note, Unit usual) {
        try {
            AnswerLine told = of(note, Optional.of(usual));
            boolean bare = note.strip().matches("[-+]?[\\d.,/ ]+");
            return told.request() == Request.VALUE && !bare ? Optional.of(told) : Optional.empty();
        } catch (CaseRefused | NotAnAnswer e) {
            return Optional.empty();
        }
    }

    private static AnswerLine value(Matcher value, Unit usual, List<String> parts, String manual) {
        String behind = Optional.ofNullable(value.group(2)).orElse("").strip();
        Measured in = unit(behind, usual);
        Unit unit = in.unit();
        if (!in.rest().isEmpty()) {
            parts.add(in.rest());
        }
        OptionalDouble low = OptionalDouble.empty();
        OptionalDouble high = OptionalDouble.empty();
        String from = manual;
        List<String> notes = new ArrayList<>();
        for (String part : parts) {
            Matcher limit = LIMIT.matcher(part.strip());
            if (limit.matches() && limit.group(1).equals("low")) {
                low = OptionalDouble.of(number(limit.group(2)));
            } else if (limit.matches()) {
                high = OptionalDouble.of(number(limit.group(2)));
            } else if (part.strip().startsWith("from ")) {
                from = part.strip().substring("from ".length());
            } else {
                notes.add(part);
            }
        }
        Optional<Limits> limits =
                low.isEmpty() && high.isEmpty() ? Optional.empty() : Optional.of(new Limits(low, high, unit, from));
        return new AnswerLine(Request.VALUE, null, figure(value.group(1)), unit, limits, note(notes));
    }

    private record Measured(Unit unit, String rest) {}

    /** The unit that the words behind a number begin with, and what follows it. */
    private static Measured unit(String words, Unit usual) {
        List<String> each = words.isEmpty() ? List.of() : List.of(words.split("\\s+"));
        for (int count = Math.min(LONGEST_UNIT_WORDS, each.size()); count > 0; count--) {
            String spelled = String.join(" ", each.subList(0, count)).replaceFirst("[,.]$", "");
            Optional<Unit> unit = Unit.parse(spelled, usual.quantity());
            if (unit.isPresent()) {
                return new Measured(unit.get(), String.join(" ", each.subList(count, each.size())));
            }
        }
        if (!each.isEmpty()) {
            throw new NotAnAnswer("refused.no-unit", words, usual.symbol());
        }
        return new Measured(usual, "");
    }

    /** The number, also written as a fraction: 1/8, 1 1/2. */
    private static double figure(String text) {
        double sum = 0;
        for (String part : text.strip().split("\\s+")) {
            String[] over = part.split("/");
            sum += over.length == 1 ? number(part) : number(over[0]) / number(over[1]);
        }
        if (!Double.isFinite(sum)) {
            throw new NotAnAnswer("refused.no-number", text.strip());
        }
        return sum;
    }

    static double number(String text) {
        try {
            return Double.parseDouble(text.strip().replace(',', '.'));
        } catch (NumberFormatException e) {
            throw new NotAnAnswer("refused.no-number", text.strip());
        }
    }

    /** What a word in small letters asks for beside an answer, English or Spanish; empty where it asks for nothing. */
    static Optional<Request> request(String word) {
        return switch (word) {
            case "w", "why", "por qué", "por que" -> Optional.of(Request.WHY);
            case "b", "back", "atrás", "atras" -> Optional.of(Request.BACK);
            case "s", "skip", "saltar" -> Optional.of(Request.SKIP);
            case "v", "where", "status", "ver", "dónde", "donde" -> Optional.of(Request.WHERE);
            case "q", "stop", "quit", "parar", "terminar", "salir" -> Optional.of(Request.STOP);
            case "", "?", "help", "ayuda" -> Optional.of(Request.HELP);
            default -> Optional.empty();
        };
    }

    private static String note(List<String> parts) {
        return String.join(";", parts).strip();
    }
}
