package witnessmark.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.interview.Interview;
import witnessmark.interview.Question;
import witnessmark.knowledge.search.FindEntries;

/**
 * How long an interview takes from an answer to the next question when every answer is unsure, which folds nothing into
 * the causes. Arguments: a folder of case files (sample-cases), how many of them (10), how many questions (40).
 */
public final class UnsureBenchmark {
    private UnsureBenchmark() {}

    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : "sample-cases");
        int cases = args.length > 1 ? Integer.parseInt(args[1]) : 10;
        int most = args.length > 2 ? Integer.parseInt(args[2]) : 40;
        Diagnosis diagnosis = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
        FindEntries search = new FindEntries(diagnosis.knowledge());
        List<double[]> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".yaml"))
                    .sorted()
                    .limit(cases)
                    .toList()) {
                CaseDocument document = new CaseReader().read(file);
                KnownAnswers truth = new KnownAnswers(
                        document,
                        diagnosis.knowledge(),
                        search,
                        diagnosis.judge(document.present()).verdict());
                all.addAll(unsure(diagnosis, new Asking(diagnosis, truth), most, file));
            }
        }
        print("question 1 to 20", all, 0, 20);
        print("question 21 to 40", all, 20, 40);
        print("later", all, 40, Integer.MAX_VALUE);
    }

    /** For each question its number, and milliseconds of wall and of this thread's processor time to come to it. */
    private static List<double[]> unsure(Diagnosis diagnosis, Asking asking, int most, Path file) {
        List<double[]> times = new ArrayList<>();
        try (Interview interview = new Interview(diagnosis, new Asking.Kept(asking.start()))) {
            var question = interview.question();
            for (int n = 1; question.isPresent() && n <= most; n++) {
                Question asked = question.get();
                long wall = System.nanoTime();
                long busy = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                interview.answer(new FindingEntry(asked.finding().id(), FindingState.UNSURE));
                question = interview.question();
                times.add(new double[] {
                    n,
                    (System.nanoTime() - wall) / 1e6,
                    (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - busy) / 1e6
                });
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%-45s %d questions, slowest %.0f ms (processor %.0f ms)%n",
                file.getFileName(),
                times.size(),
                times.stream().mapToDouble(t -> t[1]).max().orElse(0),
                times.stream().mapToDouble(t -> t[2]).max().orElse(0));
        return times;
    }

    private static void print(String what, List<double[]> times, int after, int to) {
        double[] busy = times.stream()
                .filter(t -> t[0] > after && t[0] <= to)
                .mapToDouble(t -> t[2])
                .sorted()
                .toArray();
        if (busy.length > 0) {
            System.out.printf(
                    Locale.ROOT,
                    "%-20s %d, processor time: median %.0f ms, worst %.0f ms%n",
                    what,
                    busy.length,
                    busy[busy.length / 2],
                    busy[busy.length - 1]);
        }
    }
}
