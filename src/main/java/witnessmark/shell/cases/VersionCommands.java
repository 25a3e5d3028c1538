package witnessmark.shell.cases;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.store.CaseStore;
import witnessmark.shell.knowledge.MadeWithJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.OptionText;

/** The command that says what this program is and knows. */
@Component
class VersionCommands {
    private final ObjectProvider<MadeWith> made;

    private record Version(@Json.Inlined MadeWithJson made, int schema, int sharedSchema, String java) {}

    VersionCommands(ObjectProvider<MadeWith> made) {
        this.made = made;
    }

    @Command(
            name = "version",
            group = "Help",
            description = "Say program, knowledge, store schema and Java",
            exitStatusExceptionMapper = "refusals")
    void version(
            CommandContext context,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        MadeWith with = made.getObject();
        String java = Runtime.version().toString();
        if (format == Format.JSON) {
            context.outputWriter()
                    .println(Json.of(
                            new Version(MadeWithJson.of(with), CaseStore.SCHEMA, CaseStore.SHARED_SCHEMA, java)));
            return;
        }
        context.outputWriter().println("witnessmark " + with.program());
        context.outputWriter().println("  knowledge       " + with.knowledge());
        with.site().ifPresent(site -> context.outputWriter().println("  site knowledge  " + site));
        context.outputWriter()
                .println("  store schema    " + CaseStore.SCHEMA + ", on a shared server " + CaseStore.SHARED_SCHEMA);
        context.outputWriter().println("  Java            " + java);
    }
}
