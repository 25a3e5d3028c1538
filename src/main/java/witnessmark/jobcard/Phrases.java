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

    private final CardWords words;
    private final List<Phrase> all = new ArrayList<>();
    private final Map<String, List<Integer>> byStem = new HashMap<>();
    private final Map<String, Double> rarity = new HashMap<>();

    Phrases(KnowledgeBase knowledge) {
        words = new CardWords(knowledge.synonyms());
        List<Phrase> raw = new ArrayList<>();
        for (Finding finding : knowledge.findings().values()) {
            if (finding.kind() != Finding.Kind.COMPUTED && finding.kind() != Finding.Kind.LOG) {
                if (!knowledge.retired().containsKey(finding.id())) {
                    add(raw, Wording.Of.FINDING, finding.id(), Phrase.Names.IT, List.of(finding.title()));
                    add(raw, Wording.Of.FINDING, finding.id(), Phrase.Names.IT, finding.words());
                }
            }
        }
        for (Wording wording : knowledge.wordings()) {
            add(raw, wording.of(), wording.id(), Phrase.Names.IT, wording.said());
            add(raw, wording.of(), wording.id(), Phrase.Names.PART, wording.part());
            add(raw, wording.of(), wording.id(), Phrase.Names.SOUND, wording.sound());
            add(raw, wording.of(), wording.id(), Phrase.Names.WORK, wording.done());
        }
        weigh(raw);
    }

    CardWords words() {
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
        for (Term wanted : phrase.terms()) {
            int at = place(wanted, clause, used, before);
            if (at < 0) {
                if (wanted.isNot()) {
                    return null;
                }
                continue;
            }
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
