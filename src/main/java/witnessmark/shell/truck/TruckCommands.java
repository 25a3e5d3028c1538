package witnessmark.shell.truck;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.Basis;
import witnessmark.gearbox.TruckProfile;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.truck.ReadyTrucks;
import witnessmark.truck.TruckRefused;
import witnessmark.yaml.FaultyInput;

/** The commands that keep truck profiles. */
@Component
class TruckCommands {
    static final String GROUP = "Trucks";

    private final ObjectProvider<Trucks> trucks;
    private final AnswerJson json;

    TruckCommands(ObjectProvider<Trucks> trucks, AnswerJson json) {
        this.json = json;
        this.trucks = trucks;
    }

    @Command(
            name = "truck list",
            group = GROUP,
            description = "List the ready examples and the trucks kept here",
            exitStatusExceptionMapper = "refusals")
    void list(
            CommandContext context,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        List<String> ready = ReadyTrucks.names();
        List<String> kept = trucks.getObject().kept().names();
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(new Listed(ready, kept)));
            return;
        }
        Page page = new Page(context.outputWriter());
        page.heading("Ready examples, invented");
        ready.forEach(name -> listed(page, name, ReadyTrucks.named(name)));
        page.heading("Kept here");
        kept.forEach(name -> listed(page, name));
        if (kept.isEmpty()) {
            page.indented(
                    "  ",
                    "  ",
                    "None. Take an example as a pattern: truck export ten-ratio --out my-truck.yaml, change it,"
                            + " then: truck import my-truck.yaml");
        }
        page.flush();
    }

    private record Listed(List<String> ready, List<String> kept) {}

    private void listed(Page page, String name) {
        try {
            listed(page, name, trucks.getObject().kept().read(name));
        } catch (FaultyInput | TruckRefused e) {
            page.indented(
                    String.format("  %-20s ", name),
                    "      ",
                    "cannot be used: " + e.getMessage().lines().findFirst().orElse(""));
        }
    }

    private static void listed(Page page, String name, TruckProfile truck) {
        page.indented(
                String.format("  %-20s ", name),
                " ".repeat(23),
                truck.title() + ", " + truck.gears().forward().size() + " forward ratios");
    }

    @Command(
            name = "truck show",
            group = GROUP,
            description = "Show a truck's profile: what is given and what is assumed",
            help = "TRUCK; TRUCK is a name from truck list, or a YAML file",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void show(
            CommandContext context,
            @Argument(index = 0, description = "truck or file") String name,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        TruckProfile truck = trucks.getObject().find(name);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(TruckJson.Profile.of(truck)));
        } else {
            new TruckText(new Page(context.outputWriter())).print(truck);
        }
    }

    @Command(
            name = "truck import",
            group = GROUP,
            description = "Keep a truck profile from a YAML file",
            help = "FILE.yaml",
            exitStatusExceptionMapper = "refusals")
    void importTruck(
            CommandContext context,
            @Argument(index = 0, description = "YAML truck profile") String file,
            @Option(longName = "replace", description = "overwrite the one of the same name") boolean replace) {
        Trucks.Written written = Trucks.read(Path.of(file));
        TruckProfile truck = written.truck();
        if (ReadyTrucks.names().contains(truck.id())) {
            throw new Refused(
                    "'" + truck.id() + "' is the name of a ready example",
                    "give the truck another name after" + " 'truck:' in the file");
        }
        trucks.getObject().kept().keep(truck, written.yaml(), replace);
        long assumed = truck.figures().values().stream()
                .filter(figure -> figure.basis() == Basis.ASSUMED)
                .count();
        Page page = new Page(context.outputWriter());
        page.line("Truck " + truck.id() + " is kept, " + truck.gears().forward().size() + " forward ratios, " + assumed
                + " numbers assumed; see them with: truck show " + truck.id());
        TruckText.questions(page.blank(), truck);
        page.flush();
    }

    @Command(
            name = "truck export",
            group = GROUP,
            description = "Write a truck's profile as YAML, a pattern for one's own",
            help = "TRUCK; without --out it is printed",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void export(
            CommandContext context,
            @Argument(index = 0, description = "truck") String name,
            @Option(longName = "out", defaultValue = "", description = OptionText.OUT) GivenPath out,
            @Option(longName = "replace", description = OptionText.REPLACE) boolean replace) {
        String yaml = trucks.getObject().yaml(name);
        if (out.isEmpty()) {
            context.outputWriter().print(Terminal.harmless(yaml));
            context.outputWriter().flush();
            return;
        }
        NewFile.write(out.path(), yaml.getBytes(StandardCharsets.UTF_8), NewFile.Older.of(replace));
        context.outputWriter()
                .println("Truck " + Terminal.harmless(name) + " is written to " + Terminal.harmless(out.typed()) + ".");
    }

    @Command(
            name = "truck remove",
            group = GROUP,
            description = "Remove a kept truck profile; cases keep the figures they were given",
            help = "TRUCK",
            completionProvider = "completeTruck",
            exitStatusExceptionMapper = "refusals")
    void remove(CommandContext context, @Argument(index = 0, description = "truck") String name) {
        if (ReadyTrucks.names().contains(name)) {
            throw new Refused("'" + name + "' is a ready example and comes with the program", "it cannot be removed");
        }
        trucks.getObject().kept().remove(trucks.getObject().known(name));
        context.outputWriter().println("Truck " + Terminal.harmless(name) + " is removed.");
    }
}
