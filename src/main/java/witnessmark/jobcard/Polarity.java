package witnessmark.jobcard;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** Whether a clause says that something is there, is not there, may be there, or was never looked at. */
final class Polarity {
    private static final Pattern NOT_DONE = Pattern.compile(
            "\\b(not|never|didnt|didn't|havent|haven't|hasnt|wasnt|couldnt|couldn't|could not|yet to|need to|needs to|to be|"
                    + "please|pls|will|going to|no se|falta|pendiente|por) (been |be |it )?"
                    + "(check\\w*|look\\w*|measur\\w*|inspect\\w*|test\\w*|open\\w*|tried|reviso|reviso|revisado|midio|medido|revisar|medir)"
                    + "|^\\W*(check|inspect|look at|look for|measure|please|pls|revisar|medir|verificar)\\b");
    private static final Pattern MAYBE = Pattern.compile(
            "\\?|\\b(maybe|may be|might|perhaps|possibl\\w*|suspect\\w*|could be|not sure|unsure|seems|think|thinks|"
                    + "quiza\\w*|tal vez|posible\\w*|sospech\\w*|puede que|parece|creo|a lo mejor)\\b");
    private static final Pattern MENDED = Pattern.compile(
            "\\b(replaced|renewed|fixed|repaired|used to|no longer|was fine before|last (week|month|year|time)|cambi(o|amos|ado)|"
                    + "ya no|reparado|antes)\\b");
    private static final Pattern GOOD = Pattern.compile(
            "\\b(ok|okay|o\\.k\\.|good|fine|sound|normal|tight|within (all )?(limits?|spec\\w*)|in spec|in limits|perfect|"
                    + "like new|bien|buen|buena|buenos|buenas|correct[oa]s?|dentro de (limites?|especificacion\\w*|medida)|"
                    + "sin (novedad|falla|fallas|problema|problemas|dano|danos|juego)|nothing (found|wrong)|no (play|issues?|problems?|faults?|damage))(?![\\p{L}])");
    private static final Pattern NOT_GOOD = Pattern.compile(
            "\\b(not|no|isnt|isn't|arent|aren't|wasnt|never)\\s+(\\w+\\s+)?(ok|good|fine|right|bien|buen\\w*|tight|normal)\\b");
    private static final Set<String> BREAKS =
            Set.of("but", "and", "pero", "y", "then", "though", "except", "aunque", "excepto");

    private final String clause;

    /** Of a clause in plain lower-case letters. */
    Polarity(String clause) {
        this.clause = clause;
    }

    boolean isNotDone() {
        return NOT_DONE.matcher(clause).find();
    }

    boolean isMaybe() {
        return MAYBE.matcher(clause).find();
    }

    boolean isMended() {
        return MENDED.matcher(clause).find();
    }

    boolean isGood() {
        return GOOD.matcher(clause).find() && !NOT_GOOD.matcher(clause).find();
    }

    boolean isNotGood() {
        return NOT_GOOD.matcher(clause).find();
    }

    /** Whether a "no" before the match reaches it; a "no" that is part of what is said does not count. */
    Reach negated(Match match, List<Term> terms) {
        boolean own = match.phrase().terms().stream().anyMatch(Term::isNot);
        if (own) {
            return Reach.NOT;
        }
        for (int i = 0; i < terms.size(); i++) {
            if (!terms.get(i).isNot() || match.at().contains(i)) {
                continue;
            }
            if (i < match.last()) {
                boolean broken =
                        broken(terms.get(i).to(), terms.get(match.last()).from());
                boolean besideVerb = match.at().contains(i + 1);
                return broken || (i > match.first() && !besideVerb) ? Reach.PERHAPS : Reach.REACHES;
            }
            return i == match.last() + 1 && i == terms.size() - 1 ? Reach.REACHES : Reach.PERHAPS;
        }
        return Reach.NOT;
    }

    private boolean broken(int from, int to) {
        String between = clause.substring(Math.min(from, to), to);
        return BREAKS.stream().anyMatch(b -> between.matches("(?s).*\\b" + b + "\\b.*"));
    }

    /** How far a "no" goes. */
    enum Reach {
        NOT,
        PERHAPS,
        REACHES
    }
}
