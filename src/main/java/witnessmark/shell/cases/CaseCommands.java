package witnessmark.shell.cases;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.casefile.store.CaseQuery;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.CaseSummary;
import witnessmark.casefile.store.KeptCase;
import witnessmark.casefile.store.StoreUnavailable;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseWriter;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.SignJudgement;
import witnessmark.diagnosis.Verdict;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.refusal.Refusal;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.knowledge.KnownIds;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;

/** The commands that open, find, close, check and move whole cases. */
@Component
class CaseCommands {
    private static final String GROUP = "Cases";
    /** Among a million cases it takes longer to count those that fit than to list the first. */
    private static final long MOST_COUNTED = 1_000;

    private static final int LONGEST_COMPLAINT = 120;
    private static final int MOST_ENTRIES_OF_AN_EMPTY_CASE = 40;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ObjectProvider<Diagnosis> diagnosis;
    private final ObjectProvider<MadeWith> made;
    private final SignedCases signedCases;
    private final AnswerJson json;

    CaseCommands(
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
            name = "case new",
            group = GROUP,
            description = "Open a case",
            help = "ID",
            exitStatusExceptionMapper = "refusals")
    void open(
            CommandContext context,
            @Argument(index = 0, description = "id: lower-case letters, digits, hyphens") CaseId id,
            @Option(longName = "title", defaultValue = "", description = "short title") String title,
            @Option(longName = "complaint", defaultValue = "", description = "the customer's words") String complaint,
            @Option(longName = "unit", defaultValue = "", description = "the fleet's name for the truck") String unit,
            @Option(longName = "odometer-km", defaultValue = "", description = OptionText.ODOMETER)
                    OptionalDouble odometer,
            @Option(longName = "ratios", defaultValue = "", description = OptionText.RATIOS) String ratios,
            @Option(longName = "range", defaultValue = "", description = OptionText.RANGE) String range,
            @Option(longName = "splitter", defaultValue = "", description = OptionText.SPLITTER) String splitter,
            @Option(longName = "countershafts", defaultValue = "", description = OptionText.COUNTERSHAFTS)
                    String shafts,
            @Option(longName = "linkage", defaultValue = "", description = "direct, remote") String linkage) {
        Layout layout = LayoutOption.changed(Layout.unknown(), ratios, range, splitter, shafts, linkage, "", "", "");
        Vehicle vehicle = new Vehicle(unit, "", "", odometer, OptionalDouble.empty(), OptionalDouble.empty(), "");
        Cases from = cases.getObject();
        CaseHistory history = from.store().open(new Opened(id, title, complaint, vehicle, layout), from.who());
        Page page = new Page(context.outputWriter());
        page.line("Case " + history.id() + " is open. Enter what was found with: case set " + history.id()
                + " FINDING=present|absent|unsure, or be asked with: interview " + history.id());
        page.flush();
    }

