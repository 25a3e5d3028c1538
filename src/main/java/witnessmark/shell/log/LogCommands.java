package witnessmark.shell.log;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.WrongUsage;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.PeekLog;
import witnessmark.triplog.read.ReadMapping;

/** The commands that look into trip logs and read them. */
@Component
class LogCommands {
    static final String GROUP = "Trip logs";

    private final ObjectProvider<LogJob> jobs;
    private final AnswerJson json;

    LogCommands(ObjectProvider<LogJob> jobs, AnswerJson json) {
        this.json = json;
        this.jobs = jobs;
    }

    @Command(
            name = "log look",
            group = GROUP,
            description = "Show how a log's columns are understood, to confirm before it counts",
            help = "FILE",
            exitStatusExceptionMapper = "refusals")
    void look(
            CommandContext context,
            @Argument(index = 0, description = "log file: CSV or candump text, plain or gzip") String file,
            @Option(longName = "mapping", defaultValue = "", description = "mapping file to try") GivenPath mapping,
            @Option(longName = "save-mapping", defaultValue = "", description = "file to write the mapping to")
                    GivenPath saveTo,
            @Option(longName = "replace", description = OptionText.REPLACE) boolean replace) {
        if (file.isEmpty()) {
            throw new WrongUsage("name the log: log look FILE");
        }
        Optional<ColumnMapping> given =
                mapping.isEmpty() ? Optional.empty() : Optional.of(ReadMapping.from(mapping.path()));
        PeekLog.Peek peek = PeekLog.at(Path.of(file), given);
        if (!saveTo.isEmpty() && peek.mapping().isEmpty()) {
            throw new Refused("'" + file + "' is a candump log", "it needs no mapping, leave --save-mapping out");
        }
        Page page = new Page(context.outputWriter());
        new LogLookText(page).print(peek);
        if (!saveTo.isEmpty()) {
            NewFile.write(
                    saveTo.path(), MappingText.of(peek).getBytes(StandardCharsets.UTF_8), NewFile.Older.of(replace));
            page.line("The mapping is written to " + saveTo + ".");
        }
        page.flush();
    }

    @Command(
            name = "log read",
            group = GROUP,
            description = "Read logs of a truck: the trip, the events, and what the log cannot show",
            help = "TRUCK FILE|FOLDER ... [--format text|json|csv]; in a folder each sub-folder is a truck, or "
                    + "each file's name up to the first underscore",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void read(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "mapping", defaultValue = "", description = OptionText.MAPPING) GivenPath mapping,
            @Option(longName = "load", defaultValue = "", description = OptionText.LOAD) HabitLimits.Load load,
            @Option(longName = "events", description = "every event, not only the hardest") boolean events,
            @Option(longName = "format", defaultValue = "text", description = "text, json or csv") TripForm format,
            @Option(longName = "chart", defaultValue = "", description = "timeline or map, to draw as SVG")
                    String chart,
            @Option(longName = "out", defaultValue = "", description = OptionText.DRAWING) GivenPath out,
            @Option(longName = "replace", description = OptionText.REPLACE) boolean replace) {
        Optional<LogChart> wanted = LogChart.wanted(chart, out, replace);
        LogJob.Done done = jobs.getObject().run(order(words, mapping, load));
        wanted.ifPresent(w -> w.write(done));
        PrintWriter writer = context.outputWriter();
        WhichEvents which = WhichEvents.of(events);
        switch (format) {
            case JSON -> writer.println(json.of(LogJson.of(done, which)));
            case CSV -> LogCsv.print(writer, done, which);
            case TEXT -> print(new Page(writer), done, which, wanted);
        }
        writer.flush();
        refuseUnfinished(done);
    }

    private LogJob.Order order(List<String> words, GivenPath mapping, HabitLimits.Load load) {
        if (words.size() < 2) {
            throw new WrongUsage("name the truck and at least one log: log read TRUCK FILE|FOLDER ...");
        }
        return new LogJob.Order(
                jobs.getObject().truck(words.get(0)),
                words.subList(1, words.size()),
                mapping,
                load,
                LogJob.Hashes.LEFT_OUT);
    }

    private static void print(Page page, LogJob.Done done, WhichEvents which, Optional<LogChart> chart) {
        LogText text = new LogText(page);
        if (done.results().size() == 1) {
            text.print(done.title(done.results().get(0)), done.results().get(0), which);
        } else {
            text.printAll(done);
        }
        chart.ifPresent(c -> page.blank().line("The chart is written to " + c.out() + "."));
        page.flush();
    }

    /** What could be read was printed; the exit code still says that it is not all. */
    static void refuseUnfinished(LogJob.Done done) {
        if (done.stopped()) {
            throw new Refused("stopped before the end: the result is partial");
        }
        if (!done.failures().isEmpty()) {
            throw new Refused(String.join("\n", done.failures()));
        }
    }
}
