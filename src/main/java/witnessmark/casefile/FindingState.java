package witnessmark.casefile;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.Word;

/** What was seen of one finding; "absent" means looked at and found sound. */
public enum FindingState {
    PRESENT,
    ABSENT,
    UNSURE,
    NOT_LOOKED_AT;

    /** The states as they are written, for messages: "present, absent, unsure, not-looked-at". */
    public static final String WORDS =
            Arrays.stream(values()).map(FindingState::word).collect(Collectors.joining(", "));

    /** The state as it is written. */
    public String word() {
        return Word.of(this);
    }

    /** The state so written, "yes" and "no" standing for present and absent; empty if it is none of them. */
    public static Optional<FindingState> parse(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        String word =
                switch (plain) {
                    case "yes" -> "present";
                    case "no" -> "absent";
                    default -> plain;
                };
        return Arrays.stream(values()).filter(s -> s.word().equals(word)).findFirst();
    }
}
