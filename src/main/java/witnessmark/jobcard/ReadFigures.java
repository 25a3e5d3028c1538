package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.Measure;
import witnessmark.knowledge.Wording;

/** Values with their units, and the measure that the words beside them name. */
final class ReadFigures {
    private static final Pattern VALUE = Pattern.compile(
            "(?<![\\w./])([-\u2212]?(?:(?:\\d+[ -])?\\d+/\\d+|\\d+(?:[.,]\\d+)?|\\.\\d+))\\s*(psi|bar|kpa|mm|um|\"|inch(?:es)?|in(?=\\W|$)|thou|deg ?[cf]|degrees? ?[cf]?|\u00b0 ?[cf]?|[cf](?=\\W|$)|rpm|"
                    + "seconds?|secs?|segundos?|s(?=\\W|$)|ms|nm|ft.?lbs?|lb.?ft|litros?|litres?|liters?|l(?=\\W|$)|qts?|quarts?|gal\\w*|ppm|mg/kg|%|hrc|l/min|lbs?|pounds|libras)",
            Pattern.CASE_INSENSITIVE);
    /** Small numbers in words, only before a unit written out: "one in gear" is no inch. */
    private static final List<String> IN_WORDS = List.of(
            "one|un|una|uno",
            "two|dos",
            "three|tres",
            "four|cuatro",
            "five|cinco",
            "six|seis",
            "seven|siete",
            "eight|ocho",
            "nine|nueve",
            "ten|diez",
            "eleven|once",
            "twelve|doce");

