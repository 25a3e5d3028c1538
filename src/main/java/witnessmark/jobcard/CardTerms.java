package witnessmark.jobcard;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.TokenFilter;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.en.PorterStemFilter;
import org.apache.lucene.analysis.es.SpanishLightStemFilter;
import org.apache.lucene.analysis.standard.StandardTokenizer;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.apache.lucene.util.automaton.CharacterRunAutomaton;
import org.apache.lucene.util.automaton.LevenshteinAutomata;
import org.apache.lucene.util.automaton.Operations;

/** Splits a text into terms: English and Spanish stems, groups of synonyms, and near spellings of known words. */
final class CardTerms {
    private static final Set<String> STOP = new java.util.HashSet<>(List.of(
            ("a an the of to and it its is was were be been are has have had this that with when at as so he she they them we"
                            + " i his her by for from very just some there going goin goes does do did will would then"
                            + " el la los las lo un una unos unas de del al que se y con por su sus es esta estan cuando"
                            + " fue hay ha muy le les para como si y e o ellos ellas")
                    .split(" ")));
    private static final Set<String> NEGATIONS = new java.util.HashSet<>(List.of(
            ("no not none nobody never nothing without neither nor wont cant cannot doesnt dont didnt isnt wasnt arent hasnt"
                            + " wouldnt couldnt negative denies denied sin ni ningun ninguno ninguna ningunos ningunas nada nadie nunca tampoco niega nego")
                    .split(" ")));
    /** A gear by its number is also said of gears in a phrase; a phrase that names one gear means just that. */
    private static final java.util.regex.Pattern ONE_GEAR = java.util.regex.Pattern.compile(
            "\\d{1,2}(st|nd|rd|th)|\\d{1,2}(ra|da|ta|va)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth"
                    + "|primera|segunda|tercera|cuarta|quinta|sexta|septima|octava|novena|decima");

    private static final java.util.regex.Pattern OF_A_RANGE =
            java.util.regex.Pattern.compile("[ -](range|rng|side|box|gears?)\\b");
    private static final java.util.regex.Pattern VOWELS = java.util.regex.Pattern.compile("[aeiou]");
    /** Shorter ones, as "trk", may be too many words. */
    private static final int SHORTEST_WITHOUT_VOWELS = 4;

    /** Known, so that "three" is not taken for "there". */
    private static final String NUMBERS = "three seven eight twelve cuatro cinco siete nueve doce";

    private static final int LONG_ENOUGH = 5;
    private static final int QUITE_LONG = 9;

    private final Analyzer english = analyzer(true);
    private final Analyzer spanish = analyzer(false);
    private final Map<String, Set<String>> groups = new HashMap<>();
    private final Set<String> vocabulary = new LinkedHashSet<>();
    private int longest = 1;

    CardTerms(List<List<String>> synonyms) {
        learn(NUMBERS);
        for (int i = 0; i < synonyms.size(); i++) {
            for (String expression : synonyms.get(i)) {
                List<Term> terms = plain(expression, false);
                // "no oil" is said of leaks too: what begins with a "no" is a phrase, not a word.
                if (!terms.isEmpty() && terms.stream().noneMatch(Term::isNot)) {
                    groups.computeIfAbsent(key(terms, 0, terms.size()), k -> new LinkedHashSet<>())
                            .add("=" + i);
                    longest = Math.max(longest, terms.size());
                    learn(expression);
                }
            }
        }
    }

    /** Makes the words of an expression known, so that near spellings are taken for them. */
    void learn(String expression) {
        for (String word : letters(expression).split("[^\\p{L}\\p{N}]+")) {
            vocabulary.add(word);
        }
    }

