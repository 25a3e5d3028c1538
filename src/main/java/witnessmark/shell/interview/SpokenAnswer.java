package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.FindingState;

/**
 * An answer as people say it: the words that say yes, no, unsure or not looked at, and what stands behind them.
 *
 * @param note the reason or circumstance behind the answer, in the technician's own words; empty for none
 */
record SpokenAnswer(FindingState state, String note) {
    static final String CANNOT_CHECK = "cannot be checked here";

    /** Said without having looked closely enough for a yes or a no. */
    private static final List<String> UNSURE = List.of(
            "u",
            "unsure",
            "maybe",
            "perhaps",
            "not sure",
            "i am not sure",
            "i'm not sure",
            "hard to say",
            "hard to tell",
            "yes and no",
            "probably",
            "probably not",
            "possibly",
            "i think so",
            "i don't think so",
            "i guess",
            "no seguro",
            "dudoso",
            "dudosa",
            "no estoy seguro",
            "no estoy segura",
            "no creo",
            "creo que",
            "a lo mejor",
            "tal vez",
            "quiza",
            "quizás",
            "puede ser");

    private static final List<String> YES = List.of(
            "y",
            "yes",
            "yep",
            "yeah",
            "yup",
            "present",
            "sometimes",
            "a little",
            "a bit",
            "slightly",
            "it is",
            "it does",
            "si",
            "sí",
            "a veces",
            "un poco");
    private static final List<String> NO = List.of(
            "n",
            "no",
            "nope",
            "absent",
            "not so",
            "none",
            "nothing",
            "nothing found",
            "never",
            "it is not",
            "it isn't",
            "it does not",
            "it doesn't",
            "nada",
            "nunca");
    private static final List<String> NOT_LOOKED = List.of(
            "p",
            "d",
            "pass",
            "not looked at",
            "not-looked-at",
            "not-looked",
            "not looked",
            "not checked",
            "don't know",
            "dont know",
            "do not know",
            "i don't know",
            "i dont know",
            "i do not know",
            "dunno",
            "no idea",
            "unknown",
            "n/a",
            "don't have it",
            "dont have it",
            "don't have one",
            "dont have one",
            "nobody looked",
            "nobody knows",
            "no one looked",
            "no one knows",
            "not yet",
            "never looked",
            "never checked",
            "haven't got it",
            "havent got it",
            "have not got it",
            "there is none here",
            "no log",
            "no papers",
            "no paper",
            "no lo tengo",
            "nadie sabe",
            "nadie revisó",
            "nadie reviso",
            "nadie lo ha visto",
            "no sabe",
            "no sabemos",
            "no lo he visto",
            "no lo revisé",
            "no lo revise",
            "no revisado",
            "no revisada",
            "todavía no",
            "todavia no",
            "aún no",
            "aun no",
            "nunca se revisó",
            "nunca se reviso",
            "no hay registro",
            "no se",
            "no sé",
            "no lo sé",
            "no lo se",
            "ni idea");
    private static final List<String> CANNOT = List.of(
            "c",
            "can't check",
            "cant check",
            "cannot check",
            "can not check",
            "can't tell",
            "cant tell",
            "cannot tell",
            "can't look",
            "cannot look",
            "can't get at it",
            "cannot get at it",
            "can't see it",
            "cannot see it",
            "no way to",
            "no gauge",
            "no access",
            "no time",
            "no se puede",
            "no se alcanza",
            "no tengo",
            "no hay manómetro",
            "no hay manometro",
            "no hay herramienta",
            "no hay acceso",
            "no hay tiempo",
            "no hay cómo",
            "no hay como",
            "no puedo");

    private record Phrase(String words, FindingState state, boolean cannot) {
        static Phrase saying(String words, FindingState state) {
            return new Phrase(words, state, false);
        }

        static Phrase thatItCannotBeDone(String words) {
            return new Phrase(words, FindingState.NOT_LOOKED_AT, true);
        }
    }

    /** Longest first, so that "no idea" is not taken for a no. */
    private static final List<Phrase> PHRASES = phrases();

    private static List<Phrase> phrases() {
        List<Phrase> phrases = new ArrayList<>();
        Map.of(
                        FindingState.UNSURE, UNSURE,
                        FindingState.PRESENT, YES,
                        FindingState.ABSENT, NO,
                        FindingState.NOT_LOOKED_AT, NOT_LOOKED)
                .forEach((state, words) -> words.forEach(w -> phrases.add(Phrase.saying(w, state))));
        CANNOT.forEach(w -> phrases.add(Phrase.thatItCannotBeDone(w)));
        phrases.sort(Comparator.comparingInt((Phrase p) -> -p.words().length()));
        return List.copyOf(phrases);
    }

    /** What the line says; empty where it does not begin with an answer. */
    static Optional<SpokenAnswer> of(String line) {
        String plain = line.strip().replace('\u2019', '\'');
        String lower = plain.toLowerCase(Locale.ROOT);
        return PHRASES.stream()
                .filter(p -> begins(lower, p.words()))
                .findFirst()
                .map(p -> said(p, plain));
    }

    private static boolean begins(String line, String phrase) {
        return line.startsWith(phrase)
                && (line.length() == phrase.length() || !isOfAWord(line.charAt(phrase.length())));
    }

    /** A hyphen and an apostrophe go on with the word: "no-go" and "n't" are no answers. */
    private static boolean isOfAWord(char c) {
        return Character.isLetterOrDigit(c) || c == '-' || c == '\'';
    }

    private static SpokenAnswer said(Phrase phrase, String line) {
        String behind = line.substring(phrase.words().length());
        String rest = behind.replaceFirst("^[\\s,;:.!-]+", "").strip();
        boolean parted = behind.stripLeading().matches("(?s)[,;:.!-].*");
        // Without a stop the words go together: "no leaks" is kept whole, "yes only hot" too.
        String note = rest.isEmpty() || parted || phrase.words().length() == 1 ? rest : line;
        if (phrase.words().matches("sometimes|a little|a bit|slightly|a veces|un poco|probably.*|never|nunca")) {
            note = line;
        }
        boolean doubted = rest.equals("?");
        return new SpokenAnswer(
                doubted && phrase.state() != FindingState.NOT_LOOKED_AT ? FindingState.UNSURE : phrase.state(),
                doubted ? line : phrase.cannot() ? CANNOT_CHECK + (note.isEmpty() ? "" : ": " + note) : note);
    }
}
