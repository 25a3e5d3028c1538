package witnessmark.shell.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.logged.LoggedEvidence;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.summary.LogVerdict;

/**
 * Logs that were stored in a case.
 *
 * @param evidence these logs
 * @param said what all logs of the case say together
 * @param alone whether there is only one log in the case
 */
record LogAdded(CaseHistory history, Evidence evidence, TruckResult logs, List<LogEvidence> said, boolean alone) {

    void print(Page page, KnowledgeBase knowledge) {
        page.line("Stored in case " + history.id() + " as evidence " + evidence.id() + ", entry "
                + history.last().number() + ".");
        page.line(String.format(
                Locale.ROOT,
                "%d %s, %.1f km, %s",
                logs.trips().size(),
                logs.trips().size() == 1 ? "log" : "logs",
                logs.summary().km(),
                ScreenFigures.clock(logs.summary().coveredHours())));
        logs.trips().stream().limit(10).forEach(t -> {
            page.item(String.valueOf(t.report().file().getFileName()));
            page.drawn("    SHA-256 " + t.report().sha256().orElse(""));
            LogRemarks.of(t, alone).forEach(r -> page.indented("    ", "    ", r));
        });
        evidence.record().ifPresent(r -> r.doubts().forEach(d -> page.item("In doubt: " + d)));
        together(page);
        group(page, knowledge, "Speaks for", e -> e.state() == LogEvidence.State.PRESENT);
        group(
                page,
                knowledge,
                "Speaks for, too thin to rest a conclusion on",
                e -> e.counts() && e.state() == LogEvidence.State.UNSURE);
        group(
                page,
                knowledge,
                "Could have shown it and did not: speaks against",
                e -> e.state() == LogEvidence.State.ABSENT);
        open(page, knowledge);
        blind(page);
        page.blank();
        if (said.stream().anyMatch(LogEvidence::speaksFor)) {
            page.line(LogText.NAMES_A_TRUCK);
        }
        page.line("It weighs in: diagnose " + history.id());
        page.flush();
    }

    /** Other logs of the case, which these are weighed with. */
    private List<String> others() {
        return history.present().evidence().values().stream()
                .filter(e -> e.record().isPresent() && !e.id().equals(evidence.id()))
                .map(Evidence::id)
                .toList();
    }

    private void together(Page page) {
        if (!others().isEmpty()) {
            page.blank();
            page.line("Weighed as one record with the logs of " + ScreenFigures.some(others(), 5)
                    + ": counts and what they cover are added, below is what all of them say together.");
        }
    }

    private void group(Page page, KnowledgeBase knowledge, String title, Predicate<LogEvidence> which) {
        List<LogEvidence> group = said.stream().filter(which).toList();
        if (group.isEmpty()) {
            return;
        }
        page.heading(title);
        for (LogEvidence e : group) {
            page.item(title(knowledge, e) + " (" + e.finding() + ")");
            page.indented(
                    "    ",
                    "    ",
                    e.sentence() + "; " + LoggedEvidence.factor(e)
                            + e.thin().map(t -> "; " + t.words()).orElse(""));
        }
    }

    private static String title(KnowledgeBase knowledge, LogEvidence e) {
        return knowledge.findings().containsKey(e.finding())
                ? knowledge.findings().get(e.finding()).title().replaceFirst("^Log: ", "")
                : e.finding();
    }

    private void open(Page page, KnowledgeBase knowledge) {
        String titles = said.stream()
                .filter(e -> !e.counts())
                .map(e -> title(knowledge, e))
                .collect(Collectors.joining("; "));
        if (!titles.isEmpty()) {
            page.heading("Too little to count either way").indented("  ", "  ", titles);
        }
    }

    private void blind(Page page) {
        List<LogVerdict> blind = logs.summary().verdicts().stream()
                .filter(v -> v.state() == LogVerdict.State.CANNOT_BE_SEEN)
                .toList();
        if (!blind.isEmpty()) {
            page.heading(
                    alone
                            ? "Cannot be seen in this log; nothing follows from that"
                            : "Cannot be seen in the logs added now; nothing follows from that");
            page.indented("  ", "  ", blind.stream().map(v -> v.kind().words()).collect(Collectors.joining("; ")));
        }
    }

    /** The same for a program. */
    record Form(
            @Json.Name("case") String id,
            String evidence,
            long entry,
            List<String> weighedWith,
            List<String> doubts,
            List<Said> findings,
            List<String> cannotBeSeen,
            Map<String, String> sha256) {}

    record Said(
            String finding,
            LogEvidence.State state,
            boolean stored,
            Optional<String> thin,
            double ifPresent,
            double ifAbsent,
            long count,
            double chances,
            String sentence) {
        static Said of(LogEvidence e) {
            return new Said(
                    e.finding(),
                    e.state(),
                    e.counts(),
                    e.thin().map(thin -> thin.words()),
                    e.ifPresent(),
                    e.ifAbsent(),
                    e.count(),
                    e.chances(),
                    e.sentence());
        }
    }

    Form form() {
        Map<String, String> files = new LinkedHashMap<>();
        logs.trips()
                .forEach(t -> files.put(
                        t.report().file().toString(), t.report().sha256().orElse("")));
        return new Form(
                history.id().toString(),
                evidence.id(),
                history.last().number(),
                others(),
                evidence.record().map(r -> r.doubts()).orElse(List.of()),
                said.stream().map(Said::of).toList(),
                logs.summary().verdicts().stream()
                        .filter(v -> v.state() == LogVerdict.State.CANNOT_BE_SEEN)
                        .map(v -> v.kind().id())
                        .toList(),
                files);
    }
}
