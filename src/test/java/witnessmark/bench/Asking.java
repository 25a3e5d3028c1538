package witnessmark.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.Stamp;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.Verdict;
import witnessmark.interview.Ending;
import witnessmark.interview.Interview;
import witnessmark.interview.Notebook;
import witnessmark.interview.Question;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.planner.Hands;
import witnessmark.planner.PlanChecks;

/** Asks about one case in some order and counts questions and minutes until the verdict is right. */
final class Asking {
    private static final int MOST_QUESTIONS = 600;

    /**
     * How it went.
     *
     * @param questions asked until the verdict was first right, or in all if it never was
     * @param minutes of work for them
     * @param reached whether the verdict came right
     * @param last the verdict when the asking ended
     */
    record Course(int questions, double minutes, boolean reached, Verdict last) {}

    private final Diagnosis diagnosis;
    private final KnowledgeBase knowledge;
    private final PlanChecks planner;
    private final KnownAnswers truth;
    private final Set<String> asked = new HashSet<>();

    Asking(Diagnosis diagnosis, KnownAnswers truth) {
        this.diagnosis = diagnosis;
        this.knowledge = diagnosis.knowledge();
        this.planner = new PlanChecks(knowledge.access());
        this.truth = truth;
    }

    /**
     * A whole interview, until it ends by itself.
     *
     * @param right up to where the verdict first came right, with all asked that any mechanic looks at first; as the end if
     *     it never did
     * @param early whether it ended with a class while one of those checks could still have been made
     */
    record Whole(Course right, Course end, boolean early) {}

    /** As the interview asks, until it ends by itself. */
    Whole interview() {
        Kept kept = new Kept(start());
        Meter meter = new Meter();
        try (Interview interview = new Interview(diagnosis, kept)) {
            Course right = null;
            Verdict verdict = interview.judgement().verdict();
            for (var q = next(interview); q.isPresent(); q = next(interview)) {
                if (right == null && truth.isRight(verdict) && !interview.owesFirstLooks()) {
                    right = meter.course(true, verdict);
                }
                String finding = q.get().finding().id();
                FindingState answer = truth.answer(finding);
                meter.count(finding, answer);
                say(q.get(), answer);
                interview.answer(new FindingEntry(finding, truth.word(finding)));
                truth.toldAgainst(finding).ifPresent(interview::measured);
                truth.toldBeside(finding)
                        .forEach(other -> interview.answer(new FindingEntry(other, truth.word(other))));
                verdict = interview.judgement().verdict();
            }
            Course end = meter.course(truth.isRight(verdict), verdict);
            if (Boolean.getBoolean("witnessmark.show")) {
                System.out.println("  DBG " + interview.ending());
                interview.judgement().causes().stream()
                        .limit(5)
                        .forEach(c -> System.out.println("  DBG cause " + c.id() + " " + c.probability() + " "
                                + c.standing() + " " + c.heldBack()));
                interview.plan().stream()
                        .flatMap(v -> v.checks().stream())
                        .sorted(Comparator.comparingDouble(c -> -c.gainBits()))
                        .limit(15)
                        .forEach(c -> System.out.printf(
                                "  DBG open %s %s %.3f chance %.3f%n",
                                c.finding(), c.access(), c.gainBits(), c.chance()));
                System.out.println("  DBG lost "
                        + interview.lost().stream().map(c -> c.finding()).toList());
            }
            boolean early = verdict.isDetermined() && interview.owesFirstLooks();
            return new Whole(right == null ? end : right, end, early);
        }
    }

    /** The next question; where asking ended since nobody knew, he goes on as long as he can look at what would help. */
    private Optional<Question> next(Interview interview) {
        Optional<Question> question = interview.question();
        boolean goesOn = question.isEmpty()
                && interview.ending().reason() == Ending.Reason.NOT_KNOWN
                && interview.wouldHelp().stream()
                        .anyMatch(c -> truth.answer(c.finding()) != FindingState.NOT_LOOKED_AT);
        if (goesOn) {
            interview.goOn();
        }
        return goesOn ? interview.question() : question;
    }

    private static void say(Question question, FindingState answer) {
        if (Boolean.getBoolean("witnessmark.show")) {
            System.out.printf(
                    java.util.Locale.ROOT,
                    "  %3d %-32s %-20s %s %.2f%n",
                    question.number(),
                    question.finding().id(),
                    question.check().access(),
                    answer,
                    question.check().gainBits());
        }
    }

    /** The check with the most information first, whatever the work. */
    Course mostInformationFirst() {
        return ask(open -> open.visits(Hands.off(), Set.of()).stream()
                .flatMap(v -> v.checks().stream())
                .filter(c -> !asked.contains(c.finding())
                        && !knowledge.findings().get(c.finding()).isComputed())
                .max(Comparator.comparingDouble(NextCheck::gainBits))
                .map(NextCheck::finding));
    }