    /** The text in lower-case letters without accents, apostrophes taken out; as long as the text. */
    static String letters(String text) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            String one = Normalizer.normalize(text.substring(i, i + 1), Normalizer.Form.NFD);
            out.append(Character.toLowerCase(one.charAt(0)));
        }
        return out.toString().toLowerCase(Locale.ROOT);
    }

    /** The terms of an expression of the knowledge base. */
    List<Term> known(String expression) {
        return grouped(plain(expression, false));
    }

    /** The terms of a text typed by people, misspellings allowed. */
    List<Term> typed(String text) {
        String letters = letters(text);
        List<Term> terms = grouped(plain(text, true));
        List<Term> out = new ArrayList<>();
        boolean gearBefore = false;
        for (Term term : terms) {
            boolean isGear =
                    ONE_GEAR.matcher(letters.substring(term.from(), term.to())).matches();
            Term read = isGear ? term.also(group("gear")) : term;
            out.add(isGear && gearBefore ? read.also(group("several gears")) : read);
            gearBefore = isGear;
        }
        return out;
    }

    /** The group of a word, if it has one: less than the word itself, so that a phrase with a gear's own number is nearer. */
    private Set<String> group(String word) {
        Set<String> stems = known(word).get(0).stems();
        Set<String> group = new LinkedHashSet<>(stems);
        group.removeIf(s -> !s.startsWith("="));
        return group.isEmpty() ? stems : group;
    }

    private List<Term> grouped(List<Term> terms) {
        List<Term> out = new ArrayList<>();
        for (int at = 0; at < terms.size(); ) {
            int length = Math.min(longest, terms.size() - at);
            while (length > 1 && !groups.containsKey(key(terms, at, at + length))) {
                length--;
            }
            Set<String> meant = groups.getOrDefault(key(terms, at, at + length), Set.of());
            Term first = terms.get(at);
            Term last = terms.get(at + length - 1);
            Set<String> stems = new LinkedHashSet<>(length == 1 ? first.stems() : Set.of());
            stems.addAll(meant);
            boolean spelledSo = terms.subList(at, at + length).stream().allMatch(Term::spelledSo);
            out.add(new Term(stems, first.from(), last.to(), spelledSo));
            at += length;
        }
        return out;
    }

    private static String key(List<Term> terms, int from, int to) {
        StringBuilder key = new StringBuilder();
        for (Term term : terms.subList(from, to)) {
            key.append(term.stems().iterator().next()).append(' ');
        }
        return key.toString();
    }

    private List<Term> plain(String text, boolean typed) {
        String letters = letters(text);
        List<Term> terms = new ArrayList<>();
        java.util.regex.Matcher word = java.util.regex.Pattern.compile("[\\p{L}\\p{N}]+(?:['\u2019-][\\p{L}\\p{N}]+)*")
                .matcher(letters);
        while (word.find()) {
            String said = word.group().replaceAll("['\u2019]", "");
            int from = word.start();
            for (String part : said.split("-")) {
                if (NEGATIONS.contains(part)) {
                    terms.add(new Term(Set.of(Term.NOT), from, word.end(), true));
                } else if (!part.isEmpty() && (!STOP.contains(part) || isLow(part, letters.substring(word.end())))) {
                    String near = typed ? nearest(part) : part;
                    Set<String> stems = new LinkedHashSet<>(stems(english, near));
                    stems.addAll(stems(spanish, near));
                    if (!stems.isEmpty()) {
                        terms.add(new Term(stems, from, word.end(), near.equals(part)));
                    }
                }
            }
        }
        return terms;
    }

    /**
     * The known word that is one slip away (two in a long word), or that is left when its vowels are written out again, as in
     * "grnds" and "slps"; the word itself where none or several are.
     */
    private String nearest(String word) {
        if (isWithoutVowels(word) && !vocabulary.contains(word)) {
            return withVowels(word);
        }
        if (word.endsWith("in") && word.length() >= LONG_ENOUGH && !vocabulary.contains(word)) {
            return nearest(word + "g");
        }
        if (word.length() < LONG_ENOUGH
                || vocabulary.contains(word)
                || word.chars().anyMatch(Character::isDigit)) {
            return word;
        }
        List<String> stems = stems(english, word);
        int slips = word.length() >= QUITE_LONG ? 2 : 1;
        CharacterRunAutomaton near = new CharacterRunAutomaton(Operations.determinize(
                new LevenshteinAutomata(word, true).toAutomaton(slips), Operations.DEFAULT_DETERMINIZE_WORK_LIMIT));
        String found = word;
        for (String known : vocabulary) {
            if (stems(english, known).equals(stems)) {
                return word;
            }
            if (found.equals(word)
                    && known.length() >= LONG_ENOUGH - 1
                    && known.charAt(0) == word.charAt(0)
                    && near.run(known)) {
                found = known;
            }
        }
        return found;
    }

    /** English "lo", not the Spanish article. */
    private static boolean isLow(String word, String behind) {
        return word.equals("lo") && OF_A_RANGE.matcher(behind).lookingAt();
    }

    private static boolean isWithoutVowels(String word) {
        return word.length() >= SHORTEST_WITHOUT_VOWELS
                && VOWELS.matcher(word.substring(1)).results().count() == 0
                && word.chars().allMatch(Character::isLetter);
    }

    /** Of the known words whose letters these are without the vowels that with the fewest, if it is one. */
    private String withVowels(String word) {
        String bones = bones(word);
        List<String> known = vocabulary.stream()
                .filter(w -> w.length() > word.length() && bones(w).equals(bones))
                .toList();
        int shortest = known.stream().mapToInt(String::length).min().orElse(0);
        List<String> nearest =
                known.stream().filter(w -> w.length() == shortest).toList();
        long meant = nearest.stream().map(w -> stems(english, w)).distinct().count();
        return meant == 1 ? nearest.get(0) : word;
    }

    /** The first letter and the consonants behind it, doubled ones once. */
    private static String bones(String word) {
        String rest = VOWELS.matcher(word.substring(Math.min(1, word.length()))).replaceAll("");
        return (word.isEmpty() ? "" : word.substring(0, 1) + rest).replaceAll("(.)\\1", "$1");
    }

    private static List<String> stems(Analyzer analyzer, String word) {
        List<String> stems = new ArrayList<>();
        try (TokenStream stream = analyzer.tokenStream("card", word)) {
            CharTermAttribute term = stream.addAttribute(CharTermAttribute.class);
            stream.addAttribute(OffsetAttribute.class);
            stream.reset();
            while (stream.incrementToken()) {
                stems.add(term.toString());
            }
            stream.end();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return stems;
    }

    private static Analyzer analyzer(boolean english) {
        return new Analyzer() {
            @Override
            protected TokenStreamComponents createComponents(String fieldName) {
                Tokenizer source = new StandardTokenizer();
                TokenFilter stems = english ? new PorterStemFilter(source) : new SpanishLightStemFilter(source);
                return new TokenStreamComponents(source, stems);
            }
        };
    }
}
