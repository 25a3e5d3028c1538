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
    private static final Pattern VALUE = Pattern.compile("([-+]?\\d+(?:[.,]\\d+)?)\\s*(\\S.*)?");
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

    /** The answer in a line; throws {@link CaseRefused} where it is none. */
    static AnswerLine of(String line, Optional<Unit> usual) {
        List<String> parts = new ArrayList<>(List.of(line.split(";", -1)));
        String first = parts.remove(0).strip();
        Optional<FindingState> state = state(first);
        if (state.isPresent()) {
            return new AnswerLine(Request.SAID, state.get(), 0, null, Optional.empty(), note(parts));
        }
        Optional<Request> request = request(first.toLowerCase(Locale.ROOT));
        if (request.isPresent()) {
            return new AnswerLine(request.get(), null, 0, null, Optional.empty(), "");
        }
        Matcher value = VALUE.matcher(first);
        if (!value.matches() || usual.isEmpty()) {
            throw new CaseRefused(
                    "'" + first + "' is no answer here",
                    "type y, n, u or p" + (usual.isPresent() ? ", or a value with its unit" : "") + "; ? shows all");
        }
        return value(value, usual.get(), parts);
    }

    private static AnswerLine value(Matcher value, Unit usual, List<String> parts) {
        Unit unit = Optional.ofNullable(value.group(2))
                .map(word -> Unit.parse(word.strip())
                        .filter(u -> u.quantity() == usual.quantity())
                        .orElseThrow(() -> new CaseRefused(
                                "'" + word.strip() + "' is no unit for this",
                                "give it in " + usual.symbol() + " or a unit that converts to it")))
                .orElse(usual);
        OptionalDouble low = OptionalDouble.empty();
        OptionalDouble high = OptionalDouble.empty();
        String from = "";
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
        return new AnswerLine(Request.VALUE, null, number(value.group(1)), unit, limits, note(notes));
    }

    static double number(String text) {
        try {
            return Double.parseDouble(text.strip().replace(',', '.'));
        } catch (NumberFormatException e) {
            throw new CaseRefused("'" + text.strip() + "' is not a number", "write it like 57 or 3.9");
        }
    }

    private static Optional<FindingState> state(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "y" -> Optional.of(FindingState.PRESENT);
            case "n" -> Optional.of(FindingState.ABSENT);
            case "u" -> Optional.of(FindingState.UNSURE);
            case "p", "pass", "not looked at", "not-looked" -> Optional.of(FindingState.NOT_LOOKED_AT);
            default -> FindingState.parse(word);
        };
    }

    private static Optional<Request> request(String word) {
        return switch (word) {
            case "w", "why" -> Optional.of(Request.WHY);
            case "b", "back" -> Optional.of(Request.BACK);
            case "s", "skip" -> Optional.of(Request.SKIP);
            case "v", "where" -> Optional.of(Request.WHERE);
            case "q", "stop", "quit" -> Optional.of(Request.STOP);
            case "", "?", "help" -> Optional.of(Request.HELP);
            default -> Optional.empty();
        };
    }

    private static String note(List<String> parts) {
        return String.join(";", parts).strip();
    }
}
