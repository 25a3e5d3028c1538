package witnessmark.casefile;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;

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
        return EnumWord.of(this);
    }

    /** Of two results that differ: present before unsure, unsure before absent, absent before nothing. */
    public static FindingState weightier(FindingState one, FindingState other) {
        List<FindingState> order = List.of(PRESENT, UNSURE, ABSENT, NOT_LOOKED_AT);
        return order.indexOf(one) <= order.indexOf(other) ? one : other;
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
