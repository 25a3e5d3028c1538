package witnessmark.shell.cases;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.PartLine.Whereabouts;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ClaimSet;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.WrongUsage;

/** The commands that enter what a warranty claim says besides the findings. */
@Component
class ClaimCommands {
    private static final String GROUP = "Case entries";
    private static final String TAKE_AWAY = "-";

    private final ObjectProvider<Cases> cases;

    ClaimCommands(ObjectProvider<Cases> cases) {
        this.cases = cases;
    }

    @Command(
            name = "case claim",
            group = GROUP,
            description = "Enter facts of the claim; none is demanded",
            help = "CASE; a day as 2026-03-02; - takes a fact away",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void claim(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Option(longName = "work-order", defaultValue = "", description = "work order") String workOrder,
            @Option(longName = "claim-number", defaultValue = "", description = "claim number") String claimNumber,
            @Option(longName = "customer", defaultValue = "", description = "customer") String customer,
            @Option(longName = "shop", defaultValue = "", description = "shop") String shop,
            @Option(longName = "truck-serial", defaultValue = "", description = "serial of the truck") String truck,
            @Option(longName = "gearbox-serial", defaultValue = "", description = "serial of the gearbox") String box,
            @Option(longName = "in-service", defaultValue = "", description = "day put in service") String inService,
            @Option(longName = "failed", defaultValue = "", description = "day it failed") String failed,
            @Option(longName = "repaired", defaultValue = "", description = "day it was repaired") String repaired,
            @Option(longName = "engine-hours", defaultValue = "", description = "engine hours") String engineHours,
            @Option(longName = "labour-hours", defaultValue = "", description = "labour hours") String labourHours,
            @Option(longName = "cost", defaultValue = "", description = "cost with its currency") String cost,
            @Option(longName = "looked", defaultValue = "", description = "who looked at the parts") String looked,
            @Option(longName = "measured", defaultValue = "", description = "who measured") String measured,
            @Option(longName = "signs", defaultValue = "", description = "who signs for the shop") String signs,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        Map<ClaimField, String> given = new EnumMap<>(ClaimField.class);
        put(given, ClaimField.WORK_ORDER, workOrder);
        put(given, ClaimField.CLAIM_NUMBER, claimNumber);
        put(given, ClaimField.CUSTOMER, customer);
        put(given, ClaimField.SHOP, shop);
        put(given, ClaimField.TRUCK_SERIAL, truck);
        put(given, ClaimField.GEARBOX_SERIAL, box);
        put(given, ClaimField.IN_SERVICE, inService);
        put(given, ClaimField.FAILED, failed);
        put(given, ClaimField.REPAIRED, repaired);
        put(given, ClaimField.ENGINE_HOURS, engineHours);
        put(given, ClaimField.LABOUR_HOURS, labourHours);
        put(given, ClaimField.COST, cost);
        put(given, ClaimField.LOOKED, looked);
        put(given, ClaimField.MEASURED, measured);
        put(given, ClaimField.SIGNS, signs);
        if (given.isEmpty()) {
            throw new WrongUsage("no fact of the claim is given", "see: help case claim");
        }
        enter(context, id, now(id).with(given), reason);
    }

    @Command(
            name = "case part",
            group = GROUP,
            description = "Enter a part of the claim, or take its line away",
            help = "CASE [OLD-PART] [--fitted NEW-PART]; a part that takes the place of none, as a gasket set, is "
                    + "entered with --fitted alone; a line is taken away with: case part CASE --remove NUMBER",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void part(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Argument(index = 1, description = "part taken out", defaultValue = "") String old,
            @Option(longName = "fitted", defaultValue = "", description = "part put in") String fitted,
            @Option(longName = "quantity", defaultValue = "1", description = "how many") double quantity,
            @Option(longName = "whereabouts", defaultValue = "", description = "returned, kept or scrapped")
                    String whereabouts,
            @Option(longName = "tag", defaultValue = "", description = "what stands on its tag") String tag,
            @Option(longName = "remove", defaultValue = "", description = "number of the line to take away")
                    OptionalDouble remove,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        boolean named = !old.isEmpty() || !fitted.isEmpty();
        if (named == remove.isPresent()) {
            throw new WrongUsage("name the part taken out, or put in with --fitted, or --remove the number of a line");
        }
        Claim changed = remove.isEmpty()
                ? now(id).with(new PartLine(old, fitted, quantity, whereabouts(whereabouts), tag))
                : now(id).without((int) remove.getAsDouble());
        enter(context, id, changed, reason);
    }

    private static void put(Map<ClaimField, String> given, ClaimField field, String value) {
        if (!value.isEmpty()) {
            given.put(field, value.equals(TAKE_AWAY) ? "" : value);
        }
    }

    private static Optional<Whereabouts> whereabouts(String word) {
        if (word.isEmpty()) {
            return Optional.empty();
        }
        Optional<Whereabouts> known = Whereabouts.parse(word);
        if (known.isEmpty()) {
            throw new Refused("--whereabouts '" + word + "' is not known", "one of " + Whereabouts.WORDS);
        }
        return known;
    }

    private Claim now(CaseId id) {
        return cases.getObject().store().read(id).present().claim();
    }

    private void enter(CommandContext context, CaseId id, Claim claim, String reason) {
        CaseHistory history = cases.getObject().enter(id, List.of(new ClaimSet(claim)), reason);
        context.outputWriter().println("Stored as entry " + history.last().number() + " of case " + history.id() + ".");
    }
}