    /** Down a list that goes through the places from outside to inside, the same for every case. */
    Course downTheList() {
        return inOrder(checklist());
    }

    /** In a random order. */
    Course atRandom(long seed) {
        List<String> order = new ArrayList<>(checklist());
        Collections.shuffle(order, new Random(seed));
        return inOrder(order);
    }

    /** Everything taken apart first, every part looked at, then the rest of the list. */
    Course everythingApart() {
        List<String> order = new ArrayList<>(checklist());
        order.sort(Comparator.comparing(f ->
                !knowledge.access().get(knowledge.findings().get(f).access()).teardown()));
        Set<String> open = new HashSet<>();
        knowledge.access().values().stream()
                .filter(step -> step.teardown())
                .forEach(step -> open.addAll(planner.wayTo(step.id())));
        double minutes = open.stream()
                .mapToDouble(step -> knowledge.access().get(step).minutes())
                .sum();
        return inOrder(order, new Meter(open, minutes));
    }

    private List<String> checklist() {
        List<String> places = List.copyOf(knowledge.access().keySet());
        return knowledge.findings().values().stream()
                .filter(f ->
                        f.applicability().reasonAgainst(truth.file().gearbox()).isEmpty())
                .filter(f -> !f.isComputed() && !knowledge.causesOf(f.id()).isEmpty())
                .sorted(Comparator.comparingInt((Finding f) -> planner.wayTo(f.access()).stream()
                                        .anyMatch(s -> knowledge.access().get(s).teardown())
                                ? 1
                                : 0)
                        .thenComparingInt(f -> places.indexOf(f.access())))
                .map(Finding::id)
                .toList();
    }

    private Course inOrder(List<String> order) {
        return inOrder(order, new Meter());
    }

    private Course inOrder(List<String> order, Meter meter) {
        Iterator<String> next = order.iterator();
        return ask(open -> next.hasNext() ? Optional.of(next.next()) : Optional.empty(), meter);
    }

    private Course ask(Function<OpenCase, Optional<String>> choose) {
        return ask(choose, new Meter());
    }

    private Course ask(Function<OpenCase, Optional<String>> choose, Meter meter) {
        asked.clear();
        asked.addAll(truth.complaint());
        try (OpenCase open = diagnosis.open(start().present())) {
            Verdict verdict = open.verdict();
            while (!truth.isRight(verdict) && meter.questions < MOST_QUESTIONS) {
                Optional<String> finding = choose.apply(open);
                if (finding.isEmpty()) {
                    break;
                }
                if (!asked.add(finding.get())) {
                    continue;
                }
                FindingState answer = truth.answer(finding.get());
                meter.count(finding.get(), answer);
                if (answer != FindingState.NOT_LOOKED_AT) {
                    open.report(finding.get(), answer);
                    verdict = open.verdict();
                }
            }
            return meter.course(truth.isRight(verdict), verdict);
        }
    }

    CaseHistory start() {
        Stamp stamp = new Stamp(java.time.Instant.EPOCH, "benchmark");
        var file = truth.file();
        CaseHistory history = CaseHistory.open(
                new Opened(new CaseId("asked"), file.title(), file.complaint(), file.vehicle(), file.gearbox()), stamp);
        List<Change> changes = new ArrayList<>();
        truth.complaint().forEach(f -> changes.add(new FindingSet(new FindingEntry(f, FindingState.PRESENT))));
        return history.with(changes, stamp);
    }

    /** Counts questions and minutes; opening a place is paid once, a check not made costs nothing. */
    private final class Meter {
        private final Set<String> open = new HashSet<>();
        private int questions;
        private double minutes;

        Meter() {}

        Meter(Set<String> opened, double minutes) {
            open.addAll(opened);
            this.minutes = minutes;
        }

        void count(String finding, FindingState answer) {
            questions++;
            if (answer != FindingState.NOT_LOOKED_AT) {
                Finding f = knowledge.findings().get(finding);
                minutes += f.minutes() + planner.openMinutes(f.access(), new Hands(open, Optional.empty()));
                open.addAll(planner.wayTo(f.access()));
            }
        }

        Course course(boolean reached, Verdict verdict) {
            return new Course(questions, minutes, reached, verdict);
        }
    }

    /** A notebook in memory. */
    static final class Kept implements Notebook {
        private CaseHistory history;
        private Optional<String> place = Optional.of("checks");

        Kept(CaseHistory history) {
            this.history = history;
        }

        @Override
        public CaseHistory history() {
            return history;
        }

        @Override
        public Optional<String> place() {
            return place;
        }

        @Override
        public void leave(String to) {
            place = Optional.of(to);
        }

        @Override
        public CaseHistory write(List<? extends Change> changes) {
            history = history.with(changes, new Stamp(java.time.Instant.EPOCH, "benchmark"));
            return history;
        }
    }
}