    private static final Pattern IN_WORDS_BEFORE_UNIT = Pattern.compile(
            "\\b(" + String.join("|", IN_WORDS)
                    + ")(?=\\s+(?:seconds?|secs?|segundos?|litros?|litres?|liters?|quarts?|qts?|pints?|gallons?|galones|psi|bar|pounds|libras|mm|inch(?:es)?|thou)\\b)",
            Pattern.CASE_INSENSITIVE);
    /** "Psi 42" is read as "42 psi" where the number has no other unit. */
    private static final Pattern UNIT_BEFORE = Pattern.compile(
            "\\b(psi|bar|rpm)\\s*[:=]?\\s*(\\d+(?:[.,]\\d+)?)(?![\\w/.,]|\\s*(?:psi|bar|rpm)\\b)",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern NUMBER = Pattern.compile("(?<![\\w./-])\\d+(?:[.,]\\d+)?(?![\\w/])");
    private static final Map<String, Unit> SPOKEN = Map.ofEntries(
            // What pounds are said of on such a card is air.
            Map.entry("lb", Unit.PSI),
            Map.entry("lbs", Unit.PSI),
            Map.entry("pounds", Unit.PSI),
            Map.entry("libras", Unit.PSI),
            Map.entry("inches", Unit.INCH),
            Map.entry("second", Unit.SECOND),
            Map.entry("seconds", Unit.SECOND),
            Map.entry("secs", Unit.SECOND),
            Map.entry("segundo", Unit.SECOND),
            Map.entry("segundos", Unit.SECOND),
            Map.entry("litro", Unit.LITRE),
            Map.entry("litros", Unit.LITRE),
            Map.entry("litre", Unit.LITRE),
            Map.entry("litres", Unit.LITRE),
            Map.entry("liter", Unit.LITRE),
            Map.entry("liters", Unit.LITRE),
            Map.entry("qts", Unit.US_QUART),
            Map.entry("quart", Unit.US_QUART),
            Map.entry("quarts", Unit.US_QUART));

    private static final double LIKELY_WORDS = 0.96;

    private final Map<String, Measure> measures;
    private final Phrases phrases;

    ReadFigures(Map<String, Measure> measures, Phrases phrases) {
        this.measures = measures;
        this.phrases = phrases;
    }

    /** One value, read from its words. */
    record Value(double value, Unit unit) {}

    static List<Value> values(String words) {
        String clause = inFigures(words);
        List<Value> values = new ArrayList<>();
        Matcher at = VALUE.matcher(clause);
        while (at.find()) {
            double value = number(at.group(1));
            String word = at.group(2).toLowerCase(java.util.Locale.ROOT).strip();
            if (word.equals("thou")) {
                values.add(new Value(value / 1000, Unit.INCH));
                continue;
            }
            Unit unit = SPOKEN.get(word);
            if (unit == null) {
                unit = Unit.parse(
                                word.startsWith("gal")
                                        ? "gal"
                                        : word.matches("[cf]")
                                                ? "deg" + word
                                                : word.replaceAll("degrees? ?", "deg ")
                                                        .strip())
                        .orElse(null);
            }
            if (unit != null) {
                values.add(new Value(value, unit));
            }
        }
        return values;
    }

    /** The clause with small numbers that are said in words, and units that stand before theirs, put the usual way. */
    private static String inFigures(String clause) {
        String figures =
                IN_WORDS_BEFORE_UNIT.matcher(clause).replaceAll(word -> String.valueOf(inWords(word.group(1))));
        return VALUE.matcher(figures).find()
                ? figures
                : UNIT_BEFORE.matcher(figures).replaceAll("$2 $1");
    }

    private static int inWords(String word) {
        String lower = word.toLowerCase(java.util.Locale.ROOT);
        for (int i = 0; i < IN_WORDS.size(); i++) {
            if (List.of(IN_WORDS.get(i).split("\\|")).contains(lower)) {
                return i + 1;
            }
        }
        throw new IllegalArgumentException(word);
    }

    /** A number as it is written in a shop, "1 1/2" among them. */
    private static double number(String written) {
        String[] parts = written.replace(',', '.').replace('\u2212', '-').split("[ /]|(?<=\\d)-");
        double[] n =
                java.util.Arrays.stream(parts).mapToDouble(Double::parseDouble).toArray();
        return n.length == 1 ? n[0] : (n.length == 3 ? n[0] : 0) + n[n.length - 2] / Math.max(1, n[n.length - 1]);
    }

    /** The measures that the clause names beside its values; none where it has no value that fits. */
    List<Proposal> in(Clause said, List<Term> terms, List<Match> matches) {
        String clause = said.words();
        List<Proposal> proposals = new ArrayList<>();
        for (Value value : values(clause)) {
            matches.stream()
                    .filter(m -> m.phrase().of() == Wording.Of.MEASURE)
                    .filter(m -> fits(value, measures.get(m.phrase().id())))
                    .min(Comparator.comparing((Match m) -> rank(m.phrase().id(), said.with(terms)))
                            .thenComparing(m -> !isLikely(value, m)))
                    .ifPresent(m -> proposals.add(proposal(clause, value, m, matches, said.with(terms))
                            .atBest(
                                    phrases.share(terms, explained(m, clause, terms, matches)) < ReadClause.HALF
                                            ? Sureness.LIKELY
                                            : Sureness.SURE)
                            .atBest(best(m.phrase().id(), said.with(terms)))));
        }
        return proposals.size() > 1 ? proposals.subList(0, 1) : proposals;
    }

    /** Play at the pedal and at the release fork are said alike, and each has its own size. */
    private boolean isLikely(Value value, Match match) {
        return match.covered() >= LIKELY_WORDS
                && measures.get(match.phrase().id()).belief(value.value(), value.unit()) == Measure.Belief.PLAUSIBLE;
    }

    private static boolean fits(Value value, Measure measure) {
        return value.unit().quantity() == measure.unit().quantity();
    }

    /** A second figure without a unit: which of the two is meant cannot be told. */
    private static boolean hasMoreNumbers(String clause) {
        return NUMBER.matcher(VALUE.matcher(inFigures(clause)).replaceAll(" ")).find();
    }

    /** The places of the measure's own words, and those of the value and its unit. */
    private static Set<Integer> explained(Match match, String clause, List<Term> terms, List<Match> matches) {
        Set<Integer> places = new HashSet<>();
        matches.stream()
                .filter(m -> m.phrase().id().equals(match.phrase().id()))
                .forEach(m -> places.addAll(m.at()));
        for (Pattern figure : List.of(VALUE, IN_WORDS_BEFORE_UNIT, UNIT_BEFORE)) {
            Matcher value = figure.matcher(clause);
            while (value.find()) {
                for (int i = 0; i < terms.size(); i++) {
                    if (terms.get(i).from() < value.end() && terms.get(i).to() > value.start()) {
                        places.add(i);
                    }
                }
            }
        }
        return places;
    }

    /** A measure that the words tell apart comes before one that needs no such words, and last one that they speak against. */
    private int rank(String measure, List<Term> all) {
        return best(measure, all).ordinal();
    }

    private Sureness best(String measure, List<Term> all) {
        if (phrases.isCalledInDoubt(measure, all)) {
            return Sureness.DOUBTFUL;
        }
        return phrases.isToldApart(measure, all) ? Sureness.SURE : Sureness.LIKELY;
    }

    private Proposal.OfMeasure proposal(String clause, Value value, Match match, List<Match> matches, List<Term> all) {
        Measure measure = measures.get(match.phrase().id());
        Measure.Belief belief = measure.belief(value.value(), value.unit());
        boolean alone = matches.stream()
                .filter(m -> m.phrase().of() == Wording.Of.MEASURE
                        && fits(value, measures.get(m.phrase().id())))
                .noneMatch(m -> !m.phrase().id().equals(match.phrase().id())
                        && !phrases.isCalledInDoubt(m.phrase().id(), all)
                        && (isLikely(value, m) || !isLikely(value, match))
                        && m.covered() >= match.covered()
                        && m.at().size() >= match.at().size());
        Sureness sureness =
                belief != Measure.Belief.PLAUSIBLE || values(clause).size() > 1 || hasMoreNumbers(clause) || !alone
                        ? Sureness.DOUBTFUL
                        : match.covered() > 0.96 ? Sureness.SURE : Sureness.LIKELY;
        return new Proposal.OfMeasure(match.phrase().id(), value.value(), value.unit(), belief, clause, sureness);
    }
}
