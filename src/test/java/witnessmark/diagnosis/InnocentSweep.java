package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;

/**
 * Every cause that names somebody against every cause of another owner that leaves a mark of it: what the other leaves
 * must never be concluded as the one.
 */
final class InnocentSweep {
    private static final double USUAL = 0.75;
    private static final double OFTEN = 0.5;
    private static final Set<String> NAMES = Set.of("driver-habit", "towing-transport", "assembly", "part-defect");

    private final Diagnosis diagnosis;
    private final KnowledgeBase knowledge;

    InnocentSweep(Diagnosis diagnosis) {
        this.diagnosis = diagnosis;
        this.knowledge = diagnosis.knowledge();
    }

    /** One of the two causes is blamed for what the other did. */
    record Failure(
            String step, String blamed, String classId, String innocentOf, Set<String> present, Set<String> absent) {
        @Override
        public String toString() {
            return step + ": " + blamed + " (" + classId + ") concluded for " + innocentOf + " on " + present
                    + (absent.isEmpty() ? "" : ", sound " + absent);
        }
    }

    /** What was tried and what failed. */
    record Outcome(int pairs, int cases, List<Failure> failures) {}

    /** The causes whose conclusion is a statement about a driver, a tow operator, a shop or a maker. */
    static boolean names(Cause cause) {
        return NAMES.contains(cause.classId());
    }

    /** Whether the failure blames somebody: a driver, a tow operator, a shop or a maker. */
    boolean namesSomebody(Failure failure) {
        return NAMES.contains(failure.classId());
    }

    Outcome pairs() {
        List<Failure> failures = new ArrayList<>();
        int pairs = 0;
        int cases = 0;
        for (Cause blamed : knowledge.causes().values()) {
            for (Cause real : knowledge.causes().values()) {
                Set<String> shared = shared(blamed, real);
                if (!names(blamed) || blamed.classId().equals(real.classId()) || shared.isEmpty()) {
                    continue;
                }
                pairs++;
                Set<String> marks = new TreeSet<>(usual(real));
                marks.addAll(shared);
                cases += concludes("a", blamed, real, marks, Set.of(), failures);
                for (String witness : witnesses(blamed)) {
                    Set<String> more = new TreeSet<>(marks);
                    more.add(witness);
                    cases += concludes("b", blamed, real, more, Set.of(), failures);
                }
                for (String look : looks(real)) {
                    Set<String> seen = new TreeSet<>(marks);
                    seen.add(look);
                    cases += tryBeside(blamed, real, seen, failures);
                }
            }
        }
        return new Outcome(pairs, cases, failures);
    }

    /** Cases drawn from a cause's own strengths, half of the findings not looked at. */
    Outcome drawn(int each, long seed) {
        Random random = new Random(seed);
        List<Failure> failures = new ArrayList<>();
        int cases = 0;
        for (Cause real : knowledge.causes().values()) {
            for (int i = 0; i < each; i++) {
                Set<String> present = new TreeSet<>();
                Set<String> absent = new TreeSet<>();
                for (Cause.Link link : real.links()) {
                    if (random.nextBoolean()) {
                        (random.nextDouble() < link.strength() ? present : absent).add(link.finding());
                    }
                }
                cases++;
                tryDrawn(real, present, absent, failures);
            }
        }
        return new Outcome(knowledge.causes().size(), cases, failures);
    }

    /** Where the real cause itself was seen, another may stand beside it. */
    private void tryDrawn(Cause real, Set<String> present, Set<String> absent, List<Failure> into) {
        try (OpenCase open = diagnosis.open(caseOf(present, absent))) {
            Verdict verdict = open.verdict();
            if (verdict.isDetermined()
                    && !verdict.carriedBy().contains(real.id())
                    && !isOwner(real, verdict.classId(), present)
                    && !(looks(real).stream().anyMatch(present::contains) && isBeside(real, open))) {
                into.add(new Failure(
                        "drawn", String.join("+", verdict.carriedBy()), verdict.classId(), real.id(), present, absent));
            }
        }
    }

    private static boolean isBeside(Cause real, OpenCase open) {
        return open.judgement().causes().stream()
                .anyMatch(c -> c.id().equals(real.id()) && (c.seen() || c.probability() >= Thresholds.CONCLUDED));
    }

    private boolean isOwner(Cause cause, String classId, Set<String> present) {
        String owner = cause.classWhen().stream()
                .filter(w -> present.contains(w.finding()))
                .map(Cause.ClassWhen::classId)
                .findFirst()
                .orElse(cause.classId());
        return owner.equals(classId);
    }

