package witnessmark.shell;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.LoggedEvidence;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.gearbox.TruckProfile;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.WeighEvents;
import witnessmark.triplog.summary.ComparePeriods;

/** The commands that make something of logs: evidence in a case, and the comparison of two periods. */
@Component
class LogEvidenceCommands {
    private final ObjectProvider<LogJob> jobs;
    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ObjectProvider<GiveAnswer> answers;

    LogEvidenceCommands(
            ObjectProvider<LogJob> jobs,
            ObjectProvider<Cases> cases,
            ObjectProvider<KnowledgeBase> knowledge,
            ObjectProvider<GiveAnswer> answers) {
        this.jobs = jobs;
        this.cases = cases;
        this.knowledge = knowledge;
        this.answers = answers;
    }

    @Command(
            name = "log add",
            group = LogCommands.GROUP,
            description = "Store in a case what logs say for and against findings",
            help = "log add CASE TRUCK FILE|FOLDER ... [--mapping MAPPING.yaml] [--load empty|loaded] [--as ID]"
                    + " [--reason TEXT] [--format text|json]; the logs are one truck's; a log that cannot show a thing"
                    + " counts neither way",
            completionProvider = "caseWords",
            exitStatusExceptionMapper = "refusals")
    void add(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "mapping", defaultValue = "", description = "mapping file of the CSV logs")
                    String mapping,
            @Option(longName = "load", defaultValue = "", description = "empty or loaded, where it is known")
                    String load,
            @Option(longName = "as", defaultValue = "", description = "id of the evidence in the case") String as,
            @Option(longName = "reason", defaultValue = "", description = "why a signed-off case changes")
                    String reason,
            @Option(longName = "format", defaultValue = "text", description = "text or json") String format) {
        Format form = Format.of(format);
        if (words.size() < 3) {
            throw new WrongUsage("name the case, the truck and at least one log: log add CASE TRUCK FILE|FOLDER ...");
        }
        CaseId id = new CaseId(words.get(0));
        Map<String, Evidence> held =
                cases.getObject().store().read(id).present().evidence();
        HabitLimits.Load known = LogCommands.load(load);
        LogJob.Done done = jobs.getObject()
                .run(new LogJob.Order(words.get(1), words.subList(2, words.size()), mapping, known, true));
        TruckResult logs = whole(done);
        answers.getObject().refuseAnother(id.toString(), done.truck());
        List<LogEvidence> said = WeighEvents.weigh(logs.summary(), logs.events(), logs.table(), hashes(logs));
        String name = as.isEmpty() ? evidenceId(logs) : as;
        refuseKnown(held, name, logs);
        Evidence evidence = LoggedEvidence.of(name, inputs(done.truck(), logs, mapping, known), files(logs), said);
        Knows knows = new Knows(knowledge.getObject());
        evidence.findings().keySet().forEach(knows::finding);
        CaseHistory history = cases.getObject().enter(id.toString(), List.of(new EvidenceSet(evidence)), reason);
        LogAdded added = new LogAdded(history, evidence, logs, said);
        if (form == Format.JSON) {
            context.outputWriter().println(Json.of(added.json()));
        } else {
            added.print(new Page(context.outputWriter()), knowledge.getObject());
        }
    }

    /** The logs of one truck, all read to their end and surely understood; anything less is not to stand in a case. */
    private static TruckResult whole(LogJob.Done done) {
        if (done.stopped()) {
            throw new Refused("stopped before the end; nothing was stored");
        }
        List<String> faults = new ArrayList<>(done.failures());
        if (done.results().size() > 1) {
            faults.add("the logs are of " + done.results().size() + " trucks ("
                    + Say.some(done.results().stream().map(TruckResult::truck).toList(), 5)
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

    private static List<String> hashes(TruckResult logs) {
        return logs.trips().stream().map(t -> t.report().sha256().orElseThrow()).toList();
    }

    private static List<SourceFile> files(TruckResult logs) {
        return logs.trips().stream()
                .map(t -> new SourceFile(name(t), t.report().sha256().orElseThrow()))
                .toList();
    }

    private static String name(TripResult trip) {
        return String.valueOf(trip.report().file().getFileName());
    }

    /** The same log twice would count twice. */
    private static void refuseKnown(Map<String, Evidence> held, String as, TruckResult logs) {
        Map<String, String> seen = new TreeMap<>();
        held.values().stream().filter(e -> !e.id().equals(as)).forEach(e -> {
            e.file().ifPresent(f -> seen.put(f.sha256(), "evidence " + e.id() + " of this case"));
            e.inputs().forEach((name, value) -> {
                if (name.matches("log-\\d+")) {
                    seen.put(value.replaceFirst(" .*", ""), "evidence " + e.id() + " of this case");
                }
            });
        });
        for (TripResult trip : logs.trips()) {
            String before = seen.put(trip.report().sha256().orElseThrow(), "'" + name(trip) + "'");
            if (before != null) {
                throw new Refused("'" + name(trip) + "' is the same log as " + before
                        + "; it would count twice, leave it out (or take the evidence off first)");
            }
        }
    }

    private static String evidenceId(TruckResult logs) {
        String file = name(logs.trips().get(0)).toLowerCase(Locale.ROOT).replaceFirst("\\..*", "");
        String plain = ("log-" + file).replaceAll("[^a-z0-9]+", "-").replaceAll("-+$", "");
        String more = logs.trips().size() > 1 ? "-and-" + (logs.trips().size() - 1) + "-more" : "";
        int room = 60 - more.length();
        return (plain.length() > room ? plain.substring(0, room).replaceAll("-+$", "") : plain) + more;
    }

    private static Map<String, String> inputs(
            TruckProfile truck, TruckResult logs, String mapping, HabitLimits.Load load) {
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
            help = "log compare TRUCK --before FILE|FOLDER ... --after FILE|FOLDER ... [--mapping MAPPING.yaml]"
                    + " [--load empty|loaded] [--format text|json]",
            completionProvider = "truckWords",
            exitStatusExceptionMapper = "refusals")
    void compare(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String truck,
            @Option(longName = "before", description = "logs of the first period") WordList before,
            @Option(longName = "after", description = "logs of the second period") WordList after,
            @Option(longName = "mapping", defaultValue = "", description = "mapping file of the CSV logs")
                    String mapping,
            @Option(longName = "load", defaultValue = "", description = "empty or loaded, where it is known")
                    String load,
            @Option(longName = "format", defaultValue = "text", description = "text or json") String format) {
        Format form = Format.of(format);
        if (before == null
                || after == null
                || before.words().isEmpty()
                || after.words().isEmpty()) {
            throw new WrongUsage("give the logs of both periods: log compare TRUCK --before FILE ... --after FILE ...");
        }
        HabitLimits.Load known = LogCommands.load(load);
        Period first = period("before", truck, before, mapping, known);
        Period second = period("after", truck, after, mapping, known);
        List<ComparePeriods.Change> changes =
                ComparePeriods.compare(first.logs().summary(), second.logs().summary());
        LogChange change = new LogChange(first.logs(), second.logs(), changes);
        if (form == Format.JSON) {
            context.outputWriter().println(Json.of(change.json()));
        } else {
            change.print(
                    new Page(context.outputWriter()),
                    TruckText.title(first.done().truck()));
        }
    }

    private record Period(LogJob.Done done, TruckResult logs) {}

    private Period period(String name, String truck, WordList places, String mapping, HabitLimits.Load load) {
        LogJob.Done done = jobs.getObject().run(new LogJob.Order(truck, places.words(), mapping, load, false));
        if (done.stopped()) {
            throw new Refused("stopped before the end; two periods are compared only when both are read whole");
        }
        if (!done.failures().isEmpty()) {
            throw new Refused(String.join("\n", done.failures()));
        }
        if (done.results().size() > 1) {
            throw new Refused(
                    "--" + name + ": the logs are of " + done.results().size() + " trucks; name those of one");
        }
        return new Period(done, done.results().get(0));
    }
}
