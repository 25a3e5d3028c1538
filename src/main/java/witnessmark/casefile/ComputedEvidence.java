package witnessmark.casefile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.evidence.ComputedFinding;

/** Puts computed findings down as evidence of a case, with what went in, how, and against which bound. */
public final class ComputedEvidence {
    private ComputedEvidence() {}

    /**
     * One result of a case from findings of one computation; a finding that the figures leave open is told in the
     * summary and followed by nothing.
     *
     * @param truck id of the profile that was computed with; empty for none
     * @param findings at least one
     * @param guessed whether what went in is somebody's guess, so that nothing is sure
     */
    public static Evidence of(String id, String truck, List<ComputedFinding> findings, boolean guessed) {
        if (findings.isEmpty()) {
            throw new CaseRefused(
                    "evidence '" + CheckedText.shown(id) + "': nothing was found that a case could hold",
                    "ask of a shift down, or of a range shift");
        }
        Map<String, String> inputs = new LinkedHashMap<>();
        if (!truck.isEmpty()) {
            inputs.put("truck", truck);
        }
        findings.forEach(f -> f.inputs().forEach((name, figure) -> inputs.put(name(name), value(figure))));
        Map<String, FindingState> states = new LinkedHashMap<>();
        findings.forEach(f -> state(f).ifPresent(state -> states.put(f.id(), guessed ? FindingState.UNSURE : state)));
        return new Evidence(
                id,
                Evidence.Kind.COMPUTED,
                (guessed ? "From figures that are a guess: " : "")
                        + findings.stream().map(f -> sentence(f.summary())).collect(Collectors.joining(" ")),
                findings.stream().map(ComputedEvidence::formula).collect(Collectors.joining("\n")),
                inputs,
                Optional.empty(),
                states,
                Map.of(),
                Optional.empty(),
                reckoned(findings));
    }

    private static Map<String, Reckoned> reckoned(List<ComputedFinding> findings) {
        Map<String, Reckoned> reckoned = new LinkedHashMap<>();
        findings.forEach(f -> reckoned.put(
                f.id(),
                new Reckoned(
                        f.result().value(),
                        f.result().unit(),
                        f.limit().value(),
                        f.limit().unit(),
                        outcome(f))));
        return reckoned;
    }

    private static Reckoned.Outcome outcome(ComputedFinding finding) {
        return switch (finding.state()) {
            case PRESENT -> Reckoned.Outcome.PRESENT;
            case ABSENT -> Reckoned.Outcome.ABSENT;
            case NOT_COUNTED -> Reckoned.Outcome.NOT_COUNTED;
        };
    }

    private static Optional<FindingState> state(ComputedFinding finding) {
        return switch (finding.state()) {
            case PRESENT -> Optional.of(FindingState.PRESENT);
            case ABSENT -> Optional.of(FindingState.ABSENT);
            case NOT_COUNTED -> Optional.empty();
        };
    }

    private static String formula(ComputedFinding finding) {
        return finding.id() + ": " + finding.formula() + "; result "
                + finding.result().text() + ", held against " + value(finding.limit());
    }

    private static String name(String words) {
        return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    }

    private static String value(Figure figure) {
        String text = figure.basis() == Basis.ASSUMED ? figure.text() + ", assumed: " + figure.note() : figure.text();
        return text.length() <= CheckedText.LONGEST_LINE
                ? text
                : text.substring(0, CheckedText.LONGEST_LINE - 3) + "...";
    }

    private static String sentence(String summary) {
        return summary.substring(0, 1).toUpperCase(Locale.ROOT) + summary.substring(1) + ".";
    }
}
