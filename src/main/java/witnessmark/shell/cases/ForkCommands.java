package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.HeadMark;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreUnavailable;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.WrongUsage;

/** The command that carries a case on in a new one, with a reason that stays in it. */
@Component
class ForkCommands {
    private final ObjectProvider<Cases> cases;

    ForkCommands(ObjectProvider<Cases> cases) {
        this.cases = cases;
    }

    @Command(
            name = "case fork",
            group = "Cases",
            description = "Carry a case on in a new one, as where its chain is broken",
            help = "CASE NEW-ID --reason TEXT",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void fork(
            CommandContext context,
            @Argument(index = 0, description = "case to be carried on") CaseId id,
            @Argument(index = 1, description = "id of the new case") CaseId to,
            @Option(longName = "reason", defaultValue = "", description = "why it is carried on") String reason) {
        if (reason.isBlank()) {
            throw new WrongUsage("--reason is missing", "say why, it stays in the new case");
        }
        CaseStore store = cases.getObject().store();
        CaseHistory old = cases.getObject().toShow(cases.getObject().known(id));
        String from = "Carried on from case '" + id + "' because " + reason + ". " + state(old);
        CaseFile carried =
                new CaseSheet(old.present().reopened().as(to)).note(from).toCaseFile();
        CaseHistory now = store.importCase(
                CaseDocument.of(carried),
                contents(store, old),
                cases.getObject().who());
        new Page(context.outputWriter())
                .line("Case " + now.id() + " carries on what case " + id + " says, "
                        + now.entries().size() + " entries; it is not signed off. Case " + id + " stays as it is.")
                .flush();
    }

    private static String state(CaseHistory old) {
        return old.verify() instanceof ChainCheck.Broken broken
                ? "Its chain of entries was broken at entry " + broken.number() + ": " + broken.why()
                        + "; what came from it cannot be relied on."
                : "Its chain of entries was whole, " + HeadMark.of(old).text() + ".";
    }

    private static Map<String, byte[]> contents(CaseStore store, CaseHistory old) {
        Map<String, byte[]> contents = new LinkedHashMap<>();
        for (Attachment attachment : old.present().attachments()) {
            try {
                contents.put(attachment.sha256(), store.readAttachment(old.id(), attachment));
            } catch (StoreUnavailable e) {
                // The new case says which file it lacks, as the old one did.
            }
        }
        return contents;
    }
}