    private int concludes(
            String step, Cause blamed, Cause real, Set<String> present, Set<String> absent, List<Failure> into) {
        Verdict verdict = verdict(present, absent);
        if (verdict.isDetermined() && verdict.carriedBy().contains(blamed.id())) {
            into.add(new Failure(step, blamed.id(), verdict.classId(), real.id(), present, absent));
        }
        return 1;
    }

    /** Once the real cause was seen, the other stands beside it at most. */
    private int tryBeside(Cause blamed, Cause real, Set<String> present, List<Failure> into) {
        try (OpenCase open = diagnosis.open(caseOf(present, Set.of()))) {
            Verdict verdict = open.verdict();
            if (verdict.isDetermined() && verdict.carriedBy().contains(blamed.id())) {
                if (!isBeside(real, open)) {
                    into.add(new Failure("c", blamed.id(), verdict.classId(), real.id(), present, Set.of()));
                }
            }
        }
        return 1;
    }

    private Verdict verdict(Set<String> present, Set<String> absent) {
        try (OpenCase open = diagnosis.open(caseOf(present, absent))) {
            return open.verdict();
        }
    }

    private static CaseFile caseOf(Set<String> present, Set<String> absent) {
        CaseSheet sheet = new CaseSheet(new CaseId("sweep"));
        present.forEach(f -> sheet.finding(new FindingEntry(f, FindingState.PRESENT)));
        absent.forEach(f -> sheet.finding(new FindingEntry(f, FindingState.ABSENT)));
        return sheet.toCaseFile();
    }

    private Set<String> shared(Cause one, Cause other) {
        Map<String, Double> strengths = new LinkedHashMap<>();
        one.links().forEach(l -> strengths.put(l.finding(), l.strength()));
        Set<String> shared = new TreeSet<>();
        other.links().stream()
                .filter(l -> l.strength() >= Thresholds.SOMETIMES)
                .filter(l -> strengths.getOrDefault(l.finding(), 0.0) >= Thresholds.SOMETIMES)
                .filter(l -> kind(l.finding()).isPhysical() && !looks(other).contains(l.finding()))
                .forEach(l -> shared.add(l.finding()));
        return shared;
    }

    /** What it usually leaves, its own looks left out; what it often leaves where nothing is usual. */
    private Set<String> usual(Cause cause) {
        Set<String> looks = looks(cause);
        for (double least : new double[] {USUAL, OFTEN}) {
            Set<String> marks = new TreeSet<>();
            cause.links().stream()
                    .filter(l -> l.strength() >= least && !looks.contains(l.finding()))
                    .filter(l -> kind(l.finding()).isPhysical() || kind(l.finding()) == Finding.Kind.SYMPTOM)
                    .forEach(l -> marks.add(l.finding()));
            if (!marks.isEmpty()) {
                return marks;
            }
        }
        return Set.of();
    }

    private Set<String> looks(Cause cause) {
        Set<String> looks = new TreeSet<>();
        cause.links().stream().filter(l -> l.look() || l.specific()).forEach(l -> looks.add(l.finding()));
        return looks;
    }

    private List<String> witnesses(Cause cause) {
        return cause.links().stream()
                .filter(l -> kind(l.finding()).isWitness() || kind(l.finding()) == Finding.Kind.ACCOUNT)
                .map(Cause.Link::finding)
                .toList();
    }

    private Finding.Kind kind(String finding) {
        return knowledge.findings().get(finding).kind();
    }

    /** Prints the counts and every failure; for working on the knowledge. {@code [EACH [SEED]]}: drawn cases alone. */
    public static void main(String[] args) {
        InnocentSweep sweep = new InnocentSweep(new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load()));
        long start = System.nanoTime();
        List<Outcome> outcomes = args.length == 0
                ? List.of(sweep.pairs(), sweep.drawn(20, 1))
                : List.of(sweep.drawn(Integer.parseInt(args[0]), args.length > 1 ? Long.parseLong(args[1]) : 1));
        for (Outcome outcome : outcomes) {
            outcome.failures().stream()
                    .sorted(Comparator.comparing(Failure::blamed))
                    .forEach(System.out::println);
            System.out.println(outcome.pairs() + " pairs or causes, " + outcome.cases() + " cases, "
                    + outcome.failures().size() + " failures");
        }
        System.out.println((System.nanoTime() - start) / 1_000_000 + " ms");
    }
}
