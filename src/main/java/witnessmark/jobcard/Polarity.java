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
            "\\?|\\b(maybe|may be|might|perhaps|possibl\\w*|suspect\\w*|could be|not sure|unsure|(?:can(?:no|')?t|could not|couldn'?t|hard to) tell|no se sabe|no se puede saber|seems|think|thinks|"
                    + "quiza\\w*|tal vez|posible\\w*|sospech\\w*|puede que|parece|creo|a lo mejor)\\b");
    /** "Ya no tiene pasta" tells of what is gone now, "ya soldada antes" of what was done and is seen now. */
    private static final Pattern BEFORE = Pattern.compile(
            "\\b(used to|no longer|any ?more|was fine before|last (week|month|year|time)|ya no(?! (tiene|trae|queda) (pasta|balata|dientes?|material)\\b)|(?<!\\bya \\w{2,20}[ai]d[oa]s? )antes)\\b");
    /** Work that is done; what is to be done is said with other forms of the verb. */
    private static final String WORKED =
            "(replaced|renewed|installed|fitted|changed|exchanged|swapped|adjusted|readjusted|reset|set (the|up|to|it|clutch|linkage)|cleaned"
                    + "|greased|lubed|freed|topped (up|off)|filled|refilled|drained|flushed|rebuilt|overhauled|repaired|fixed"
                    + "|tightened|torqued|retorqued|shimmed|washed|r&r(d|'d)?|(?<!\\b(?:looks?|looked|like|as|almost) )new"
                    + "|se (le |les )?(cambio|cambiaron|ajusto|ajustaron|limpio|limpiaron|engraso|engrasaron|relleno|rellenaron"
                    + "|reparo|repararon|apreto|apretaron|instalo|instalaron|reemplazo|reemplazaron|lavo|lavaron|calibro|calibraron)"
                    + "|(cambi|ajust|limpi|engras|rellen|repar|instal|reemplaz|lav|calibr)(amos|ad[oa]s?)"
                    + "|apretamos|nuev[oa]s?)\\b";

    private static final Pattern WORK = Pattern.compile("\\b" + WORKED);
    private static final Pattern NO_WORK = Pattern.compile(
            "\\b(not|never|didnt|didn't|wasnt|havent|haven't|hasnt|needs?|to be|should|will|must|recommend\\w*|quoted?|ordered"
                    + "|waiting|no|nunca|tampoco|sin|falta|pendiente|por|hay que)\\b(\\W+\\w+){0,3}?\\W+"
                    + WORKED);
    /** "Fine silver flake" is small flake, and good for nothing. */
    private static final String FINE =
            "fine(?!\\s+(?!(?:in|on|at|when|whenever|now|but|and|with|so|both|all|from|to|as|there|here|no|after|once|till|until|too|again|if|the|by|cold|hot|warm|going|coasting|pulling)\\b)[a-z])";

    private static final Pattern GOOD = Pattern.compile(
            "\\b(ok|okay|o\\.k\\.|good|" + FINE
                    + "|sound|normal|(?<!\\b(?:finger|hand)[ -])tight|within (all )?(limits?|spec\\w*)|in spec|in limits|perfect|looks? (like )?new|"
                    + "like new|bien|apretad[oa]s?|buen|bueno|buena|buenos|buenas|correct[oa]s?|dentro de (limites?|especificacion\\w*|medida)|"
                    + "sin (novedad|falla|fallas|problema|problemas|dano|danos|juego|holgura)|nothing (found|wrong)|no (play|slop|issues?|problems?|faults?|damage))(?![\\p{L}])");
    /** Good at another time than that of the complaint: "slow till warm, fine after". */
    private static final Pattern GOOD_LATER = Pattern.compile(
            "\\b(then|after that|afterwards|later|once warm|when warm|luego|despues|ya caliente)\\W+(\\w+\\W+){0,2}(ok|good|fine|normal|bien)\\b"
                    + "|\\b(ok|good|fine|normal|bien)\\W+(after|afterwards|once|when|whenever|until|till?|later|if|cuando|despues|ya|si|luego)\\b");

    private static final Pattern BAD = Pattern.compile(
            "\\b(?<!\\b(?:not|no|none|nothing|never|isnt|isn't|arent|aren't|wasnt|wasn't|sin|ni|nada) )(broken?|torn|loose|worn|bad|gone|shot|crack\\w*|leak\\w*|missing|bent|burn\\w*|dry|notched|seized|rough|chipped|rot[oa]s?|floj[oa]s?|mal[oa]s?"
                    + "|gastad[oa]s?|rajad[oa]s?|quebrad[oa]s?|quemad[oa]s?|vencid[oa]s?|sec[oa]s?|aspero|falta|tirando)\\b");

    private static final Pattern NOT_GOOD = Pattern.compile(
            "\\b(not|no|isnt|isn't|arent|aren't|wasnt|never)\\s+(\\w+\\s+)?(ok|good|fine|right|bien|buen\\w*|tight|normal)\\b");
    /** What cannot be done without it comes every time. */
    private static final Pattern NEVER_WITHOUT = Pattern.compile(
            "\\b(cant|can't|can not|cannot|couldnt|couldn't|wont|won't|will not|doesnt|doesn't|does not|never|hardly"
                    + "|no (se )?(puede|pued[oe]n?|entran?|pasan?|cambian?|met[eo])|nunca)\\b[^,;.]*?\\b(without|w/o|sin)\\b");

    /** Denies the act that is named behind it and nothing further: "no quiere entrar la reversa, rechina". */
    private static final Pattern WILL_NOT = Pattern.compile(
            "(wont|won't|will not|cant|can't|cannot|can not|no (se )?(quieren?|pueden?|dejan?|logran?))\\b");

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

    /** Whether it tells of a time before this look. */
    boolean isBefore() {
        return BEFORE.matcher(clause).find();
    }

    /** Whether it tells of work that was done. */
    boolean isWork() {
        return WORK.matcher(clause).find() && !NO_WORK.matcher(clause).find();
    }

    boolean isGood() {
        return GOOD.matcher(clause).find()
                && !NOT_GOOD.matcher(clause).find()
                && !GOOD_LATER.matcher(clause).find();
    }

    /** Whether what sounds good is said by these letters. */
    boolean isGoodWord(int from, int to) {
        java.util.regex.Matcher good = GOOD.matcher(clause);
        return good.find() && good.start() >= from && good.end() <= to;
    }

    /** Whether the term is among the words that call something good. */
    boolean callsGood(Term term) {
        return GOOD.matcher(clause).results().anyMatch(g -> term.from() < g.end() && term.to() > g.start());
    }

    boolean isBad() {
        return BAD.matcher(clause).find();
    }

    boolean isNotGood() {
        return NOT_GOOD.matcher(clause).find();
    }

    /** Whether a "no" before the match reaches it; a "no" that is part of what is said does not count. */
    Reach negated(Match match, List<Term> terms) {
        boolean own = match.phrase().terms().stream().anyMatch(Term::isNot);
        if (own || isNeverWithout(terms.get(match.last()).from())) {
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
                broken |= !besideVerb && deniesAnAct(terms.get(i).from());
                return broken || (i > match.first() && !besideVerb) ? Reach.PERHAPS : Reach.REACHES;
            }
            boolean atTheEnd = i == match.last() + 1 && i == terms.size() - 1;
            return atTheEnd
                            && !broken(
                                    terms.get(match.first()).to(), terms.get(i).from())
                    ? Reach.REACHES
                    : Reach.PERHAPS;
        }
        return Reach.NOT;
    }

    private boolean deniesAnAct(int from) {
        return WILL_NOT.matcher(clause).region(from, clause.length()).lookingAt();
    }

    private boolean isNeverWithout(int from) {
        java.util.regex.Matcher both = NEVER_WITHOUT.matcher(clause);
        return both.find() && both.end() <= from;
    }

    /** Whether another thing begins between the two, as behind an "and". */
    boolean broken(Match before, Match behind, List<Term> terms) {
        return broken(terms.get(before.last()).to(), terms.get(behind.first()).from());
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
