package witnessmark.interview;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.TextField;

/**
 * Where an interview goes on, as the case keeps it: the stage, and the access steps that are skipped.
 *
 * @param skipped ids of the steps the technician does not want to go to
 */
record Position(Stage stage, Set<String> skipped) {
    private static final String SKIPPED = "; skipped ";

    Position {
        skipped = Set.copyOf(skipped);
    }

    /** The place in a case; one with findings that was never interviewed goes on with the checks. */
    static Position of(CaseFile file) {
        String text = file.text(TextField.INTERVIEW_POSITION);
        String stage = text.contains(SKIPPED) ? text.substring(0, text.indexOf(SKIPPED)) : text;
        String skipped = text.contains(SKIPPED) ? text.substring(text.indexOf(SKIPPED) + SKIPPED.length()) : "";
        Optional<Stage> known = Arrays.stream(Stage.values())
                .filter(s -> word(s).equals(stage.strip()))
                .findFirst();
        boolean begun = !file.findings().isEmpty() || !file.measurements().isEmpty();
        return new Position(
                known.orElse(begun ? Stage.CHECKS : Stage.TRUCK),
                Arrays.stream(skipped.split(","))
                        .map(String::strip)
                        .filter(s -> !s.isEmpty())
                        .collect(Collectors.toSet()));
    }

    Position at(Stage other) {
        return new Position(other, skipped);
    }

    Position skipping(String place) {
        Set<String> more = new TreeSet<>(skipped);
        more.add(place);
        return new Position(stage, more);
    }

    Position skippingNothing() {
        return new Position(stage, Set.of());
    }

    String text() {
        return word(stage) + (skipped.isEmpty() ? "" : SKIPPED + String.join(",", new TreeSet<>(skipped)));
    }

    private static String word(Stage stage) {
        return stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
