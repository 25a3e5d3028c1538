package witnessmark.casefile;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;

/** Who told of a finding that nobody in the shop looked at. */
public enum Teller {
    DRIVER,
    FLEET,
    TOW_OPERATOR,
    PREVIOUS_SHOP,
    PREVIOUS_OWNER,
    OTHER;

    /** The tellers as they are written, for messages. */
    public static final String WORDS = Arrays.stream(values()).map(Teller::word).collect(Collectors.joining(", "));

    /** The teller as it is written. */
    public String word() {
        return EnumWord.of(this);
    }

    /** The teller so written; empty if it is none of them. */
    public static Optional<Teller> parse(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
        return Arrays.stream(values()).filter(t -> t.word().equals(plain)).findFirst();
    }
}
