package witnessmark.shell.knowledge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.CheckKnowledge;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.search.FindEntries;
import witnessmark.knowledge.search.Hit;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.Nearest;

/** The commands that look into the knowledge base. */
@Component
class KnowledgeCommands {
    private static final String GROUP = "Knowledge";

    private final ObjectProvider<KnowledgeBase> knowledge;
    private final AnswerJson json;

    KnowledgeCommands(ObjectProvider<KnowledgeBase> knowledge, AnswerJson json) {
        this.json = json;
        this.knowledge = knowledge;
    }

    @Command(
            name = "knowledge find",
            group = GROUP,
            description = "Find causes, findings and pages by plain words",
            help = "WORDS...",
            exitStatusExceptionMapper = "refusals")
    void find(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "most", defaultValue = "12", description = "how many to show") Integer most,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        if (words.isEmpty()) {
            throw new WrongUsage(
                    "no words given", "knowledge find WORDS, such as: knowledge find jumps out going uphill");
        }
        List<Hit> hits = new FindEntries(knowledge.getObject()).find(String.join(" ", words), Math.min(100, most));
        if (format == Format.JSON) {
            context.outputWriter()
                    .println(json.of(new Hits(hits.stream().map(Found::of).toList())));
            return;
        }
        Page page = new Page(context.outputWriter());
        if (hits.isEmpty()) {
            page.line("Nothing fits these words; try others, or fewer.");
        }
        hits.forEach(hit -> page.indented(
                String.format("%-8s ", EnumWord.of(hit.kind())), "         ", hit.title() + " (" + hit.id() + ")"));
        page.flush();
    }

    @Command(
            name = "knowledge show",
            group = GROUP,
            description = "Show a cause, a finding, a measure or a page",
            help = "ID",
            exitStatusExceptionMapper = "refusals")
    void show(
            CommandContext context,
            @Argument(index = 0, description = "id of a cause, finding, measure or page") String id) {
        KnowledgeBase base = knowledge.getObject();
        KnowledgePage page = new KnowledgePage(base, new Page(context.outputWriter()));
        if (!page.show(id)) {
            throw new Refused(
                    "nothing in the knowledge base has the id '" + Terminal.harmless(id) + "'",
                    Nearest.mend(id, KnowledgePage.ids(base), "search it with: knowledge find WORDS"));
        }
    }

    @Command(
            name = "knowledge list",
            group = GROUP,
            description = "List the causes, findings, measures or pages",
            help = "causes|findings|measures|pages",
            exitStatusExceptionMapper = "refusals")
    void list(CommandContext context, @Argument(index = 0, description = "what to list") String what) {
        KnowledgeBase base = knowledge.getObject();
        Map<String, String> rows = new LinkedHashMap<>();
        switch (what) {
            case "causes" -> base.causes().values().forEach(c -> rows.put(c.id(), c.title() + " - " + c.classId()));
            case "findings" -> base.findings().values().forEach(f -> rows.put(f.id(), f.title()));
            case "measures" -> base.measures()
                    .values()
                    .forEach(m -> rows.put(m.id(), m.title() + ", " + m.unit().symbol()));
            case "pages" -> base.pages().keySet().forEach(p -> rows.put(p, "read it with: knowledge show " + p));
            default -> throw new WrongUsage(
                    "'" + Terminal.harmless(what) + "' cannot be listed", "causes, findings, measures or pages");
        }
        Page page = new Page(context.outputWriter());
        rows.forEach((id, title) -> page.indented(String.format("%-40s ", id), "    ", title));
        page.flush();
    }

    @Command(
            name = "knowledge check",
            group = GROUP,
            description = "Look for holes and weak places in the knowledge base",
            exitStatusExceptionMapper = "refusals")
    void check(CommandContext context) {
        KnowledgeBase base = knowledge.getObject();
        CheckKnowledge check = new CheckKnowledge(base);
        Page page = new Page(context.outputWriter());
        page.line(base.causes().size() + " causes, " + base.findings().size() + " findings, "
                + base.causes().values().stream()
                        .mapToInt(c -> c.links().size())
                        .sum() + " links, "
                + base.lookAlikes().size() + " pairs of look-alikes, "
                + base.measures().size() + " measures.");
        table(page, "Causes by class", check.causesByClass());
        table(page, "Causes by system", check.causesBySystem());
        table(page, "Findings by system", check.findingsBySystem());
        List<CheckKnowledge.Weakness> weaknesses = check.weaknesses();
        page.heading("Weak places");
        page.items(weaknesses.stream().map(CheckKnowledge.Weakness::sentence).toList());
        page.flush();
        if (!weaknesses.isEmpty()) {
            throw new Refused(weaknesses.size() + " weak places in the knowledge base, listed above");
        }
        page.line("  none");
        page.flush();
    }

    private static void table(Page page, String heading, Map<String, Integer> counts) {
        page.heading(heading);
        counts.forEach((name, count) -> page.line(String.format("  %-24s %4d", name, count)));
    }

    private record Hits(List<Found> hits) {}

    /** What was found, as JSON. */
    private record Found(Hit.Kind kind, String id, String title) {
        static Found of(Hit hit) {
            return new Found(hit.kind(), hit.id(), hit.title());
        }
    }
}
