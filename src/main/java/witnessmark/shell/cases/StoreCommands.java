package witnessmark.shell.cases;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.stereotype.Component;
import witnessmark.casefile.store.Rebuilt;
import witnessmark.shell.print.Page;

/** The commands that mend a store whose database or journal was damaged. */
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
            help = "store rebuild; all other shells must be closed, the database that was there is kept aside",
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
            help = "store journal; the journal that was there is kept aside",
            exitStatusExceptionMapper = "refusals")
    void journal(CommandContext context) {
        cases.getObject().store().beginJournal();
        new Page(context.outputWriter())
                .line("A new journal is begun with every entry of the database.")
                .flush();
    }
}
