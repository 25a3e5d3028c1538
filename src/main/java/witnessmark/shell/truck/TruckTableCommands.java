package witnessmark.shell.truck;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.document.Paper;
import witnessmark.document.chart.Chart;
import witnessmark.document.chart.ChartLabels;
import witnessmark.document.chart.DrawSvg;
import witnessmark.document.chart.ShiftPlanChart;
import witnessmark.document.chart.SlipEnergyChart;
import witnessmark.document.page.CoachingTexts;
import witnessmark.gearbox.Gear;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.Range;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.DrawUpCoachingCard;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.language.Language;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.TerminalChart;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.run.TypedFigure;
import witnessmark.shell.settings.ShopSettings;

/** The commands that show what belongs to a truck: road speeds, shift plan, coaching card, charts. */
@Component
class TruckTableCommands {
    private static final String GROUP = "Truck tables";
    private static final int CHART_WIDTH = 800;
    private static final int CHART_HEIGHT = 480;
    private static final int CHART_ROWS = 24;
    private static final int MOST_COLUMNS = 20;

    private final ObjectProvider<Trucks> trucks;
    private final ShopSettings shop;
    private final ObjectProvider<CardPages> pages;
    private final AnswerJson json;

    TruckTableCommands(
            ObjectProvider<Trucks> trucks, ShopSettings shop, ObjectProvider<CardPages> pages, AnswerJson json) {
        this.json = json;
        this.pages = pages;
        this.shop = shop;
        this.trucks = trucks;
    }

