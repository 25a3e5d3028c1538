package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import witnessmark.language.Language;

/** Looks for what is well-formed but weak in a knowledge base: holes, twins, and conclusions nothing can carry. */
public final class CheckKnowledge {
    private static final double REACHING_STRENGTH = 0.5;
    private static final double PARTS = 0.25;

    private final KnowledgeBase knowledge;
    private final List<Weakness> found = new ArrayList<>();

    /** One weak place: the id it is about, what is weak, and the mend. */
    public record Weakness(String id, String what, String mend) {
        public String sentence() {
            return id + ": " + what + "; " + mend;
        }
    }

    public CheckKnowledge(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
    }

    /** Every weak place, in the order of the checks; none for sound knowledge. */
    public List<Weakness> weaknesses() {
        found.clear();
        knowledge.causes().values().forEach(this::checkCause);
        checkTwins();
        checkFindings();
        checkSpecific();
        checkPairs();
        checkSpanish();
        return List.copyOf(found);
    }

    /** Number of causes and of findings for each system, and of causes for each class. */
    public Map<String, Integer> causesByClass() {
        return count(knowledge.causes().values().stream().map(Cause::classId).toList());
    }

    public Map<String, Integer> causesBySystem() {
        return count(knowledge.causes().values().stream().map(Cause::system).toList());
    }

    public Map<String, Integer> findingsBySystem() {
        return count(knowledge.findings().values().stream().map(Finding::system).toList());
    }

    private static Map<String, Integer> count(List<String> words) {
        return words.stream().collect(Collectors.toMap(w -> w, w -> 1, Integer::sum, TreeMap::new));
    }

    private void checkCause(Cause cause) {
        boolean blames = knowledge.classOf(cause.classId()).blames();
        if (cause.links().stream().noneMatch(l -> l.strength() >= REACHING_STRENGTH)) {
            weak(cause.id(), "cannot be reached: no finding is linked at least often", "link what it leaves behind");
        }
        if (cause.repair().isEmpty()) {
            weak(cause.id(), "has no repair notes", "say what to replace and what else to inspect");
        }
        if (!cause.repair().isEmpty() && cause.repairAt().isEmpty()) {
            weak(
                    cause.id(),
                    "does not say where its repair is done, so that cautions of the way there are not said",
                    "add 'repair-at'");
        }
        if (cause.classId().equals("driver-habit") && cause.coaching().isEmpty()) {
            weak(cause.id(), "is a driver habit without a coaching point", "add one");
        }
        if (cause.classId().equals("towing-transport") && cause.towing().isEmpty()) {
            weak(cause.id(), "is of towing or transport without a reminder for the next tow", "add one");
        }
        if (!hasGround(cause)) {
            weak(
                    cause.id(),
                    "can never be concluded: no look, no mark of its own, no mark beside a log, paper or what must be good",
                    "link the look at it, or list what must be proved good");
        }
        cause.links().stream()
                .filter(l -> l.specific() && !l.look() && l.why().isEmpty())
                .forEach(l -> weak(
                        cause.id(),
                        "calls '" + l.finding() + "' specific without saying why",
                        "add 'why: what else could leave it, and why that is excluded', or call it shared"));
        if (blames && knowledge.lookAlikesOf(cause.id()).isEmpty()) {
            weak(cause.id(), "has no look-alike", "name what else leaves these marks");
        }
    }

    /** Every text printed has its Spanish, and no Spanish is left over from a text that was changed. */
    private void checkSpanish() {
        if (knowledge.language() != Language.ENGLISH) {
            return;
        }
        Set<String> printed = new HashSet<>();
        new TranslateTexts((id, english) -> {
                    if (printed.add(english) && !knowledge.spanish().containsKey(english)) {
                        weak(id, "has no Spanish for '" + english + "'", "add the text with its Spanish under es/");
                    }
                    return english;
                })
                .of(knowledge, Language.ENGLISH);
        knowledge.spanish().keySet().stream()
                .filter(english -> !printed.contains(english))
                .sorted()
                .forEach(english -> weak(
                        "es",
                        "translates a text that stands nowhere: '" + english + "'",
                        "take it out, or bring it up to date"));
    }

