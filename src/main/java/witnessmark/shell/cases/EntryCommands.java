package witnessmark.shell.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Teller;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.EvidenceRemoved;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.GearboxSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.diagnosis.ReadSample;
import witnessmark.diagnosis.Sentences;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.shell.knowledge.KnownIds;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;
import witnessmark.shell.settings.ShopSettings;

/** The commands that add entries to a case. On a case that was signed off each needs a reason and becomes a correction. */
@Component
class EntryCommands {
    private static final String GROUP = "Case entries";

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ShopSettings shop;

    EntryCommands(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge, ShopSettings shop) {
        this.shop = shop;
        this.cases = cases;
        this.knowledge = knowledge;
    }

    @Command(
            name = "case set",
            group = GROUP,
            description = "Enter findings: present, absent (looked at and sound), unsure",
            help = "CASE FINDING=present|absent|unsure|not-looked-at ...; --told-by where nobody of the shop "
                    + "looked: driver, fleet, tow-operator, previous-shop, previous-owner, other; present is then "
                    + "told, absent denied",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void set(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "note", defaultValue = "", description = OptionText.NOTE) String note,
            @Option(longName = "told-by", defaultValue = "", description = "who told it, where nobody looked")
                    String toldBy,
            @Option(
                            longName = "gear",
                            defaultValue = "",
                            description = "main-box gear heard in or seen on (1 to 9, R, direct, head); of a rail 3-4")
                    String gear,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        Map<String, FindingState> states = CaseCommands.states(rest(words, "case set CASE FINDING=STATE ..."));
        if (states.size() > 1 && !note.isEmpty()) {
            throw new WrongUsage(
                    "--note with " + states.size() + " findings would stand on each of them",
                    "enter the finding it belongs to by itself");
        }
        KnownIds knows = new KnownIds(knowledge.getObject());
        states.keySet().forEach(knows::finding);
        List<Change> changes = new ArrayList<>();
        Optional<Teller> teller = teller(toldBy);
        Optional<String> in = gear.isEmpty() ? Optional.empty() : Optional.of(gear);
        states.forEach((finding, state) -> knows.gear(new FindingEntry(finding, state, note, teller, in)));
        states.forEach(
                (finding, state) -> changes.add(new FindingSet(new FindingEntry(finding, state, note, teller, in))));
        CaseHistory history = enter(new CaseId(words.get(0)), changes, reason);
        states.forEach((finding, state) -> context.outputWriter().println("  " + state.word() + ": " + finding));
        stored(context, history);
    }

    private static Optional<Teller> teller(String toldBy) {
        if (toldBy.isEmpty()) {
            return Optional.empty();
        }
        Optional<Teller> teller = Teller.parse(toldBy);
        if (teller.isEmpty()) {
            throw new Refused("--told-by '" + toldBy + "' is nobody known", "one of " + Teller.WORDS);
        }
        return teller;
    }

