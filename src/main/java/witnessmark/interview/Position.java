package witnessmark.interview;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.TextSet;

/**
 * Where an interview goes on: the stage, the access steps that are skipped, and which entries of the case are answers to
 * checks.
 *
 * @param skipped ids of the steps the technician does not want to go to
 * @param turns the last entry each time the checks were gone to or left, in turn
 */
record Position(Stage stage, Set<String> skipped, List<Long> turns) {
    private static final String PART = "; ";
    private static final String SKIPPED = "skipped ";
    private static final String TURNS = "turns ";
    private static final Pattern NUMBER = Pattern.compile("\\d{1,18}");

    Position {
        skipped = Set.copyOf(skipped);
        turns = List.copyOf(turns);
    }

    /**
     * The place kept, or what older programs wrote of it into the case; a case with findings that was never interviewed goes
     * on with the checks.
     */
    static Position of(CaseHistory history, Optional<String> kept) {
        boolean begun = !history.present().findings().isEmpty()
                || !history.present().measurements().isEmpty();
        Stage otherwise = begun ? Stage.CHECKS : Stage.TRUCK;
        return kept.map(text -> parse(text, otherwise)).orElseGet(() -> written(history, otherwise));
    }

    private static Position written(CaseHistory history, Stage otherwise) {
        Position now = new Position(otherwise, Set.of(), List.of());
        for (Entry entry : history.entries()) {
            if (entry.change() instanceof TextSet text && text.field() == TextField.INTERVIEW_POSITION) {
                Position to = parse(text.to(), otherwise);
                now = new Position(to.stage, to.skipped, now.turns).at(to.stage, entry.number());
            }
        }
        return now;
    }

    private static Position parse(String text, Stage otherwise) {
        List<String> parts = Arrays.asList(text.strip().split(PART));
        Stage stage = Arrays.stream(Stage.values())
                .filter(s -> word(s).equals(parts.get(0)))
                .findFirst()
                .orElse(otherwise);
        Set<String> skipped = listed(parts, SKIPPED).collect(Collectors.toSet());
        List<Long> turns = listed(parts, TURNS)
                .filter(n -> NUMBER.matcher(n).matches())
                .map(Long::valueOf)
                .toList();
        return new Position(stage, skipped, turns);
    }

    private static Stream<String> listed(List<String> parts, String name) {
        return parts.stream()
                .filter(part -> part.startsWith(name))
                .flatMap(part -> Arrays.stream(part.substring(name.length()).split(",")))
                .map(String::strip)
                .filter(s -> !s.isEmpty());
    }

    /** At the stage, gone to after the entry. */
    Position at(Stage other, long lastEntry) {
        List<Long> more = new ArrayList<>(turns);
        if (isAmongChecks(Long.MAX_VALUE) != (other == Stage.CHECKS)) {
            more.add(lastEntry);
        }
        return new Position(other, skipped, more);
    }

    /** Whether an entry of this number was made while the checks were asked. */
    boolean isAmongChecks(long entry) {
        return turns.stream().filter(turn -> turn < entry).count() % 2 == 1;
    }

    Position skipping(String place) {
        Set<String> more = new TreeSet<>(skipped);
        more.add(place);
        return new Position(stage, more, turns);
    }

    Position skippingNothing() {
        return new Position(stage, Set.of(), turns);
    }

    String text() {
        return word(stage)
                + (skipped.isEmpty() ? "" : PART + SKIPPED + String.join(",", new TreeSet<>(skipped)))
                + (turns.isEmpty()
                        ? ""
                        : PART + TURNS + turns.stream().map(String::valueOf).collect(Collectors.joining(",")));
    }

    private static String word(Stage stage) {
        return stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
