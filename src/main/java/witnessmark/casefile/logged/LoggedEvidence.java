package witnessmark.casefile.logged;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Likelihood;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.LogRecord;

/** Puts down what trip logs say as evidence of a case: findings with how well the logs fit them, and the files' hashes. */
public final class LoggedEvidence {
    /** More would make the case file unwieldy. */
    public static final int MOST_FILES = 500;

    private static final int MOST_REMARKS = 20;

    private static final String METHOD =
            "A mean rate m per chance, any true rate scattered exponentially about it: x events in E chances have the"
                    + " chance (1/(1+mE)) (mE/(1+mE))^x, once with the usual rate of a truck that has it, once with that"
                    + " of one that has not (rates: common practice). Held between 100 times for and 20 times against. The"
                    + " weights here are of these logs alone; all logs of the case are added up and weighed as one.";

    private LoggedEvidence() {}

    /**
     * One result of a case from logs. A finding enters it only if the logs speak for it, or could have shown it often
     * enough and did not; what the logs leave open, and what they cannot show, is told in the summary and followed by
     * nothing.
     *
     * @param inputs what went in, besides the files
     * @param files the logs, at least one
     * @param record what they held
     * @param remarks what is to be known of how the reading went, one sentence each; the first ones are kept
     * @param weigh what weighs the record
     */
    public static Evidence of(
            String id,
            Map<String, String> inputs,
            List<SourceFile> files,
            LogRecord record,
            List<String> remarks,
            WeighOnce weigh) {
        if (files.size() > MOST_FILES) {
            throw new CaseRefused(
                    "evidence '" + CheckedText.shown(id) + "': " + files.size() + " log files",
                    "add at most " + MOST_FILES + " at once");
        }
        Map<String, String> all = new LinkedHashMap<>(inputs);
        if (files.size() > 1) {
            for (int i = 0; i < files.size(); i++) {
                all.put(
                        "log-" + (i + 1),
                        files.get(i).sha256() + " " + files.get(i).name());
            }
        }
        List<LogEvidence> said = weigh.said(record);
        Map<String, FindingState> findings = new LinkedHashMap<>();
        Map<String, Likelihood> likelihoods = new LinkedHashMap<>();
        for (LogEvidence evidence : counted(said)) {
            findings.put(evidence.finding(), LoggedTogether.state(evidence));
            likelihoods.put(evidence.finding(), new Likelihood(evidence.ifPresent(), evidence.ifAbsent()));
        }
        return new Evidence(
                id,
                Evidence.Kind.LOGGED,
                summary(said, record.doubts(), remarks),
                METHOD,
                all,
                files.size() == 1 ? Optional.of(files.get(0)) : Optional.empty(),
                findings,
                likelihoods,
                Optional.of(record));
    }

    /** What all logs of the case held, as the one witness that they are; empty where there is at most one result. */
    public static Optional<LogRecord> pooled(CaseFile file) {
        List<LogRecord> records = records(file);
        return records.size() < 2 ? Optional.empty() : records.stream().reduce(LogRecord::plus);
    }

    private static List<LogRecord> records(CaseFile file) {
        return file.evidence().values().stream()
                .flatMap(e -> e.record().stream())
                .toList();
    }

    /**
     * The same in words, weighed as one.
     *
     * @param together what the results of this case come to
     */
    public static Optional<String> together(CaseFile file, CombinedEvidence together) {
        return records(file).size() < 2 ? Optional.empty() : Optional.of(summary(together.logs()));
    }

    /** Those that enter the case. */
    public static List<LogEvidence> counted(List<LogEvidence> said) {
        return said.stream().filter(LogEvidence::counts).toList();
    }

    private static String summary(List<LogEvidence> said, List<String> doubts, List<String> remarks) {
        String told = remarks.stream().limit(MOST_REMARKS).collect(Collectors.joining("; "));
        String doubted = String.join("; ", doubts);
        return (doubted.isEmpty() ? "" : "Added although it is in doubt: " + doubted + ". ")
                + summary(said)
                + (told.isEmpty() ? "" : " Of the reading: " + told + ".");
    }

    private static String summary(List<LogEvidence> said) {
        List<String> sentences = new ArrayList<>();
        sentences.add(group("The logs speak for", said, e -> e.state() == LogEvidence.State.PRESENT));
        sentences.add(group(
                "They speak for, too thin to rest a conclusion on",
                said,
                e -> e.state() == LogEvidence.State.UNSURE && e.counts()));
        sentences.add(group("They could have shown and did not", said, e -> e.state() == LogEvidence.State.ABSENT));
        String text = sentences.stream().filter(s -> !s.isEmpty()).collect(Collectors.joining(" "));
        return text.isEmpty() ? "The logs say too little for or against any finding." : text;
    }

    private static String group(String lead, List<LogEvidence> said, Predicate<LogEvidence> which) {
        String list = said.stream()
                .filter(which)
                .map(e -> e.finding() + " (" + e.sentence() + "; " + factor(e)
                        + e.thin().map(t -> "; " + t.words()).orElse("") + ")")
                .collect(Collectors.joining("; "));
        return list.isEmpty() ? "" : lead + ": " + list + ".";
    }

    /** How many times better the logs fit with the finding than without, or the other way round. */
    public static String factor(LogEvidence evidence) {
        double factor = evidence.factor();
        double times = factor >= 1 ? factor : 1 / factor;
        return String.format(
                Locale.ROOT,
                times < 10 ? "fits %.1f times better %s" : "fits %.0f times better %s",
                times,
                factor >= 1 ? "with it" : "without it");
    }
}
