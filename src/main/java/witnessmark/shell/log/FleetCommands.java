package witnessmark.shell.log;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.fleet.FleetFolder;
import witnessmark.fleet.FleetResult;
import witnessmark.fleet.FleetTable;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.CsvTable;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.WrongUsage;
import witnessmark.triplog.event.HabitLimits;

/** The commands for the logs of a whole fleet. */
@Component
class FleetCommands {
    private final ObjectProvider<FleetJob> jobs;
    private final ObjectProvider<ImportResults> imports;
    private final AnswerJson json;

    FleetCommands(ObjectProvider<FleetJob> jobs, ObjectProvider<ImportResults> imports, AnswerJson json) {
        this.json = json;
        this.jobs = jobs;
        this.imports = imports;
    }

    @Command(
            name = "log fleet",
            group = LogCommands.GROUP,
            description = "Read the logs of many trucks into tables: acts, a record a truck and day, findings",
            help = "FOLDER --out FOLDER; in the folder each sub-folder is a truck, or each file's name up to the "
                    + "first underscore; a truck is read with its own profile, from the folder given or kept under "
                    + "its name, else with the one after --truck",
            exitStatusExceptionMapper = "refusals")
    void fleet(
            CommandContext context,
            @Argument(index = 0, description = "folder of the fleet's logs") String folder,
            @Option(longName = "out", defaultValue = "", description = "folder to write the tables into") GivenPath out,
            @Option(longName = "truck", defaultValue = "", description = "profile of trucks without their own")
                    String truck,
            @Option(longName = "profiles", defaultValue = "", description = "folder of profiles, one file a truck")
                    GivenPath profiles,
            @Option(longName = "mapping", defaultValue = "", description = "mapping file of all CSV logs")
                    GivenPath mapping,
            @Option(longName = "load", defaultValue = "", description = OptionText.LOAD) HabitLimits.Load load,
            @Option(longName = "replace", description = "overwrite the tables") boolean replace,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        if (folder.isEmpty() || out.isEmpty()) {
            throw new WrongUsage("name the logs and where the tables go: log fleet FOLDER --out FOLDER");
        }

        refuseAmongLogs(Path.of(folder), out);
        Path tables = free(out.path(), replace);
        FleetResult result = jobs.getObject().run(new FleetJob.Order(Path.of(folder), truck, profiles, mapping, load));
        for (FleetTable table : FleetTable.values()) {
            NewFile.write(file(tables, table), csv(table, result.rows(table)), NewFile.Older.of(replace));
        }
        FleetText text = new FleetText(result, out.typed());
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(text.form()));
        } else {
            text.print(new Page(context.outputWriter()));
        }
        context.outputWriter().flush();
    }

    /** A later run would read the tables as logs. */
    private static void refuseAmongLogs(Path logs, GivenPath out) {
        if (FleetFolder.holds(logs, out.path())) {
            throw new Refused(
                    "--out '" + out + "' lies in the folder of the logs, where the tables would be taken for logs",
                    "give a folder outside of it");
        }
    }

    private static Path free(Path folder, boolean replace) {
        for (FleetTable table : FleetTable.values()) {
            if (!replace && Files.exists(file(folder, table))) {
                throw new Refused(
                        "'" + file(folder, table) + "' is there already",
                        "give another folder after --out, or add --replace");
            }
        }
        try {
            return Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Refused("'" + folder + "' cannot be made", "give another folder after --out");
        }
    }

    private static Path file(Path folder, FleetTable table) {
        return folder.resolve(table.fileName() + ".csv");
    }

    private static byte[] csv(FleetTable table, List<List<Object>> rows) {
        StringWriter text = new StringWriter();
        CsvTable csv = new CsvTable(text);
        csv.row(table.header());
        rows.forEach(csv::row);
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    @Command(
            name = "log import-results",
            group = LogCommands.GROUP,
            description = "Take the records of a fleet's table into the cases of its trucks",
            help = "DAYS.csv [--from 2026-03-01] [--to 2026-03-31]; a record goes into each open case whose unit "
                    + "bears the truck's name, or into the one named; what a case holds already is passed over, what "
                    + "does not fit its truck is taken only with --nevertheless, and the case keeps why",
            exitStatusExceptionMapper = "refusals")
    void importResults(
            CommandContext context,
            @Argument(index = 0, description = "days.csv as log fleet or the fleet's job writes it") String table,
            @Option(longName = "case", defaultValue = "", description = "one case; needs --truck") String caseId,
            @Option(longName = "truck", defaultValue = "", description = "only the records of this truck") String truck,
            @Option(longName = "from", defaultValue = "", description = "first day, as 2026-03-01") String from,
            @Option(longName = "to", defaultValue = "", description = "last day") String to,
            @Option(
                            longName = "nevertheless",
                            defaultValue = "",
                            description = "why records are taken that seem not to be of the case's truck or time")
                    String nevertheless,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        if (table.isEmpty()) {
            throw new WrongUsage("name the table: log import-results DAYS.csv");
        }
        if (!caseId.isEmpty() && truck.isEmpty()) {
            throw new WrongUsage("--case needs the truck whose records it takes: --truck NAME");
        }
        ImportResults.Order order =
                new ImportResults.Order(Path.of(table), caseId, truck, DayRange.of(from, to), nevertheless, reason);
        List<ImportResults.Taken> taken = imports.getObject().run(order);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(ImportResults.AllForms.of(taken)));
        } else {
            ImportResults.print(new Page(context.outputWriter()), taken);
        }
        context.outputWriter().flush();
        List<String> refused = taken.stream()
                .filter(t -> t.state() == ImportResults.State.REFUSED)
                .map(ImportResults.Taken::sentence)
                .toList();
        if (!refused.isEmpty()) {
            throw new Refused(String.join("\n", refused));
        }
    }
}