    @Command(
            name = "truck speeds",
            group = GROUP,
            description = "Road speed by gear and engine speed, steps, low-range ceilings, cruising band",
            help = "TRUCK",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void speeds(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "rpm", defaultValue = "", description = "engine speeds parted by commas") String rpm,
            @Option(longName = "units", defaultValue = "", description = OptionText.UNITS) Units units,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        TruckProfile truck = trucks.getObject().find(name);
        List<Double> rpms = rpm.isEmpty() ? usual(truck) : engineSpeeds(rpm);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(TruckJson.Speeds.of(truck, rpms)));
        } else {
            new SpeedsText(new Page(context.outputWriter()).in(units), truck).print(rpms);
        }
    }

    private static List<Double> usual(TruckProfile truck) {
        double governed = truck.value(Parameter.GOVERNED_RPM);
        double pulling = truck.value(Parameter.LOWEST_PULLING_RPM);
        double middle = Math.rint((pulling + governed) / 200) * 100;
        return DoubleStream.of(truck.value(Parameter.IDLE_RPM), pulling, middle, governed)
                .distinct()
                .sorted()
                .boxed()
                .toList();
    }

    private static List<Double> engineSpeeds(String words) {
        List<Double> rpms = new ArrayList<>();
        for (String word : words.split(",", -1)) {
            double rpm = TypedFigure.quantity("--rpm", word, Unit.RPM, Unit.RPM);
            if (!(rpm > 0 && rpm <= 6000)) {
                throw new WrongUsage("--rpm '" + Terminal.harmless(word) + "' cannot be", "give above 0 to 6000");
            }
            rpms.add(rpm);
        }
        if (rpms.size() > MOST_COLUMNS) {
            throw new WrongUsage("--rpm has " + rpms.size() + " engine speeds", "give at most " + MOST_COLUMNS);
        }
        return rpms;
    }

    @Command(
            name = "truck plan",
            group = GROUP,
            description = "A progressive shift plan beside shifting always at governed speed",
            help = "TRUCK; --careful lands no shift below the lowest pulling speed",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void plan(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "mass", defaultValue = "loaded", description = OptionText.MASS) String mass,
            @Option(longName = "grade", defaultValue = "", description = OptionText.GRADE) String grade,
            @Option(longName = "careful", description = "land on the lowest pulling speed or above") boolean careful,
            @Option(longName = "units", defaultValue = "", description = OptionText.UNITS) Units units,
            @Option(longName = "formulas", description = "show the formulas") boolean formulas,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        TruckProfile truck = trucks.getObject().find(name);
        ShiftPlan plan = ShiftPlan.of(
                truck,
                careful ? ShiftPlan.Floor.LOWEST_PULLING_SPEED : ShiftPlan.Floor.RISING_WITH_THE_GEAR,
                RoadOptions.mass(truck, mass).value(),
                RoadOptions.grade(truck, Parameter.PLAN_GRADE, grade).value());
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(TruckJson.Plan.of(truck, plan)));
        } else {
            new ShiftPlanText(new Page(context.outputWriter()).in(units), truck).print(plan, formulas);
        }
    }

    @Command(
            name = "truck card",
            group = GROUP,
            description = "The coaching card of this truck, on one page",
            help = "TRUCK [--as pdf|html|md]; --as makes a page to hand over",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void card(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "as", defaultValue = "", description = "pdf, html or md: a page of its own") String as,
            @Option(longName = "out", defaultValue = "", description = "file to write the page to") GivenPath out,
            @Option(longName = "replace", description = OptionText.REPLACE) boolean replace,
            @Option(longName = "paper", defaultValue = "", description = "a4 or letter; left out: as set")
                    Paper paper) {
        if (!as.isEmpty() || !out.isEmpty()) {
            pages.getObject()
                    .write(
                            context,
                            trucks.getObject().find(name),
                            new CardPages.Order(as, out, replace, paper, language));
            return;
        }
        CoachingTexts words = CoachingTexts.in(language);
        TruckProfile truck = trucks.getObject().find(name);
        CoachingCard card = new DrawUpCoachingCard(truck).card();
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(TruckJson.Card.of(truck, card, words)));
        } else {
            Page page = new Page(context.outputWriter());
            TruckText.questions(page, truck);
            new CoachingCardText(page, words).print(truck.titleIn(language.tag()), card);
        }
    }

    @Command(
            name = "truck chart",
            group = GROUP,
            description = "Draw the shift plan, or slip energy of a shift to low range over road speed",
            help = "TRUCK plan|slip; without --out it is drawn in the terminal; --gear is the low-range gear of "
                    + "slip",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void chart(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Argument(index = 1, description = "plan or slip") String what,
            @Option(longName = "gear", defaultValue = "", description = "low-range gear of slip") String gear,
            @Option(longName = "out", defaultValue = "", description = OptionText.DRAWING) GivenPath out,
            @Option(longName = "replace", description = OptionText.REPLACE) boolean replace) {
        TruckProfile truck = trucks.getObject().find(name);
        Chart chart = chart(truck, what, gear, new ChartLabels(ChartLabels.PLAIN.texts(), shop.units()));
        Page page = new Page(context.outputWriter());
        TruckText.questions(page, truck);
        if (out.isEmpty()) {
            page.drawn(TerminalChart.draw(chart, page.width(), CHART_ROWS));
            chart.notes().forEach(note -> page.indented("  ", "    ", note));
        } else {
            String svg = DrawSvg.draw(chart, CHART_WIDTH, CHART_HEIGHT);
            NewFile.write(out.path(), svg.getBytes(StandardCharsets.UTF_8), NewFile.Older.of(replace));
            page.line("The chart is written to " + out + ".");
        }
        page.flush();
    }

    private static Chart chart(TruckProfile truck, String what, String gear, ChartLabels words) {
        return switch (what) {
            case "plan" -> {
                if (!gear.isEmpty()) {
                    throw new WrongUsage("--gear is for slip", "leave it out for plan");
                }
                yield ShiftPlanChart.of(truck, ShiftPlan.of(truck), words);
            }
            case "slip" -> SlipEnergyChart.of(
                    truck, gear.isEmpty() ? highestLow(truck) : GearOption.of(truck, "--gear", gear), words);
            default -> throw new WrongUsage("chart '" + Terminal.harmless(what) + "' is not known", "plan or slip");
        };
    }

    private static Gear highestLow(TruckProfile truck) {
        List<Gear> low = truck.gears().forwardIn(Range.LOW);
        if (low.isEmpty()) {
            throw new Refused(
                    "truck '" + truck.id() + "' has no range, so there is no slip to draw",
                    "see: truck chart " + truck.id() + " plan");
        }
        return low.get(low.size() - 1);
    }
}
