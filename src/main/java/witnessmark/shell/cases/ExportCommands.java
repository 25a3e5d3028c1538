package witnessmark.shell.cases;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.store.CaseQuery;
import witnessmark.casefile.store.CaseSummary;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.SignJudgement;
import witnessmark.diagnosis.Verdict;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.CsvTable;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Terminal;

/** The commands that give cases and findings to other programs. */
@Component
class ExportCommands {
    private static final int PAGE = 500;
    private static final List<String> CASE_COLUMNS = caseColumns();
    private static final List<String> FINDING_COLUMNS =
            List.of("case", "truck", "finding", "title", "system", "part", "state", "note");

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ObjectProvider<Diagnosis> diagnosis;
    private final ObjectProvider<MadeWith> made;
    private final SignedCases signedCases;
    private final AnswerJson json;

    ExportCommands(
            ObjectProvider<Cases> cases,
            ObjectProvider<KnowledgeBase> knowledge,
            ObjectProvider<Diagnosis> diagnosis,
            ObjectProvider<MadeWith> made,
            SignedCases signedCases,
            AnswerJson json) {
        this.json = json;
        this.signedCases = signedCases;
        this.cases = cases;
        this.knowledge = knowledge;
        this.diagnosis = diagnosis;
        this.made = made;
    }

    @Command(
            name = "export cases",
            group = "Documents",
            description = "Give cases as a table for a spreadsheet, or whole as JSON",
            help = "[CASE|FILE.yaml] [--as csv|json]",
            exitStatusExceptionMapper = "refusals")
    void cases(
            CommandContext context,
            @Argument(index = 0, description = "one case; without it all that are stored", defaultValue = "")
                    String name,
            @Option(longName = "as", defaultValue = "csv", description = OptionText.TABLE) TableForm as,
            @Option(longName = "out", defaultValue = "", description = OptionText.OUT) GivenPath out,
            @Option(longName = "replace", defaultValue = "false", description = OptionText.REPLACE) Boolean replace) {
        Rows rows = new Rows(as, CASE_COLUMNS);
        each(name, document -> {
            Optional<AfterSignOff> after = signedCases.after(document);
            rows.add(() -> caseRow(document, after), () -> CaseJson.of(document, after));
        });
        give(context, rows, out, replace);
    }

    @Command(
            name = "export findings",
            group = "Documents",
            description = "Give every finding of every case as a table for a spreadsheet, or as JSON",
            help = "[CASE|FILE.yaml] [--as csv|json]",
            exitStatusExceptionMapper = "refusals")
    void findings(
            CommandContext context,
            @Argument(index = 0, description = "one case; without it all that are stored", defaultValue = "")
                    String name,
            @Option(longName = "as", defaultValue = "csv", description = OptionText.TABLE) TableForm as,
            @Option(longName = "out", defaultValue = "", description = OptionText.OUT) GivenPath out,
            @Option(longName = "replace", defaultValue = "false", description = OptionText.REPLACE) Boolean replace) {
        Rows rows = new Rows(as, FINDING_COLUMNS);
        each(name, document -> findingRows(document.present())
                .forEach(row -> rows.add(() -> row, () -> named(FINDING_COLUMNS, row))));
        give(context, rows, out, replace);
    }

    private void each(String name, Consumer<CaseDocument> use) {
        Cases from = cases.getObject();
        if (!name.isEmpty()) {
            use.accept(from.find(name));
            return;
        }
        CaseQuery query = CaseQuery.all().withPage(PAGE, 0);
        List<CaseSummary> page = from.store().list(query);
        while (!page.isEmpty()) {
            page.forEach(summary -> use.accept(CaseDocument.of(from.toShow(summary.id()))));
            page = from.store().list(query.after(page.get(page.size() - 1).id()));
        }
    }

    private static List<String> caseColumns() {
        List<String> columns = new ArrayList<>(List.of(
                "case",
                "title",
                "truck",
                "serial",
                "odometer_km",
                "complaint",
                "findings_present",
                "verdict",
                "standing",
                "points_to",
                "signed_off_by",
                "signed_off_on",
                "verdict_today",
                "changed_since",
                "chain",
                "files_damaged",
                "work_done"));
        columns.addAll(ClaimColumns.names());
        return List.copyOf(columns);
    }

