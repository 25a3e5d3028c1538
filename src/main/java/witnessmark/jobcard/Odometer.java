package witnessmark.jobcard;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.gearbox.Unit;

/** The odometer's figure in a clause; a distance since something, or until it, is none. */
final class Odometer {
    private static final String UNIT = "(kms?|kilometros|kilometres|kilometers|mi|miles|millas)";
    private static final Pattern NAMED =
            Pattern.compile("\\b(?:odo(?:meter)?|mileage|odometro|kilometraje|kms?|miles|millas)"
                    + "\\W{1,3}(?:is |at |reads? |of |marca |de )?(\\d[\\d., ]*\\d)\\s*(k\\b)?\\s*" + UNIT
                    + "?(?!\\w)");
    private static final Pattern ALONE = Pattern.compile("(?<![\\w.,])(\\d[\\d., ]*\\d)\\s*(k\\b)?\\s*" + UNIT + "\\b");
    private static final Pattern SINCE = Pattern.compile(
            "\\b(since|ago|after|last|every|within|interval|per|desde|hace|despues|cada|intervalo|por)\\b");
    private static final double LEAST = 10_000;
    private static final double MOST = 10_000_000;

    private Odometer() {}

    /**
     * The figure; empty where the clause has none that an odometer shows.
     *
     * @param usual the unit where none is written
     */
    static Optional<Proposal> in(String clause, Unit usual) {
        String plain = CardTerms.letters(clause);
        if (SINCE.matcher(plain).find()) {
            return Optional.empty();
        }
        Matcher named = NAMED.matcher(plain);
        if (named.find()) {
            Unit before = plain.substring(named.start(), named.start(1)).startsWith("mil") ? Unit.MILE : usual;
            return of(named, plain.startsWith("km", named.start()) ? Unit.KILOMETRE : before, clause, Sureness.SURE);
        }
        Matcher alone = ALONE.matcher(plain);
        return alone.find() ? of(alone, usual, clause, Sureness.LIKELY) : Optional.empty();
    }

    private static Optional<Proposal> of(Matcher at, Unit usual, String clause, Sureness sureness) {
        String digits = at.group(1).replaceAll("[., ]", "");
        double value = digits.length() > 8 ? 0 : Double.parseDouble(digits) * (at.group(2) == null ? 1 : 1000);
        Unit unit = at.group(3) == null ? usual : at.group(3).startsWith("k") ? Unit.KILOMETRE : Unit.MILE;
        return value < LEAST || value > MOST
                ? Optional.empty()
                : Optional.of(new Proposal.OfOdometer(value, unit, clause, sureness));
    }
}
