package witnessmark.shell.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.CommandOption;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.stereotype.Component;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.Nearest;

/** The command that explains the others. */
@Component
class HelpCommands {
    private static final List<String> GROUPS = List.of(
            "Judgement",
            "Cases",
            "Case entries",
            "Trucks",
            "Truck tables",
            "Truck questions",
            "Trip logs",
            "Documents",
            "Knowledge",
            "Settings",
            "Help");
    private static final int NAME_WIDTH = 20;

    @org.springframework.shell.core.command.annotation.Command(
            name = "help",
            group = "Help",
            description = "List the commands, or explain one",
            help = "[COMMAND]",
            exitStatusExceptionMapper = "refusals")
    void help(CommandContext context, @Arguments List<String> words) {
        Page page = new Page(context.outputWriter());
        List<Command> commands = context.commandRegistry().getCommands().stream()
                .filter(c -> !c.isHidden())
                .sorted(Comparator.comparing(Command::getName))
                .toList();
        String name = String.join(" ", words);
        List<Command> meant = commands.stream()
                .filter(c -> c.getName().equals(name)
                        || (!name.isEmpty() && c.getName().startsWith(name + " ")))
                .toList();
        if (name.isEmpty()) {
            all(page, commands);
        } else if (meant.size() == 1) {
            one(page, meant.get(0));
        } else if (meant.isEmpty()) {
            List<String> near = Nearest.some(name, new CommandNames(context.commandRegistry()).all(), 3);
            throw new WrongUsage("no command '" + Terminal.harmless(name) + "'"
                    + (near.isEmpty() ? "; see: help" : "; did you mean: " + String.join(", ", near) + "?"));
        } else {
            meant.forEach(c -> line(page, c));
        }
        page.flush();
    }

    private static void all(Page page, List<Command> commands) {
        page.line("Witnessmark reads the marks on heavy-truck gearbox parts with you: what was seen, what it can mean,"
                + " what to look at next, and what to write down.");
        List<String> groups = new ArrayList<>(GROUPS);
        commands.stream()
                .map(Command::getGroup)
                .filter(g -> !groups.contains(g))
                .forEach(groups::add);
        for (String group : groups) {
            List<Command> members =
                    commands.stream().filter(c -> c.getGroup().equals(group)).toList();
            if (!members.isEmpty()) {
                page.heading(group);
                members.forEach(c -> line(page, c));
            }
        }
        page.blank();
        page.line("CASE is the id of a stored case or a YAML case file. Explain one command: help COMMAND.");
        page.line(
                "For a whole run: --store DIR where cases are kept, --database FILE a database that several shops share"
                        + " instead, --knowledge DIR a site's own knowledge on top, --who NAME who makes the entries and --role WHAT"
                        + " that person is, --units both|metric|us, --lines plain lines for a screen reader. What is the same every"
                        + " day: settings set.");
        page.line("Commands from a file: @FILE, from standard input: @-. Exit codes: 0 done, 1 input refused, 2 wrong"
                + " usage, 3 fault inside.");
    }

    private static void line(Page page, Command command) {
        page.indented(
                String.format("  %-" + NAME_WIDTH + "s ", command.getName()),
                " ".repeat(NAME_WIDTH + 3),
                command.getDescription());
    }

    private static void one(Page page, Command command) {
        page.line(command.getDescription() + ".");
        page.heading("Usage").indented("  ", "      ", Usage.line(command));
        List<CommandOption> options = command.getOptions();
        if (!options.isEmpty()) {
            page.heading("Options");
            for (CommandOption option : options) {
                String otherwise =
                        option.defaultValue() == null || option.defaultValue().isEmpty()
                                ? ""
                                : " (left out: " + option.defaultValue() + ")";
                page.indented(
                        String.format("  --%-" + (NAME_WIDTH - 2) + "s ", option.longName()),
                        " ".repeat(NAME_WIDTH + 3),
                        option.description() + otherwise);
            }
        }
    }
}