    @Command(
            name = "case clear",
            group = GROUP,
            description = "Take findings, measurements or evidence off a case",
            help = "CASE FINDING|MEASURE|EVIDENCE ...",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void clear(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        List<Change> changes = new ArrayList<>();
        CaseFile now = null;
        for (String id : rest(words, "case clear CASE FINDING ...")) {
            now = now == null
                    ? cases.getObject().store().read(new CaseId(words.get(0))).present()
                    : now;
            changes.add(cleared(now, id));
        }
        stored(context, enter(new CaseId(words.get(0)), changes, reason));
    }

    @Command(
            name = "case measure",
            group = GROUP,
            description = "Enter a measured value with its limit and whose limit it is",
            help = "CASE MEASURE VALUE UNIT; --sure where the value is out of the ordinary and was read so",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void measure(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Argument(index = 1, description = "measure") String measure,
            @Argument(index = 2, description = "value") String value,
            @Argument(index = 3, description = "unit") String unit,
            @Option(longName = "low", defaultValue = "", description = "low limit") OptionalDouble low,
            @Option(longName = "high", defaultValue = "", description = "high limit") OptionalDouble high,
            @Option(longName = "limit-unit", defaultValue = "", description = "unit of the limits") String limitUnit,
            @Option(longName = "limit-from", defaultValue = "", description = "whose limit it is") String limitFrom,
            @Option(
                            longName = "earlier",
                            defaultValue = "",
                            description = "earlier samples of this unit, as in " + EarlierSamples.FORM)
                    String earlier,
            @Option(longName = "note", defaultValue = "", description = OptionText.NOTE) String note,
            @Option(longName = "sure", defaultValue = "false", description = "keep a value out of the ordinary")
                    Boolean sure,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        new KnownIds(knowledge.getObject()).measure(measure);
        Measure known = knowledge.getObject().measures().get(measure);
        Unit read =
                TypedFigure.unit("measure '" + measure + "'", unit, known.unit().quantity());
        double number = TypedFigure.number("value", value);
        refuseUnbelieved(known, number, read, sure);
        OptionalDouble from = low;
        OptionalDouble to = high;
        Optional<Limits> limits = from.isEmpty() && to.isEmpty()
                ? Optional.empty()
                : Optional.of(new Limits(
                        from,
                        to,
                        limitUnit.isEmpty()
                                ? read
                                : TypedFigure.unit(
                                        "the limit of '" + measure + "'",
                                        limitUnit,
                                        known.unit().quantity()),
                        limitFrom));
        Measurement measurement =
                new Measurement(measure, number, read, limits, new EarlierSamples(known, read).of(earlier), note);
        stored(context, enter(id, List.of(new MeasurementSet(Optional.empty(), measurement)), reason));
        if (limits.isEmpty()) {
            Sentences words = new Sentences(knowledge.getObject().language());
            context.outputWriter()
                    .println(ReadSample.of(known, measurement)
                            .map(sample -> "No limit was given; read against: " + words.readAgainst(sample)
                                    + ". The limit of this unit's manual goes before that.")
                            .orElse("No limit was given, so nothing follows from the value; take it from the service"
                                    + " manual of this unit."));
        }
    }

    @Command(
            name = "case note",
            group = GROUP,
            description = "Add a note",
            help = "CASE TEXT",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void note(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        String text = String.join(" ", rest(words, "case note CASE TEXT"));
        stored(context, enter(new CaseId(words.get(0)), List.of(new NoteAdded(text)), reason));
    }

    @Command(
            name = "case tell",
            group = GROUP,
            description = "Set the title, the complaint, the driver's account or the work done",
            help = "CASE title|complaint|driver-account|work-done TEXT",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void tell(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        List<String> rest = rest(words, "case tell CASE title|complaint|driver-account|work-done TEXT");
        TextField field =
                switch (rest.get(0)) {
                    case "title" -> TextField.TITLE;
                    case "complaint" -> TextField.COMPLAINT;
                    case "driver-account" -> TextField.DRIVER_ACCOUNT;
                    case "work-done" -> TextField.WORK_DONE;
                    default -> throw new WrongUsage(
                            "'" + Terminal.harmless(rest.get(0)) + "' cannot be told",
                            "title, complaint, driver-account or work-done");
                };
        String text = String.join(" ", rest.subList(1, rest.size()));
        stored(context, enter(new CaseId(words.get(0)), List.of(new TextSet(field, text)), reason));
    }

    @Command(
            name = "case truck",
            group = GROUP,
            description = "Set what is known of the truck",
            help = "CASE",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void truck(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Option(longName = "unit", defaultValue = "", description = "the fleet's name for it") String unit,
            @Option(longName = "serial", defaultValue = "", description = "serial number") String serial,
            @Option(longName = "duty", defaultValue = "", description = "what it does") String duty,
            @Option(longName = "odometer-km", defaultValue = "", description = OptionText.ODOMETER)
                    OptionalDouble odometer,
            @Option(longName = "km-since-new", defaultValue = "", description = "gearbox km since new")
                    OptionalDouble sinceNew,
            @Option(longName = "km-since-repair", defaultValue = "", description = "km since its repair")
                    OptionalDouble since,
            @Option(longName = "repair-note", defaultValue = "", description = "what was repaired") String repair,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        Vehicle now = cases.getObject().store().read(id).present().vehicle();
        Vehicle changed = new Vehicle(
                or(unit, now.unit()),
                or(serial, now.serial()),
                or(duty, now.duty()),
                or(odometer, now.odometerKm()),
                or(sinceNew, now.kmSinceNew()),
                or(since, now.kmSinceRepair()),
                or(repair, now.repairNote()));
        stored(context, enter(id, List.of(new VehicleSet(now, changed)), reason));
    }

    @Command(
            name = "case gearbox",
            group = GROUP,
            description = "Set how the gearbox is built",
            help = "CASE",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void gearbox(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Option(longName = "ratios", defaultValue = "", description = OptionText.RATIOS) String ratios,
            @Option(longName = "range", defaultValue = "", description = OptionText.RANGE) String range,
            @Option(longName = "splitter", defaultValue = "", description = OptionText.SPLITTER) String splitter,
            @Option(longName = "countershafts", defaultValue = "", description = OptionText.COUNTERSHAFTS)
                    String shafts,
            @Option(longName = "linkage", defaultValue = "", description = "direct, remote") String linkage,
            @Option(longName = "oil-pump", defaultValue = "", description = "fitted, none") String pump,
            @Option(longName = "oil-cooler", defaultValue = "", description = "fitted, none") String cooler,
            @Option(longName = "pto", defaultValue = "", description = "fitted, none") String pto,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        var now = cases.getObject().store().read(id).present().gearbox();
        var changed = LayoutOption.changed(now, ratios, range, splitter, shafts, linkage, pump, cooler, pto);
        stored(context, enter(id, List.of(new GearboxSet(now, changed)), reason));
    }

    private static Change cleared(CaseFile now, String id) {
        if (now.evidence().containsKey(id)) {
            return new EvidenceRemoved(id, Optional.empty());
        }
        return now.measurements().containsKey(id)
                ? new MeasurementCleared(id, Optional.empty())
                : new FindingCleared(id, Optional.empty());
    }

    private void refuseUnbelieved(Measure measure, double value, Unit unit, boolean sure) {
        Measure.Belief belief = measure.belief(value, unit);
        String read = shop.units().given(value, unit);
        if (belief == Measure.Belief.IMPOSSIBLE) {
            throw new Refused(
                    read + " cannot be: " + measure.title() + " lies "
                            + BelievedRange.of(measure.possible(), measure, shop.units()),
                    "look at number and unit again, nothing was stored");
        }
        if (belief == Measure.Belief.DOUBTFUL && !sure) {
            throw new Refused(
                    read + " would be out of the ordinary: " + measure.title() + " is read "
                            + BelievedRange.of(measure.plausible(), measure, shop.units())
                            + " on sound and failed trucks",
                    "look again, and if it was read so add --sure; nothing was stored");
        }
    }

    private CaseHistory enter(CaseId id, List<Change> changes, String reason) {
        return cases.getObject().enter(id, changes, reason);
    }

    private static void stored(CommandContext context, CaseHistory history) {
        context.outputWriter().println("Stored as entry " + history.last().number() + " of case " + history.id() + ".");
    }

    private static List<String> rest(List<String> words, String usage) {
        if (words.size() < 2) {
            throw new WrongUsage("too few words", usage);
        }
        return words.subList(1, words.size());
    }

    private static String or(String given, String now) {
        return given.isEmpty() ? now : given;
    }

    private static OptionalDouble or(OptionalDouble given, OptionalDouble now) {
        return given.isPresent() ? given : now;
    }
}
