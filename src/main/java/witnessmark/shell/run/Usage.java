package witnessmark.shell.run;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandOption;

/**
 * The usage line of a command: its name, what stands before the options, its options as they are declared, a note. What
 * a command's {@code help} holds is the part before the options, with those options that must be given or take other
 * words than elsewhere, and behind a semicolon the note.
 */
final class Usage {
    private static final Pattern OPTION = Pattern.compile("--([a-z-]+)");

    /** What stands for the value of an option that takes text, wherever nothing else is said. */
    private static final Map<String, String> VALUES = values(Map.ofEntries(
            Map.entry(
                    "TEXT",
                    "because claim-number complaint cost customer duty gearbox-serial limit-from note reason"
                            + " repair-note serial shop tag title truck-serial words work-order"),
            Map.entry(
                    "N",
                    "distance engine-hours high km-since-new km-since-repair labour-hours low minutes odometer-km"
                            + " quantity ratios speed"),
            Map.entry("N,N,...", "rpm"),
            Map.entry("PERCENT", "grade"),
            Map.entry("DEG", "angle phase"),
            Map.entry("DAY", "failed in-service repaired"),
            Map.entry("NAME", "looked measured signs unit"),
            Map.entry("ID", "as"),
            Map.entry("CASE", "after case"),
            Map.entry("TRUCK", "truck"),
            Map.entry("FINDING", "finding"),
            Map.entry("GEAR", "from gear to"),
            Map.entry("UNIT", "limit-unit"),
            Map.entry("NEW-PART", "fitted"),
            Map.entry("NUMBER", "remove"),
            Map.entry("SAMPLES", "earlier"),
            Map.entry("WAY", "tow"),
            Map.entry("WHO", "told-by"),
            Map.entry("WHY", "nevertheless"),
            Map.entry("FILE", "answers log out"),
            Map.entry("TEXT|FILE", "head"),
            Map.entry("FOLDER", "profiles"),
            Map.entry("DIR", "templates"),
            Map.entry("MAPPING.yaml", "mapping save-mapping"),
            Map.entry("text|json", "format"),
            Map.entry("en|es", "language"),
            Map.entry("a4|letter", "paper"),
            Map.entry("timeline|map", "chart"),
            Map.entry("engaged|down", "clutch"),
            Map.entry("preselected|neutral|home", "lever"),
            Map.entry("empty|loaded", "load"),
            Map.entry("empty|loaded|N[kg|lb]", "mass"),
            Map.entry("metric|us|both", "units"),
            Map.entry("none|air|mechanical", "range"),
            Map.entry("none|high-only|both", "splitter"),
            Map.entry("single|twin", "countershafts"),
            Map.entry("direct|remote", "linkage"),
            Map.entry("fitted|none", "oil-cooler oil-pump pto"),
            Map.entry("present|absent|unsure", "state"),
            Map.entry("returned|kept|scrapped", "whereabouts")));

    private final String before;
    private final String note;

    private Usage(String before, String note) {
        this.before = before;
        this.note = note;
    }

    static Usage of(Command command) {
        String help = command.getHelp() == null ? "" : command.getHelp();
        int end = help.startsWith(";") ? 0 : help.indexOf("; ");
        return end < 0
                ? new Usage(help, "")
                : new Usage(help.substring(0, end), help.substring(end + 1).strip());
    }

    /** The whole line. */
    static String line(Command command) {
        Usage usage = of(command);
        List<String> written = usage.written();
        String options = command.getOptions().stream()
                .filter(o -> !written.contains(o.longName()))
                .map(o -> " [" + shown(o) + "]")
                .collect(Collectors.joining());
        return command.getName()
                + (usage.before.isEmpty() ? "" : " " + usage.before)
                + options
                + (usage.note.isEmpty() ? "" : "; " + usage.note);
    }

    /** The options that the part before the options names itself. */
    List<String> written() {
        return OPTION.matcher(before).results().map(m -> m.group(1)).toList();
    }

    /**
     * What stands for the value of an option; nothing for one that takes none. What it takes decides, and its name only
     * where that is a text: one name may take a case here and files there.
     */
    static String value(CommandOption option) {
        Class<?> type = option.type();
        if (type == boolean.class || type == Boolean.class) {
            return "";
        }
        if (type == ValueList.class) {
            return "FILE|FOLDER ...";
        }
        return type == Integer.class || type == int.class ? "N" : VALUES.get(option.longName());
    }

    private static String shown(CommandOption option) {
        String value = value(option);
        return "--" + option.longName() + (value.isEmpty() ? "" : " " + value);
    }

    /** The options that have words for their value. */
    static Set<String> known() {
        return VALUES.keySet();
    }

    private static Map<String, String> values(Map<String, String> optionsByValue) {
        Map<String, String> values = new HashMap<>();
        optionsByValue.forEach((value, options) -> {
            for (String option : options.split(" ")) {
                values.put(option, value);
            }
        });
        return Map.copyOf(values);
    }
}
