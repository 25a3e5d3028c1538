package witnessmark.shell.log;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.logged.AddLogs;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.casefile.logged.LogsOfCase;
import witnessmark.casefile.logged.WeighOnce;
import witnessmark.gearbox.TruckProfile;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.cases.EnterEvidence;
import witnessmark.shell.cases.EnterEvidence.Entered;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.ValueList;
import witnessmark.shell.truck.TruckText;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.summary.ComparePeriods;

/** The commands that make something of logs: evidence in a case, and the comparison of two periods. */
@Component
class LogEvidenceCommands {
    private final ObjectProvider<LogJob> jobs;
    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final EnterEvidence enter;
    private final AnswerJson json;

    LogEvidenceCommands(
            ObjectProvider<LogJob> jobs,
            ObjectProvider<Cases> cases,
            ObjectProvider<KnowledgeBase> knowledge,
            EnterEvidence enter,
            AnswerJson json) {
        this.json = json;
        this.jobs = jobs;
        this.cases = cases;
        this.knowledge = knowledge;
        this.enter = enter;
    }

    @Command(
            name = "log add",
            group = LogCommands.GROUP,
            description = "Store in a case what logs say for and against findings",
            help = "CASE TRUCK FILE|FOLDER ...; the logs are one truck's, and all logs of a case are weighed as "
                    + "one; a log that cannot show a thing counts neither way; one that does not fit the case's truck "
                    + "is taken only with --nevertheless, and the case keeps why",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void add(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "mapping", defaultValue = "", description = OptionText.MAPPING) GivenPath mapping,
            @Option(longName = "load", defaultValue = "", description = OptionText.LOAD) HabitLimits.Load load,
            @Option(longName = "as", defaultValue = "", description = "id of the evidence in the case") String as,
            @Option(
                            longName = "nevertheless",
                            defaultValue = "",
                            description = "why logs are added that seem not to be of this truck or time")
                    String nevertheless,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        if (words.size() < 3) {
            throw new WrongUsage("name the case, the truck and at least one log: log add CASE TRUCK FILE|FOLDER ...");
        }
        Cases from = cases.getObject();
        CaseHistory before = from.alarm(from.history(words.get(0)));
        LogJob job = jobs.getObject();
        LogJob.Done done = job.run(new LogJob.Order(
                job.truck(words.get(1)), words.subList(2, words.size()), mapping, load, LogJob.Hashes.TAKEN));
        TruckResult logs = whole(done);
        String name = as.isEmpty() ? evidenceId(logs) : as;
        LogRecord record = logs.record()
                .with(logs.trips().stream()
                        .flatMap(t -> t.doubts(name(t)).stream())
                        .toList());
        Map<String, String> inputs = inputs(done.truck(), logs, mapping, load);
        WeighOnce weigh = new WeighOnce();
        Entered entered = enter.enter(
                before,
                seen -> {
                    AddLogs add = new AddLogs(
                            seen,
                            new AddLogs.Offer(
                                    name,
                                    done.truck().id(),
                                    done.truck().layout(),
                                    logs.trips().stream()
                                            .map(LogEvidenceCommands::unit)
                                            .toList(),
                                    inputs,
                                    files(logs),
                                    driving(logs),
                                    record,
                                    ownProfile(seen, done.truck()),
                                    remarks(logs, isAlone(seen, name, logs))),
                            Instant.now());
                    refuseNeedless(nevertheless, add);
                    return add.evidence(nevertheless, weigh);
                },
                reason);
        LogAdded added = new LogAdded(
                entered.history(),
                entered.evidence(),
                logs,
                CombinedEvidence.of(entered.history().present(), weigh).logs(),
                isAlone(entered.history(), name, logs));
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(added.form()));
        } else {
            added.print(new Page(context.outputWriter()), knowledge.getObject());
        }
    }

    private static boolean isAlone(CaseHistory history, String name, TruckResult logs) {
        return logs.trips().size() == 1 && AddLogs.inCase(history, name).isEmpty();
    }

    /** A doubt where the truck of the case has a profile of its own that was not read with. */
    private List<String> ownProfile(CaseHistory before, TruckProfile readWith) {
        return jobs
                .getObject()
                .ownProfile(before.present().vehicle().unit(), readWith)
                .map(own -> "the truck of the case has a profile of its own, " + own + ", and the logs were read with "
                        + readWith.id())
                .stream()
                .toList();
    }

    private static void refuseNeedless(String nevertheless, AddLogs add) {
        if (!nevertheless.isEmpty() && add.doubts().isEmpty()) {
            throw new WrongUsage("--nevertheless: nothing speaks against these logs", "leave it out");
        }
    }

    /** The truck that the name of a file tells of: its part before the first underscore. */
    private static String unit(TripResult trip) {
        return name(trip).contains("_") ? name(trip).replaceFirst("_.*", "") : "";
    }

    /** The logs of one truck, all read to their end and surely understood; anything less is not to stand in a case. */
    private static TruckResult whole(LogJob.Done done) {
        if (done.stopped()) {
            throw new Refused("stopped before the end", "nothing was stored");
        }
        List<String> faults = new ArrayList<>(done.failures());
        if (done.results().size() > 1) {
            faults.add("the logs are of " + done.results().size() + " trucks ("
                    + ScreenFigures.some(
                            done.results().stream().map(TruckResult::truck).toList(), 5)
                    + "); a case is of one, name its logs");
        }
        for (TruckResult truck : done.results()) {
            truck.trips().forEach(t -> t.mappingNotes()
                    .forEach(n -> faults.add(t.report().file()
                            + ": the columns are guessed, and one is in doubt: " + n
                            + "; have the mapping written with log look FILE --save-mapping, check it, and give it with"
                            + " --mapping")));
        }
        if (!faults.isEmpty()) {
            throw new Refused(String.join("\n", faults) + "\nnothing was stored");
        }
        return done.results().get(0);
    }

    private static List<SourceFile> files(TruckResult logs) {
        return logs.trips().stream()
                .map(t -> new SourceFile(name(t), t.report().sha256().orElseThrow()))
                .toList();
    }

    private static List<String> remarks(TruckResult logs, boolean alone) {
        return logs.trips().stream()
                .flatMap(t -> LogRemarks.of(t, alone).stream().map(r -> name(t) + ": " + r))
                .toList();
    }

    private static String name(TripResult trip) {
        return String.valueOf(trip.report().file().getFileName());
    }

    private static List<LogsOfCase.Log> driving(TruckResult logs) {
        return logs.trips().stream()
                .map(t -> new LogsOfCase.Log(
                        name(t),
                        t.report().sha256().orElseThrow(),
                        t.times().spans(),
                        t.times().marks()))
                .toList();
    }

    private static String evidenceId(TruckResult logs) {
        String file = name(logs.trips().get(0)).toLowerCase(Locale.ROOT).replaceFirst("\\..*", "");
        String plain = ("log-" + file).replaceAll("[^a-z0-9]+", "-").replaceAll("-+$", "");
        String more = logs.trips().size() > 1 ? "-and-" + (logs.trips().size() - 1) + "-more" : "";
        int room = 60 - more.length();
        return (plain.length() > room ? plain.substring(0, room).replaceAll("-+$", "") : plain) + more;
    }

    private static Map<String, String> inputs(
            TruckProfile truck, TruckResult logs, GivenPath mapping, HabitLimits.Load load) {
        Map<String, String> inputs = new LinkedHashMap<>();
        inputs.put("truck", truck.id());
        inputs.put(
                "distance", String.format(Locale.ROOT, "%.1f km", logs.summary().km()));
        inputs.put(
                "covered-time",
                String.format(Locale.ROOT, "%.2f h", logs.summary().coveredHours()));
        inputs.put(
                "gear-known",
                String.format(
                        Locale.ROOT,
                        "%.0f %% of the driving time",
                        100 * logs.summary().gearKnownShare()));
        inputs.put("load", load.name().toLowerCase(Locale.ROOT));
        inputs.put("columns", mapping.isEmpty() ? "by header or mapping.yaml" : "by the mapping file given");
        return inputs;
    }

    @Command(
            name = "log compare",
            group = LogCommands.GROUP,
            description = "Compare a truck's logs before and after, say, coaching",
            help = "TRUCK --before FILE|FOLDER ... --after FILE|FOLDER ...",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void compare(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String truck,
            @Option(longName = "before", description = "logs of the first period") ValueList before,
            @Option(longName = "after", description = "logs of the second period") ValueList after,
            @Option(longName = "mapping", defaultValue = "", description = OptionText.MAPPING) GivenPath mapping,
            @Option(longName = "load", defaultValue = "", description = OptionText.LOAD) HabitLimits.Load load,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        if (before.words().isEmpty() || after.words().isEmpty()) {
            throw new WrongUsage("give the logs of both periods: log compare TRUCK --before FILE ... --after FILE ...");
        }
        Period first = period("before", truck, before, mapping, load);
        Period second = period("after", truck, after, mapping, load);
        List<ComparePeriods.Change> changes =
                ComparePeriods.compare(first.logs().summary(), second.logs().summary());
        LogChange change = new LogChange(first.logs(), second.logs(), changes);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(change.form()));
        } else {
            change.print(
                    new Page(context.outputWriter()),
                    TruckText.title(first.done().truck()));
        }
    }

    private record Period(LogJob.Done done, TruckResult logs) {}

    private Period period(String name, String truck, ValueList places, GivenPath mapping, HabitLimits.Load load) {
        LogJob job = jobs.getObject();
        LogJob.Done done =
                job.run(new LogJob.Order(job.truck(truck), places.words(), mapping, load, LogJob.Hashes.LEFT_OUT));
        if (done.stopped()) {
            throw new Refused("stopped before the end", "two periods are compared only when both are read whole");
        }
        if (!done.failures().isEmpty()) {
            throw new Refused(String.join("\n", done.failures()));
        }
        if (done.results().size() > 1) {
            throw new Refused(
                    "--" + name + ": the logs are of " + done.results().size() + " trucks", "name those of one");
        }
        return new Period(done, done.results().get(0));
    }
}