    private List<Object> caseRow(CaseDocument document, Optional<AfterSignOff> after) {
        CaseFile file = document.present();
        SignedJudgement judgement = judgement(file);
        List<Object> row = new ArrayList<>(List.of(
                file.id().text(),
                file.title(),
                file.vehicle().unit(),
                file.vehicle().serial(),
                file.vehicle().odometerKm().isPresent()
                        ? (Object) file.vehicle().odometerKm().getAsDouble()
                        : "",
                file.complaint(),
                String.join(
                        " ",
                        file.findings().values().stream()
                                .filter(f -> f.state() == FindingState.PRESENT)
                                .map(FindingEntry::finding)
                                .toList()),
                judgement.verdict(),
                judgement.standing(),
                judgement.pointsTo().orElse(""),
                file.signedOff().map(SignOff::who).orElse(""),
                file.signedOff().map(s -> s.time().toString()).orElse(""),
                after.filter(AfterSignOff::differs)
                        .map(a -> a.now().standing() == Verdict.Standing.CONCLUDED
                                ? a.now().classId()
                                : a.now().standing().word())
                        .orElse(""),
                after.filter(AfterSignOff::differs)
                        .map(a -> String.join(
                                " ",
                                a.changed().stream()
                                        .map(AfterSignOff.Changed::word)
                                        .toList()))
                        .orElse(""),
                document.history()
                        .map(h ->
                                h.verify() instanceof ChainCheck.Broken at ? "broken at entry " + at.number() : "whole")
                        .orElse(""),
                document.history()
                        .map(CaseHistory::damagedFiles)
                        .map(DamagedFile::sentence)
                        .orElse(""),
                file.workDone()));
        row.addAll(ClaimColumns.cells(file));
        return row;
    }

    /** What was signed; for a case that is open what is judged today. */
    private SignedJudgement judgement(CaseFile file) {
        return file.signedOff()
                .flatMap(SignOff::judgement)
                .orElseGet(() -> SignJudgement.of(diagnosis.getObject().judge(file), made.getObject()));
    }

    private List<List<Object>> findingRows(CaseFile file) {
        List<List<Object>> rows = new ArrayList<>();
        file.findings().values().forEach(entry -> {
            Finding known = knowledge.getObject().findings().get(entry.finding());
            rows.add(List.of(
                    file.id().text(),
                    file.vehicle().unit(),
                    entry.finding(),
                    known == null ? "" : known.title(),
                    known == null ? "" : known.system(),
                    known == null ? "" : known.part(),
                    entry.state().word(),
                    entry.note()));
        });
        return rows;
    }

    private static Map<String, Object> named(List<String> columns, List<Object> row) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            named.put(columns.get(i), row.get(i));
        }
        return named;
    }

    private void give(CommandContext context, Rows rows, GivenPath out, boolean replace) {
        String text = rows.text(json);
        if (out.isEmpty()) {
            // A spreadsheet gets what was written; a terminal gets nothing that could steer it.
            context.outputWriter().print(Terminal.canAsk() ? Terminal.harmless(text) : text);
        } else {
            NewFile.write(out.path(), text.getBytes(StandardCharsets.UTF_8), NewFile.Older.of(replace));
            Terminal.line(
                    context.outputWriter(), rows.count + (rows.count == 1 ? " row" : " rows") + " written: " + out);
        }
        context.outputWriter().flush();
    }

    private record Table(List<Object> rows) {}

    /** What an export is written as. */
    enum TableForm {
        CSV,
        JSON
    }

    /** Rows being gathered in the form asked for. */
    private static final class Rows {
        private final boolean json;
        private final StringWriter csv = new StringWriter();
        private final CsvTable table = new CsvTable(csv);
        private final List<Object> objects = new ArrayList<>();
        private int count;

        Rows(TableForm as, List<String> columns) {
            json = as == TableForm.JSON;
            write(columns);
        }

        /** Only the one that is written is made. */
        void add(Supplier<List<Object>> row, Supplier<?> object) {
            count++;
            if (json) {
                objects.add(object.get());
            } else {
                write(row.get());
            }
        }

        private void write(List<?> row) {
            table.row(row);
        }

        /** What is written, in the form asked for. */
        String text(AnswerJson answers) {
            return json ? answers.of(new Table(objects)) + "\n" : csv.toString();
        }
    }
}
