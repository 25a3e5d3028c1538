package witnessmark.jobcard;

import java.util.Optional;
import java.util.regex.Pattern;

/** Whose words a sentence repeats, where it is not the shop's own. */
public enum Sayer {
    TOW_OPERATOR("(tow|wrecker|recovery) (operator|driver|man|company|outfit)|gruero|operador de (la )?grua"),
    PREVIOUS_SHOP("(previous|last|other|prior) (shop|garage|workshop|mechanic)|taller anterior|otro taller"),
    PREVIOUS_OWNER("(previous|last|former) owner|dueno anterior"),
    PAPER("(invoice|work order|paperwork|papers|service record|tow slip|tow bill)( \\w+)? (says?|shows?|reads?)|"
            + "(segun )?(la factura|la orden|los papeles)( dicen?)?"),
    DRIVER("(drivers?|drvr|drv)( \\w+)?\\b|chofer|conductor|operador"),
    FLEET("fleet( manager)?|customer|cust|owner|dispatch|cliente|flota|dueno|jefe de flota");

    private static final String SAYS =
            "(?:\\W+\\w+){0,2}?\\W+(says|said|sez|states|stated|reports|reported|complains|claims|tells|told|"
                    + "swears|denies|denied|insists|dice|dijo|reporta|reporto|refiere|comenta|jura|niega|nego)\\b";
    private final Pattern said;

    Sayer(String who) {
        String open = who.contains("says?") ? "" : "(?:" + SAYS + "|\\s*:)";
        this.said = Pattern.compile("\\b(?:" + who + ")" + open);
    }

    /** Who the sentence, in plain lower-case letters, says is speaking. */
    static Optional<Sayer> of(String plain) {
        for (Sayer sayer : values()) {
            if (sayer.said.matcher(plain).find()) {
                return Optional.of(sayer);
            }
        }
        return Optional.empty();
    }
}
