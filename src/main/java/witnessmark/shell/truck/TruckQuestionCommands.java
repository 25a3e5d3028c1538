package witnessmark.shell.truck;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.exposure.Exposure.Mode;
import witnessmark.gearbox.shift.RangeShiftQuestion.Clutch;
import witnessmark.gearbox.shift.RangeShiftQuestion.LeverTiming;
import witnessmark.gearbox.shift.RangeShiftQuestion.SplitterMove;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.settings.ShopSettings;

/** The commands that check a story against a truck's numbers; with a case named, the answer becomes its evidence. */
@Component
class TruckQuestionCommands {
    private static final String GROUP = "Truck questions";
    /** A guess is entered as unsure: a speed that a driver remembers is not a record. */
    private final ObjectProvider<Trucks> trucks;

    private final ObjectProvider<GiveAnswer> answers;
    private final ShopSettings shop;

    TruckQuestionCommands(ObjectProvider<Trucks> trucks, ObjectProvider<GiveAnswer> answers, ShopSettings shop) {
        this.shop = shop;
        this.trucks = trucks;
        this.answers = answers;
    }

    @Command(
            name = "truck shift",
            group = GROUP,
            description = "What a shift does at a road speed: engine, clutch disc, synchronizer",
            help = "TRUCK --from GEAR --to GEAR --speed N [--unit km/h|mph] [--splitter first|last|stays]",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void shift(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "from", defaultValue = "", description = "gear before") String from,
            @Option(longName = "to", defaultValue = "", description = "gear after") String to,
            @Option(longName = "speed", defaultValue = "", description = "road speed") String speed,
            @Option(longName = "unit", defaultValue = "", description = OptionText.SPEED_UNIT) String unit,
            @Option(longName = "clutch", defaultValue = "engaged", description = "engaged or down") Clutch clutch,
            @Option(longName = "lever", defaultValue = "preselected", description = "preselected, neutral, home")
                    LeverTiming lever,
            @Option(longName = "rolling-back", description = "the truck rolls back") boolean rollingBack,
            @Option(
                            longName = "splitter",
                            defaultValue = "",
                            description = "moves first, last, or stays split into low range")
                    SplitterMove splitter,
            @Option(longName = "formulas", description = OptionText.FORMULAS) boolean formulas,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "case", defaultValue = "", description = OptionText.CASE) String caseId,
            @Option(longName = "guessed", description = OptionText.GUESSED) boolean guessed,
            @Option(longName = "as", defaultValue = "", description = OptionText.EVIDENCE) String as,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        var whereTo = destination(format, caseId, as, guessed, reason);
        var words =
                new ShiftAnswer.Words(from, to, speed, speedUnit(unit), clutch, lever, rollingBack, splitter, formulas);
        answers.getObject().give(context, ShiftAnswer.of(trucks.getObject().find(name), words), whereTo);
    }

    @Command(
            name = "truck start",
            group = GROUP,
            description = "What a start from rest asks of clutch and mainshaft, and the gears to start in",
            help = "TRUCK; without --gear all gears that may be started in",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void start(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "gear", defaultValue = "", description = "gear to start in") String gear,
            @Option(longName = "mass", defaultValue = "loaded", description = OptionText.MASS) String mass,
            @Option(longName = "grade", defaultValue = "", description = OptionText.GRADE) String grade,
            @Option(longName = "formulas", description = OptionText.FORMULAS) boolean formulas,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "case", defaultValue = "", description = OptionText.CASE) String caseId,
            @Option(longName = "guessed", description = OptionText.GUESSED) boolean guessed,
            @Option(longName = "as", defaultValue = "", description = OptionText.EVIDENCE) String as,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        var to = destination(format, caseId, as, guessed, reason);
        if (!caseId.isEmpty() && gear.isEmpty()) {
            throw new WrongUsage("--case needs --gear: the gear that the start was made in");
        }
        answers.getObject()
                .give(context, StartAnswer.of(trucks.getObject().find(name), gear, mass, grade, formulas), to);
    }

    @Command(
            name = "truck coast",
            group = GROUP,
            description = "How far the floating gears rub when coasting in neutral at idle",
            help = "TRUCK --speed N [--unit km/h|mph] --distance N[km|mi] | --minutes N [--range high|low]",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void coast(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "range", defaultValue = "high", description = "range left in") Range range,
            @Option(longName = "speed", defaultValue = "", description = "road speed") String speed,
            @Option(longName = "unit", defaultValue = "", description = OptionText.SPEED_UNIT) String unit,
            @Option(longName = "distance", defaultValue = "", description = OptionText.DISTANCE) String distance,
            @Option(longName = "minutes", defaultValue = "", description = "minutes") String minutes,
            @Option(longName = "formulas", description = OptionText.FORMULAS) boolean formulas,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "case", defaultValue = "", description = OptionText.CASE) String caseId,
            @Option(longName = "guessed", description = OptionText.GUESSED) boolean guessed,
            @Option(longName = "as", defaultValue = "", description = OptionText.EVIDENCE) String as,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        roll(
                context,
                name,
                Mode.COAST,
                new RollAnswer.Words(range, speed, speedUnit(unit), distance, plainDistance(), minutes, formulas),
                destination(format, caseId, as, guessed, reason));
    }

    @Command(
            name = "truck tow",
            group = GROUP,
            description = "How far the floating gears rub when towed on the drive wheels, engine off",
            help = "TRUCK --speed N [--unit km/h|mph] --distance N[km|mi] | --minutes N [--range high|low]",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void tow(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "range", defaultValue = "high", description = "range left in") Range range,
            @Option(longName = "speed", defaultValue = "", description = "road speed") String speed,
            @Option(longName = "unit", defaultValue = "", description = OptionText.SPEED_UNIT) String unit,
            @Option(longName = "distance", defaultValue = "", description = OptionText.DISTANCE) String distance,
            @Option(longName = "minutes", defaultValue = "", description = "minutes") String minutes,
            @Option(longName = "formulas", description = OptionText.FORMULAS) boolean formulas,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "case", defaultValue = "", description = OptionText.CASE) String caseId,
            @Option(longName = "guessed", description = OptionText.GUESSED) boolean guessed,
            @Option(longName = "as", defaultValue = "", description = OptionText.EVIDENCE) String as,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        roll(
                context,
                name,
                Mode.TOW,
                new RollAnswer.Words(range, speed, speedUnit(unit), distance, plainDistance(), minutes, formulas),
                destination(format, caseId, as, guessed, reason));
    }

    @Command(
            name = "truck angles",
            group = GROUP,
            description = "How unevenly one or two driveline joints turn",
            help = "--angle DEG[,DEG] [--rpm N]",
            exitStatusExceptionMapper = "refusals")
    void angles(
            CommandContext context,
            @Option(longName = "angle", defaultValue = "", description = "angle of the joint, or of both") String angle,
            @Option(longName = "phase", defaultValue = "", description = "yokes out of phase by, degrees") String phase,
            @Option(longName = "rpm", defaultValue = "1500", description = "driveline speed") String rpm,
            @Option(longName = "formulas", description = OptionText.FORMULAS) boolean formulas,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "case", defaultValue = "", description = OptionText.CASE) String caseId,
            @Option(longName = "guessed", description = OptionText.GUESSED) boolean guessed,
            @Option(longName = "as", defaultValue = "", description = OptionText.EVIDENCE) String as,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        var to = destination(format, caseId, as, guessed, reason);
        answers.getObject().give(context, AngleAnswer.of(angle, phase, rpm, formulas), to);
    }

    private void roll(
            CommandContext context, String name, Mode mode, RollAnswer.Words words, GiveAnswer.Destination to) {
        answers.getObject().give(context, RollAnswer.of(trucks.getObject().find(name), mode, words), to);
    }

    private String speedUnit(String given) {
        return given.isEmpty() ? shop.units().shown(Unit.KILOMETRE_PER_HOUR).symbol() : given;
    }

    private Unit plainDistance() {
        return shop.units().shown(Unit.KILOMETRE);
    }

    private static GiveAnswer.Destination destination(
            Format format, String caseId, String as, boolean guessed, String reason) {
        if (caseId.isEmpty() && (guessed || !as.isEmpty() || !reason.isEmpty())) {
            throw new WrongUsage(
                    "--as, --guessed and --reason are for an answer that is stored", "name the case: --case CASE");
        }
        return new GiveAnswer.Destination(format, caseId, as, guessed, reason);
    }
}
