package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Wording;

/** All ways to say the findings and measures of a knowledge base, and where they are found in a clause. */
final class Phrases {
    /** Below it too little of a phrase was said to propose anything. */
    static final double ENOUGH = 0.7;
    /** So many words on a "no" still means the word. */
    private static final int NO_REACHES = 3;

    private static final double UNHEARD = 5;

    private final CardTerms words;
    private final List<Phrase> all = new ArrayList<>();
    private final Map<String, List<Integer>> byStem = new HashMap<>();
    private final Map<String, Double> rarity = new HashMap<>();
    private final Map<String, List<List<Term>>> needs = new HashMap<>();
    private final Map<String, List<List<Term>>> notWith = new HashMap<>();

    Phrases(KnowledgeBase knowledge) {
        words = new CardTerms(knowledge.synonyms());
        List<Phrase> raw = new ArrayList<>();
        for (Finding finding : knowledge.findings().values()) {
            if (finding.kind() != Finding.Kind.COMPUTED && finding.kind() != Finding.Kind.LOG) {
                if (!knowledge.retired().containsKey(finding.id())) {
                    add(raw, Wording.Of.FINDING, finding.id(), Phrase.Names.IT, List.of(finding.title()));
                    add(raw, Wording.Of.FINDING, finding.id(), Phrase.Names.NEAR, finding.words());
                }
            }
        }
        for (Wording wording : knowledge.wordings()) {
            add(raw, wording.of(), wording.id(), Phrase.Names.IT, wording.said());
            add(raw, wording.of(), wording.id(), Phrase.Names.PART, wording.part());
            add(raw, wording.of(), wording.id(), Phrase.Names.SOUND, wording.sound());
            add(raw, wording.of(), wording.id(), Phrase.Names.WORK, wording.done());
            wording.needs().forEach(n -> qualify(needs, wording.id(), n));
            wording.notWith().forEach(n -> qualify(notWith, wording.id(), n));
        }
        weigh(raw);
    }

    CardTerms words() {
        return words;
    }

    private void add(List<Phrase> raw, Wording.Of of, String id, Phrase.Names names, List<String> said) {
        for (String expression : new LinkedHashSet<>(said)) {
            words.learn(expression);
            List<Term> terms = words.known(expression);
            if (!terms.isEmpty()) {
                raw.add(new Phrase(of, id, names, terms, 0));
            }
        }
    }

    private void qualify(Map<String, List<List<Term>>> of, String id, String expression) {
        words.learn(expression);
        List<Term> terms = words.known(expression);
        if (!terms.isEmpty()) {
            of.computeIfAbsent(id, k -> new ArrayList<>()).add(terms);
        }
    }

    /** Whether the words stand there without which the finding or measure is only one of several. */
    boolean isToldApart(String id, List<Term> clause) {
        List<List<Term>> wanted = needs.getOrDefault(id, List.of());
        return wanted.isEmpty() || wanted.stream().anyMatch(w -> isSaid(w, clause));
    }

    /** Whether words stand there beside which something else may be meant. */
    boolean isCalledInDoubt(String id, List<Term> clause) {
        return notWith.getOrDefault(id, List.of()).stream().anyMatch(w -> isSaid(w, clause));
    }

    /** Whether the words stand there one behind the other, with at most one word between two. */
    private static boolean isSaid(List<Term> words, List<Term> clause) {
        for (int from = 0; from < clause.size(); from++) {
            int at = from - 1;
            int next = 0;
            for (int i = from; i < clause.size() && next < words.size() && i - at <= (next == 0 ? 1 : 2); i++) {
                if (words.get(next).means(clause.get(i))) {
                    at = i;
                    next++;
                }
            }
            if (next == words.size()) {
                return true;
            }
        }
        return false;
    }

