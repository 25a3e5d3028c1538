package witnessmark.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.knowledge.search.FindEntries;
import witnessmark.planner.Hands;

/**
 * Simulated interviews on cases of known outcome: how many questions and minutes to the right verdict, in our order and
 * in others. Prints a line for each case, the medians, and the folder's row of the table in DEVELOPERS.md. Arguments: a folder of case files, {@code sample-cases} if
 * none is given, and the beginnings of the names of those wanted, all if none is given. {@code -Dwitnessmark.show=true}
 * prints each question.
 */
public final class InterviewBenchmark {
    /** {@code -Dwitnessmark.orders=all} tries the slow orders too, {@code interview} no other. */
    private static final String ORDERS = System.getProperty("witnessmark.orders", "");

    private static final boolean ALL_ORDERS = ORDERS.equals("all");

    private static final int RANDOM_ORDERS = 5;
    private static final int CHOICES = 400;

    private final Diagnosis diagnosis = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private final FindEntries search = new FindEntries(diagnosis.knowledge());
    private final Map<String, List<Asking.Course>> courses = new LinkedHashMap<>();

    private int determined;
    private int reached;
    private int unsettled;
    private int wrong;
    private int early;
    private int cannotBeTold;
    private int toldAllTheSame;

    private InterviewBenchmark() {}

    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "sample-cases");
        List<String> wanted = args.length > 1 ? List.of(args).subList(1, args.length) : List.of("");
        InterviewBenchmark benchmark = new InterviewBenchmark();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(f -> isWanted(f, wanted)).sorted().toList()) {
                CaseDocument document = new CaseReader().read(file);
                if (document.expected().isPresent()) {
                    benchmark.run(document);
                }
            }
        }
        benchmark.medians();
        benchmark.row(folder.getFileName().toString());
        if (ALL_ORDERS) {
            benchmark.choosing();
        }
    }

    private static boolean isWanted(Path file, List<String> beginnings) {
        String name = file.getFileName().toString();
        return name.endsWith(".yaml") && beginnings.stream().anyMatch(name::startsWith);
    }

    /** How long the choice of the next question takes, warm, with nothing answered but the complaint. */
    private void choosing() {
        CaseSheet sheet = new CaseSheet(new CaseId("warm"));
        sheet.finding(new FindingEntry("range-grinds-into-low", FindingState.PRESENT));
        sheet.finding(new FindingEntry("hard-shift-all-gears", FindingState.PRESENT));
        sheet.finding(new FindingEntry("oil-level-low", FindingState.PRESENT));
        double[] planned = new double[CHOICES];
        int open = 0;
        try (OpenCase warm = diagnosis.open(sheet.toCaseFile())) {
            warm.judgement();
            for (int i = 0; i < CHOICES; i++) {
                long start = System.nanoTime();
                open = warm.visits(Hands.off(), Set.of()).stream()
                        .mapToInt(v -> v.checks().size())
                        .sum();
                planned[i] = (System.nanoTime() - start) / 1e6;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "Choosing the next question among %d open checks worth making: median %.1f ms of %d, after the first"
                        + " half%n",
                open,
                median(Arrays.copyOfRange(planned, CHOICES / 2, CHOICES)),
                CHOICES / 2);
    }

    private void run(CaseDocument document) {
        KnownAnswers truth = new KnownAnswers(
                document,
                diagnosis.knowledge(),
                search,
                diagnosis.judge(document.present()).verdict());
        Asking.Whole interview = new Asking(diagnosis, truth).interview();
        Asking.Course whole = interview.end();
        early += interview.early() ? 1 : 0;
        String id = document.present().id().text();
        if (!truth.isDetermined()) {
            cannotBeTold++;
            toldAllTheSame += whole.last().isDetermined() ? 1 : 0;
            System.out.printf(
                    Locale.ROOT,
                    "%-40s cannot be told: interview ended after %d questions, %.0f min, with %s%n",
                    id,
                    whole.questions(),
                    whole.minutes(),
                    whole.last().classId());
            return;
        }
        determined++;
        reached += interview.right().reached() ? 1 : 0;
        wrong += whole.last().isDetermined() && !whole.reached() ? 1 : 0;
        unsettled += whole.last().isDetermined() || whole.reached() ? 0 : 1;
        Map<String, Asking.Course> mine = new LinkedHashMap<>();
        mine.put("interview", interview.right());
        if (!ORDERS.equals("interview")) {
            mine.put("fixed order", new Asking(diagnosis, truth).downTheList());
        }
        if (ALL_ORDERS) {
            mine.put("information only", new Asking(diagnosis, truth).mostInformationFirst());
            mine.put("all apart first", new Asking(diagnosis, truth).everythingApart());
        }
        mine.put("interview to its end", whole);
        mine.forEach((name, course) ->
                courses.computeIfAbsent(name, n -> new ArrayList<>()).add(course));
        List<Asking.Course> random = new ArrayList<>();
        for (int seed = 1; ALL_ORDERS && seed <= RANDOM_ORDERS; seed++) {
            random.add(new Asking(diagnosis, truth).atRandom(seed));
        }
        courses.computeIfAbsent("random order", n -> new ArrayList<>()).addAll(random);
        System.out.printf(
                Locale.ROOT,
                "%-40s %s; ended by itself after %d, %.0f min%s%n",
                id,
                line(mine),
                whole.questions(),
                whole.minutes(),
                whole.reached() ? "" : " WITH " + whole.last().classId());
    }

    private static String line(Map<String, Asking.Course> mine) {
        StringBuilder text = new StringBuilder();
        mine.forEach((name, c) -> text.append(String.format(
                Locale.ROOT, "%s %d/%.0f%s  ", name, c.questions(), c.minutes(), c.reached() ? "" : "!")));
        return text.toString().strip();
    }

    private void medians() {
        table("All interviews on cases of determined outcome", c -> true);
        table("Without those in which nothing had to be asked", c -> c.questions() > 0);
        System.out.println("An order that never reached the right verdict counts with all its questions and minutes.");
        System.out.printf(
                Locale.ROOT,
                "Interviews that ended by themselves with a wrong verdict: %d; that gave one where it cannot be told:"
                        + " %d of %d; that gave one before all was asked that is looked at first: %d%n",
                wrong,
                toldAllTheSame,
                cannotBeTold,
                early);
    }

    /** The folder's row of the table in DEVELOPERS.md; minutes of the fixed list only where it was tried. */
    private void row(String folder) {
        List<Asking.Course> mine = courses.getOrDefault("interview", List.of());
        List<Asking.Course> list = courses.getOrDefault("fixed order", List.of());
        double minutes = mine.stream().mapToDouble(Asking.Course::minutes).sum();
        double listed = list.stream().mapToDouble(Asking.Course::minutes).sum();
        System.out.println();
        System.out.println("| cases | determined | reached | ended wrong | ended undetermined | cannot be told |"
                + " of them ended with a class | before first looks | questions, median | minutes, median |"
                + " fixed list's, median | total of minutes to the list's |");
        System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|");
        System.out.printf(
                Locale.ROOT,
                "| %s | %d | %d | %d | %d | %d | %d | %d | %.0f | %.0f | %s | %s |%n",
                folder,
                determined,
                reached,
                wrong,
                unsettled,
                cannotBeTold,
                toldAllTheSame,
                early,
                median(mine.stream().mapToDouble(Asking.Course::questions).toArray()),
                median(mine.stream().mapToDouble(Asking.Course::minutes).toArray()),
                list.isEmpty()
                        ? "-"
                        : String.format(
                                Locale.ROOT,
                                "%.0f",
                                median(list.stream()
                                        .mapToDouble(Asking.Course::minutes)
                                        .toArray())),
                listed == 0 ? "-" : String.format(Locale.ROOT, "%.1f %%", 100 * minutes / listed));
    }

    private void table(String title, Predicate<Asking.Course> which) {
        System.out.println();
        System.out.println(title);
        System.out.println("order                 cases  reached  median questions  median minutes  mean minutes");
        courses.forEach((name, courses) -> {
            List<Asking.Course> all = courses.stream().filter(which).toList();
            System.out.printf(
                    Locale.ROOT,
                    "%-21s %5d  %7d  %16.1f  %14.1f  %12.1f%n",
                    name,
                    all.size(),
                    all.stream().filter(Asking.Course::reached).count(),
                    median(all.stream().mapToDouble(Asking.Course::questions).toArray()),
                    median(all.stream().mapToDouble(Asking.Course::minutes).toArray()),
                    all.stream().mapToDouble(Asking.Course::minutes).average().orElse(0));
        });
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }
}