    private boolean hasGround(Cause cause) {
        boolean mark = false;
        boolean beside = !cause.provedGood().isEmpty() || !cause.provedGoodAny().isEmpty();
        for (Cause.Link link : cause.links()) {
            Finding.Kind kind = knowledge.findings().get(link.finding()).kind();
            if (link.look() || link.specific() && kind.isPhysical()) {
                return true;
            }
            mark |= kind.isPhysical();
            beside |= kind.isWitness() && link.strength() >= REACHING_STRENGTH;
        }
        return mark && beside;
    }

    private void checkTwins() {
        Map<Set<String>, String> seen = new HashMap<>();
        for (Cause cause : knowledge.causes().values()) {
            Set<String> links = cause.links().stream()
                    .map(l -> l.finding() + " " + l.strength())
                    .collect(Collectors.toSet());
            String twin = seen.putIfAbsent(links, cause.id());
            if (twin != null) {
                weak(cause.id(), "has the very links of '" + twin + "', so no finding tells them apart", "find one");
            }
        }
    }

    private void checkFindings() {
        Set<String> used = new HashSet<>();
        knowledge.causes().values().forEach(cause -> {
            cause.links().forEach(l -> used.add(l.finding()));
            cause.against().forEach(a -> used.add(a.finding()));
            cause.classWhen().forEach(w -> used.add(w.finding()));
        });
        knowledge.context().forEach(c -> used.add(c.finding()));
        knowledge.neverTogether().stream()
                .filter(NeverTogether::twoSources)
                .forEach(pair -> used.addAll(pair.findings()));
        knowledge.findings().values().forEach(f -> {
            used.addAll(f.needs());
            f.madeOf().ifPresent(made -> used.addAll(made.members()));
            used.addAll(f.spoiledBy());
            if (f.doubtsIdentity()
                    || !f.handsOpen().isEmpty()
                    || !f.notByDefault().isEmpty()
                    || f.voids().isPresent()
                    || !f.renews().isEmpty()
                    || !f.says().isEmpty()) {
                used.add(f.id());
            }
        });
        for (Finding finding : knowledge.findings().values()) {
            if (!used.contains(finding.id()) && !knowledge.retired().containsKey(finding.id())) {
                weak(finding.id(), "is a finding that no cause explains and no rule uses", "link it or take it out");
            }
        }
    }

    private void checkSpecific() {
        Map<String, List<String>> carriers = new TreeMap<>();
        knowledge.causes().values().forEach(cause -> cause.specificFindings()
                .forEach(f ->
                        carriers.computeIfAbsent(f, key -> new ArrayList<>()).add(cause.id())));
        carriers.forEach((finding, causes) -> {
            if (causes.size() > 2) {
                weak(finding, "is called specific to " + String.join(", ", causes), "two causes at the most");
            }
        });
    }

    /** A pair whose checks both sides answer alike parts nothing. */
    private void checkPairs() {
        for (LookAlike pair : knowledge.lookAlikes()) {
            boolean parts = pair.checks().stream()
                    .anyMatch(f -> Math.abs(strength(pair.first(), f) - strength(pair.second(), f)) >= PARTS
                            || speaksAgainst(pair.first(), f)
                            || speaksAgainst(pair.second(), f));
            if (!parts) {
                weak(
                        pair.first() + "/" + pair.second(),
                        "no check of the pair parts the two: both sides give the same answers",
                        "name one that only one of them leaves");
            }
        }
    }

    private double strength(String cause, String finding) {
        return knowledge.causes().get(cause).links().stream()
                .filter(l -> l.finding().equals(finding))
                .mapToDouble(Cause.Link::strength)
                .findFirst()
                .orElse(0);
    }

    private boolean speaksAgainst(String cause, String finding) {
        return knowledge.causes().get(cause).against().stream()
                .anyMatch(a -> a.finding().equals(finding));
    }

    private void weak(String id, String what, String mend) {
        found.add(new Weakness(id, what, mend));
    }
}