    /** A word that few findings use says more than one that many do. */
    private void weigh(List<Phrase> raw) {
        Map<String, Set<String>> users = new HashMap<>();
        raw.forEach(p -> p.terms()
                .forEach(t -> users.computeIfAbsent(t.stems().iterator().next(), s -> new HashSet<>())
                        .add(p.id())));
        users.forEach((stem, ids) -> rarity.put(stem, Math.log(1 + 400.0 / ids.size())));
        for (Phrase p : raw) {
            double weight = p.terms().stream().mapToDouble(this::weight).sum();
            int number = all.size();
            all.add(new Phrase(p.of(), p.id(), p.names(), p.terms(), weight));
            p.terms().stream().flatMap(t -> t.stems().stream()).distinct().forEach(s -> byStem.computeIfAbsent(
                            s, k -> new ArrayList<>())
                    .add(number));
        }
    }

    /** Share of what is said in the clause that stands at these places, 0 to 1; 1 where nothing but "no" is said. */
    double share(List<Term> clause, Set<Integer> places) {
        double all = 0;
        double there = 0;
        for (int i = 0; i < clause.size(); i++) {
            double weight = clause.get(i).isNot() ? 0 : said(clause.get(i));
            all += weight;
            there += places.contains(i) ? weight : 0;
        }
        return all == 0 ? 1 : there / all;
    }

    /** A word that no phrase has may mean much. */
    private double said(Term term) {
        return term.stems().stream()
                .filter(rarity::containsKey)
                .mapToDouble(rarity::get)
                .min()
                .orElse(UNHEARD);
    }

    private double weight(Term term) {
        return rarity.getOrDefault(term.stems().iterator().next(), 1.0);
    }

    /** The phrases that are said in the clause wholly or nearly. */
    List<Match> in(List<Term> clause) {
        Set<Integer> candidates = new TreeSet<>();
        clause.forEach(t -> t.stems().forEach(s -> candidates.addAll(byStem.getOrDefault(s, List.of()))));
        List<Match> found = new ArrayList<>();
        for (int number : candidates) {
            Match match = match(all.get(number), clause);
            if (match != null && match.covered() >= ENOUGH) {
                found.add(match);
            }
        }
        found.sort(Match.BEST);
        return found;
    }

    private @org.jspecify.annotations.Nullable Match match(Phrase phrase, List<Term> clause) {
        Set<Integer> used = new TreeSet<>();
        double got = 0;
        boolean exact = true;
        int turned = 0;
        int before = -1;
        int no = -1;
        for (Term wanted : phrase.terms()) {
            int at = place(wanted, clause, used, before);
            // A "no" says what its phrase says only in front of the word that it denies there.
            boolean denied = no >= 0;
            if (at < 0 ? wanted.isNot() || denied : denied && (at < no || at - no > NO_REACHES)) {
                return null;
            }
            if (at < 0) {
                continue;
            }
            no = wanted.isNot() ? at : -1;
            used.add(at);
            Term said = clause.get(at);
            boolean same = said.stems().stream()
                            .anyMatch(s -> !s.startsWith("=") && wanted.stems().contains(s))
                    || wanted.stems().size() == 1;
            exact &= said.spelledSo();
            got += weight(wanted) * (said.spelledSo() ? same ? 1 : 0.97 : 0.93);
            turned += at < before ? 1 : 0;
            before = at;
        }
        if (used.isEmpty()) {
            return null;
        }
        List<Integer> places = List.copyOf(used);
        int reach = places.get(places.size() - 1) - places.get(0) + 1;
        if (reach > 2 * phrase.terms().size() + 2) {
            return null;
        }
        return new Match(phrase, places, got / phrase.weight(), exact, turned);
    }

    /** The first place behind the word before it; else the first of all. */
    private static int place(Term wanted, List<Term> clause, Set<Integer> used, int before) {
        int any = -1;
        for (int i = 0; i < clause.size(); i++) {
            if (!used.contains(i) && wanted.means(clause.get(i))) {
                if (i > before) {
                    return i;
                }
                any = any < 0 ? i : any;
            }
        }
        return any;
    }
}
