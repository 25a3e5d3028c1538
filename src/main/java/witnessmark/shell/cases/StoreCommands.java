package witnessmark.shell.cases;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.stereotype.Component;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.Copied;
import witnessmark.casefile.store.Rebuilt;
import witnessmark.casefile.store.StoreLocation;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Waiting;

/** The commands that mend, move and prepare whole stores. */
@Component
class StoreCommands {
    private static final String GROUP = "Cases";

    private final ObjectProvider<Cases> cases;

    StoreCommands(ObjectProvider<Cases> cases) {
        this.cases = cases;
    }

    @Command(
            name = "store rebuild",
            group = GROUP,
            description = "Make the database of the store anew from the journal beside it; also makes its file small",
            help = "; all other shells must be closed, the database that was there is kept aside",
            exitStatusExceptionMapper = "refusals")
    void rebuild(CommandContext context) {
        Rebuilt made = cases.getObject().store().rebuild();
        Page page = new Page(context.outputWriter());
        page.line("The database is made anew from the journal: " + made.cases() + " cases, "
                + made.head().lines() + " entries, last hash " + made.head().hash() + ".");
        made.setAside().ifPresent(aside -> page.line("The one before is kept as " + aside + "."));
        if (made.tornAfter()) {
            page.line("A change at the end of the journal was cut off in the middle and never acknowledged; it is not"
                    + " taken over.");
        }
        page.flush();
    }

    @Command(
            name = "store journal",
            group = GROUP,
            description = "Begin a new journal from the database, where the old one is lost or does not fit",
            help = "; the journal that was there is kept aside",
            exitStatusExceptionMapper = "refusals")
    void journal(CommandContext context) {
        cases.getObject().store().beginJournal();
        new Page(context.outputWriter())
                .line("A new journal is begun with every entry of the database.")
                .flush();
    }

    @Command(
            name = "store copy",
            group = GROUP,
            description =
                    "Copy every entry and file of a store to another, as from this machine to a shared server and back",
            help = "FROM TO; each the folder of a store, or the file that names a shared database (the login of "
                    + "its owner); repeat it to carry on a copy that was cut off, or to copy what is new",
            exitStatusExceptionMapper = "refusals")
    void copy(
            CommandContext context,
            @Argument(index = 0, description = "folder or database file") String from,
            @Argument(index = 1, description = "folder or database file") String to) {
        Page page = new Page(context.outputWriter());
        Copied copied;
        try (CaseStore source = new CaseStore(StoreLocation.existing(Path.of(from)), Clock.systemUTC());
                CaseStore target = new CaseStore(StoreLocation.at(Path.of(to)), Clock.systemUTC())) {
            copied = source.copyTo(target, Waiting::at);
        }
        page.line(
                copied.entries() + " entries and " + copied.files() + " files are copied. Both stores are whole and end"
                        + " with the same entry: " + copied.check().cases() + " cases, "
                        + copied.check().head().lines() + " entries, last hash "
                        + copied.check().head().hash() + ".");
        page.flush();
        if (!copied.missing().isEmpty()) {
            List<String> lines = new ArrayList<>();
            copied.missing()
                    .forEach((id, files) -> files.forEach(file -> lines.add(
                            "case " + id + ": " + file + "; it was so before the copy, put the same file in again")));
            throw new Refused(String.join("\n", lines));
        }
    }

    @Command(
            name = "store prepare",
            group = GROUP,
            description = "Make or complete the tables of a shared store, and give the shops' logins their rights",
            help = "; with --database FILE of the owner's login, once at first and after a newer program",
            exitStatusExceptionMapper = "refusals")
    void prepare(CommandContext context) {
        CaseStore store = cases.getObject().store();
        store.prepare();
        new Page(context.outputWriter())
                .line(
                        store.login().isPresent()
                                ? "The tables are those of version " + CaseStore.SHARED_SCHEMA + "; the shops can work."
                                : "A store in a folder needs no preparing.")
                .flush();
    }
}