    @Command(
            name = "case show",
            group = GROUP,
            description = "Show a case as it stands",
            help = "CASE|FILE.yaml",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void show(
            CommandContext context,
            @Argument(index = 0, description = "case id or file") String name,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        CaseDocument document = cases.getObject().find(name);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(CaseJson.of(document, signedCases.after(document))));
            return;
        }
        CombinedEvidence evidence = CombinedEvidence.of(document.present());
        new CaseText(knowledge.getObject(), new Page(context.outputWriter()))
                .print(document, signedCases.after(document, evidence), evidence);
    }

    @Command(
            name = "case list",
            group = GROUP,
            description = "List cases, those opened last first",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void list(
            CommandContext context,
            @Option(
                            longName = "words",
                            defaultValue = "",
                            description =
                                    "words in id, title, unit or complaint; one or two letters where a word begins")
                    String words,
            @Option(longName = "finding", defaultValue = "", description = "cases with this finding") String finding,
            @Option(longName = "state", defaultValue = "present", description = "in this state") FindingState state,
            @Option(longName = "open", description = "only open cases") boolean open,
            @Option(longName = "closed", description = "only closed cases") boolean closed,
            @Option(longName = "voided", description = "voided cases too") boolean voided,
            @Option(longName = "most", defaultValue = "20", description = "how many") Integer most,
            @Option(longName = "from", defaultValue = "0", description = "how many to leave out before") Integer from,
            @Option(
                            longName = "after",
                            defaultValue = "",
                            description = "go on after this case, however deep in the list")
                    String after,
            @Option(longName = "oldest", description = "the oldest first") boolean oldest,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        CaseQuery query = CaseQuery.all().withText(words).withPage(most, from);
        if (oldest) {
            query = query.turnedRound();
        }
        if (!after.isEmpty()) {
            query = query.after(cases.getObject().known(after));
        }
        if (!finding.isEmpty()) {
            query = query.withFinding(finding, state);
        }
        if (open || closed) {
            query = closed ? query.closedOnly() : query.openOnly();
        }
        List<CaseSummary> list = cases.getObject().store().list(query);
        long all = cases.getObject().store().countUpTo(MOST_COUNTED + 1, query);
        if (format == Format.JSON) {
            context.outputWriter()
                    .println(json.of(CaseJson.Listed.of(
                            list, cases.getObject().store()::look, Math.min(all, MOST_COUNTED), all > MOST_COUNTED)));
            return;
        }
        Page page = new Page(context.outputWriter());
        Map<CaseId, KeptCase> kept = new LinkedHashMap<>();
        list.forEach(c -> kept.put(c.id(), cases.getObject().store().look(c.id())));
        List<CaseSummary> shown = list.stream()
                .filter(c -> voided || !isVoided(c, kept.get(c.id())))
                .toList();
        amiss(
                page,
                "THE CHAIN OF ENTRIES IS BROKEN in: ",
                shown,
                id -> kept.get(id).chain() instanceof ChainCheck.Broken);
        amiss(page, "FILES ARE NOT AS THEY WERE PUT IN in: ", shown, id -> !kept.get(id)
                .damagedFiles()
                .isEmpty());
        shown.forEach(c -> line(page, c, kept.get(c.id())));
        int left = list.size() - shown.size();
        String fit = all > MOST_COUNTED ? "more than " + MOST_COUNTED : String.valueOf(all);
        page.line((all == 0 ? "No case fits." : shown.size() + " of " + fit + " shown.")
                + (left == 0 ? "" : " Voided and left out: " + left + "; --voided shows them.")
                + (list.size() < most || all <= most
                        ? ""
                        : " Go on with --after " + list.get(list.size() - 1).id() + "."));
        page.flush();
    }

    private static void amiss(Page page, String what, List<CaseSummary> shown, Predicate<CaseId> which) {
        String ids = shown.stream()
                .map(CaseSummary::id)
                .filter(which)
                .map(CaseId::text)
                .collect(Collectors.joining(", "));
        if (!ids.isEmpty()) {
            page.line(what + ids);
        }
    }

    private boolean isVoided(CaseSummary summary, KeptCase kept) {
        // Only a case without findings can be voided, and its entries are few.
        if (summary.entries() > MOST_ENTRIES_OF_AN_EMPTY_CASE) {
            return false;
        }
        try {
            CaseHistory history =
                    kept.history().orElseGet(() -> cases.getObject().store().readAsKept(summary.id()));
            return !history.present().text(TextField.VOIDED).isEmpty();
        } catch (StoreUnavailable e) {
            // It is listed with what is wrong with it.
            return false;
        }
    }

    /** What the case is about, and how it stands. */
    private void line(Page page, CaseSummary c, KeptCase kept) {
        if (kept.chain() instanceof ChainCheck.Broken cut) {
            page.indented(
                    String.format("%-24s ", c.id()),
                    " ".repeat(25),
                    "[CHAIN BROKEN at entry " + cut.number() + "] " + cut.why() + "; see: case verify " + c.id());
            return;
        }
        CaseHistory history = kept.history().orElseThrow();
        CaseFile file = history.present();
        String about = c.title().isEmpty() ? file.complaint() : c.title();
        page.indented(
                String.format("%-24s ", c.id()),
                " ".repeat(25),
                shortened(about.isEmpty() ? "(no complaint yet)" : about)
                        + (c.unit().isEmpty() ? "" : " - " + c.unit()) + ", changed "
                        + c.changed().toString().substring(0, 10));
        if (!kept.damagedFiles().isEmpty()) {
            page.indented(
                    " ".repeat(25),
                    " ".repeat(25),
                    "[FILES DAMAGED] " + DamagedFile.sentence(kept.damagedFiles()) + "; see: case verify " + c.id());
        }
        page.indented(" ".repeat(25), " ".repeat(25), standing(history));
    }

    private String standing(CaseHistory history) {
        CaseFile file = history.present();
        if (file.signedOff().isPresent()) {
            return "signed off"
                    + (history.last().change() instanceof CorrectedAfterSignOff ? ", corrected since" : "")
                    + file.signedOff()
                            .flatMap(SignOff::judgement)
                            .map(j -> ", on: " + j.sentence())
                            .orElse("");
        }
        if (!file.text(TextField.VOIDED).isEmpty()) {
            return "voided: " + file.text(TextField.VOIDED);
        }
        if (file.findings().isEmpty()
                && file.measurements().isEmpty()
                && file.evidence().isEmpty()) {
            return "nothing looked at yet";
        }
        try {
            return verdict(file).sentence();
        } catch (Refusal e) {
            return "cannot be judged: see diagnose " + file.id();
        }
    }

    private Verdict verdict(CaseFile file) {
        try (OpenCase open = diagnosis.getObject().open(file)) {
            return open.verdict();
        }
    }

    private static String shortened(String text) {
        String line = text.lines().findFirst().orElse("");
        return line.length() <= LONGEST_COMPLAINT && line.equals(text)
                ? line
                : line.substring(0, Math.min(line.length(), LONGEST_COMPLAINT)) + " ...";
    }

    @Command(
            name = "case void",
            group = GROUP,
            description = "Mark an empty case as none, such as one opened by mistake",
            help = "CASE; only a case in which nothing was found, measured, noted or filed yet",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void voided(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Option(longName = "because", defaultValue = "opened by mistake", description = "why it is none")
                    String because) {
        Cases from = cases.getObject();
        CaseFile file = from.alarm(from.history(id)).present();
        boolean empty = file.findings().isEmpty()
                && file.measurements().isEmpty()
                && file.evidence().isEmpty()
                && file.notes().isEmpty()
                && file.attachments().isEmpty()
                && file.signedOff().isEmpty();
        if (!empty) {
            throw new Refused(
                    "case '" + id + "' holds findings, values, notes or files, and a record is not taken away",
                    "say in a note why it is not to be used: case note " + id + " TEXT");
        }
        from.enter(id, List.of(new TextSet(TextField.VOIDED, because)), "");
        context.outputWriter().println("Case " + id + " is voided; it stays in the store and is left out of lists.");
    }

    @Command(
            name = "case sign-off",
            group = GROUP,
            description = "Close a case; later changes need a reason",
            help = "CASE",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void signOff(CommandContext context, @Argument(index = 0, description = "case id") CaseId id) {
        Cases from = cases.getObject();
        CaseId signed = id;
        Judgement judgement =
                diagnosis.getObject().judge(from.store().read(signed).present());
        CaseHistory history =
                from.store().append(signed, new SignedOff(SignJudgement.of(judgement, made.getObject())), from.who());
        context.outputWriter()
                .println("Case " + history.id() + " is signed off by " + Terminal.harmless(from.who()) + " (entry "
                        + history.last().number() + ") on: "
                        + judgement.verdict().sentence() + " A later change needs --reason and stays visible.");
    }

    @Command(
            name = "case history",
            group = GROUP,
            description = "Show every entry of a case with its hash",
            help = "CASE",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void history(CommandContext context, @Argument(index = 0, description = "case id") CaseId id) {
        CaseHistory history = cases.getObject().toShow(cases.getObject().known(id));
        new CaseText(knowledge.getObject(), new Page(context.outputWriter())).printHistory(history);
    }

    @Command(
            name = "case verify",
            group = GROUP,
            description = "Check the entries and files of one case, or of the whole store",
            help =
                    "CASE | --all; --head is the end of the chain as a document of the case prints it, also as a code to scan",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void verify(
            CommandContext context,
            @Arguments List<String> ids,
            @Option(longName = "head", defaultValue = "", description = "end of the chain as noted outside")
                    String head,
            @Option(longName = "all", description = "every case") boolean all) {
        if (ids.size() != (all ? 0 : 1) || all && !head.isEmpty()) {
            throw new WrongUsage("name one case, or --all");
        }
        Page page = new Page(context.outputWriter());
        CaseStore store = cases.getObject().store();
        new VerifyText(store, page).print(all ? null : new CaseId(ids.get(0)), head);
    }

    @Command(
            name = "case import",
            group = GROUP,
            description = "Store a case from a YAML file",
            help = "FILE.yaml",
            exitStatusExceptionMapper = "refusals")
    void importCase(
            CommandContext context,
            @Argument(index = 0, description = "YAML case file") String file,
            @Option(longName = "as", defaultValue = "", description = "store it under another id") String as) {
        Cases from = cases.getObject();
        CaseDocument document = Cases.read(Path.of(file));
        new KnownIds(knowledge.getObject()).checkOpen(document.present());
        CaseHistory history = from.alarm(
                as.isEmpty()
                        ? from.store().importCase(document, from.who())
                        : from.store().importAs(new CaseId(as), document, from.who()));
        context.outputWriter()
                .println("Case " + history.id() + " is stored, "
                        + history.entries().size() + " entries.");
    }

    @Command(
            name = "case export",
            group = GROUP,
            description = "Write a stored case with its history as YAML",
            help = "CASE; without --out it is printed",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void export(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Option(longName = "out", defaultValue = "", description = "file to write; must not exist") GivenPath out) {
        Cases from = cases.getObject();
        String text = new CaseWriter().write(CaseDocument.of(from.alarm(from.history(id))));
        if (out.isEmpty()) {
            context.outputWriter().print(text);
            context.outputWriter().flush();
            return;
        }
        try {
            Files.writeString(out.path(), text, StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException e) {
            throw new Refused("'" + out + "' exists", "give another name, nothing was written");
        } catch (IOException e) {
            throw new Refused("'" + out + "' cannot be written: " + e.getMessage(), "give another name");
        }
        context.outputWriter().println("Case " + id + " is written to " + Terminal.harmless(out.typed()) + ".");
    }

    static FindingState state(String word) {
        return FindingState.parse(word)
                .orElseThrow(() -> new WrongUsage(
                        "state '" + Terminal.harmless(word) + "' is not known", "one of " + FindingState.WORDS));
    }

    static Map<String, FindingState> states(List<String> assignments) {
        Map<String, FindingState> states = new LinkedHashMap<>();
        for (String assignment : assignments) {
            int equals = assignment.indexOf('=');
            if (equals <= 0) {
                throw new WrongUsage(
                        "'" + Terminal.harmless(assignment) + "' is no finding with a state",
                        "write" + " FINDING=present, FINDING=absent or FINDING=unsure");
            }
            String finding = assignment.substring(0, equals);
            if (states.put(finding, state(assignment.substring(equals + 1))) != null) {
                throw new WrongUsage("finding '" + Terminal.harmless(finding) + "' stands twice", "keep one");
            }
        }
        return states;
    }
}
