package witnessmark.shell.knowledge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import witnessmark.diagnosis.Sentences;
import witnessmark.knowledge.AccessStep;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.LookAlike;
import witnessmark.knowledge.MadeOf;
import witnessmark.knowledge.Measure;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.ScreenFigures;

/** One entry of the knowledge base as a readable page. */
final class KnowledgePage {
    private final KnowledgeBase knowledge;
    private final Page page;

    KnowledgePage(KnowledgeBase knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
    }

    /** Every id that has a page. */
    static List<String> ids(KnowledgeBase knowledge) {
        List<String> ids = new ArrayList<>(knowledge.causes().keySet());
        ids.addAll(knowledge.findings().keySet());
        ids.addAll(knowledge.measures().keySet());
        ids.addAll(knowledge.pages().keySet());
        return ids;
    }

    /** Prints the page of an id; false if there is none. */
    boolean show(String id) {
        if (knowledge.causes().containsKey(id)) {
            cause(knowledge.causes().get(id));
        } else if (knowledge.findings().containsKey(id)) {
            finding(knowledge.findings().get(id));
        } else if (knowledge.measures().containsKey(id)) {
            measure(knowledge.measures().get(id));
        } else if (knowledge.pages().containsKey(id)) {
            knowledge.pages().get(id).lines().forEach(page::line);
        } else {
            return false;
        }
        page.flush();
        return true;
    }

    private void cause(Cause cause) {
        page.line(cause.title() + " (" + cause.id() + ")");
        page.line(knowledge.classOf(cause.classId()).title() + "; prior chance " + ScreenFigures.percent(cause.prior())
                + " in a gearbox that comes in with a complaint.");
        cause.classWhen()
                .forEach(w -> page.line("Counts as "
                        + knowledge.classOf(w.classId()).title().toLowerCase(Locale.ROOT) + " where \""
                        + title(w.finding()) + "\" is present."));
        page.heading("How it does the harm").indented("  ", "  ", cause.mechanism());
        page.heading("What it leaves behind");
        cause.links()
                .forEach(l -> page.item(l.strengthWord().replace('-', ' ') + ": " + title(l.finding()) + " ("
                        + l.finding() + ")" + (l.specific() ? " - nearly specific, may carry a conclusion" : "")));
        if (!cause.against().isEmpty()) {
            page.heading("What speaks against it");
            cause.against().forEach(a -> page.item(title(a.finding()) + ": " + a.why()));
        }
        if (!cause.provedGood().isEmpty()) {
            page.heading("Stands only if these were looked at and found sound");
            page.items(cause.provedGood().stream().map(this::title).toList());
        }
        lookAlikes(cause);
        list("It can bring about", cause.breeds().stream().map(this::causeTitle).toList());
        list("Repair notes", cause.repair());
        list(
                "Where the repair has hands",
                cause.repairAt().stream()
                        .map(place -> knowledge.access().get(place).title())
                        .toList());
        list(
                "Coaching",
                cause.coaching().stream()
                        .map(c -> knowledge.coaching().get(c).english())
                        .toList());
        list(
                "For the next tow",
                cause.towing().stream()
                        .map(t -> knowledge.towing().get(t).english())
                        .toList());
        list(
                "Cautions",
                cause.cautions().stream()
                        .map(c -> knowledge.cautions().get(c).english())
                        .toList());
        sources(cause.sources());
    }

    private void lookAlikes(Cause cause) {
        List<LookAlike> pairs = knowledge.lookAlikesOf(cause.id());
        if (!pairs.isEmpty()) {
            page.heading("Look-alikes, and what tells them apart");
            pairs.forEach(p -> page.item(causeTitle(p.other(cause.id())) + " (" + p.other(cause.id()) + "): "
                    + p.tells() + (p.checks().isEmpty() ? "" : " Check: " + String.join(", ", p.checks()) + ".")));
        }
    }

    private void finding(Finding finding) {
        page.line(finding.title() + " (" + finding.id() + ")");
        page.line("Ask: " + finding.ask());
        finding.madeOf().ifPresent(this::made);
        List<String> way = knowledge.wayTo(finding.access()).stream()
                .map(AccessStep::title)
                .toList();
        page.line("Where: " + String.join(", then ", way) + "; the check itself takes "
                + ScreenFigures.minutes(finding.minutes()) + ".");
        labelled("How to look", finding.look());
        labelled("What it looks like", finding.looksLike());
        labelled("Confused with", finding.confusedWith());
        labelled("Damage word", finding.term());
        page.line("Chance of it without any known cause: " + ScreenFigures.percent(finding.background()) + ".");
        page.heading("Causes that produce it");
        knowledge.causesOf(finding.id()).forEach(cause -> cause.links().stream()
                .filter(l -> l.finding().equals(finding.id()))
                .forEach(l -> page.item(l.strengthWord().replace('-', ' ') + ": " + cause.title() + " (" + cause.id()
                        + ")" + (l.specific() ? " - nearly specific" : ""))));
        list(
                "It follows from the measure",
                knowledge.measures().values().stream()
                        .filter(m -> m.below().filter(finding.id()::equals).isPresent()
                                || m.above().filter(finding.id()::equals).isPresent())
                        .map(m -> m.title() + " (" + m.id() + ")")
                        .toList());
        sources(finding.sources());
    }

    private void made(MadeOf made) {
        page.line("Nobody is asked for it: it is there where all of this was found.");
        page.items(made.present().stream().map(f -> "present: " + title(f)).toList());
        page.items(made.absent().stream().map(f -> "absent: " + title(f)).toList());
        page.items(made.unless().stream().map(f -> "not present: " + title(f)).toList());
    }

    private void measure(Measure measure) {
        page.line(measure.title() + " (" + measure.id() + "), in "
                + measure.unit().symbol());
        measure.below().ifPresent(f -> page.line("Below its low limit: " + title(f) + " (" + f + ")"));
        measure.above().ifPresent(f -> page.line("Above its high limit: " + title(f) + " (" + f + ")"));
        labelled("Typical", measure.typical());
        page.line("The limit comes from the service manual of the unit on the bench"
                + (measure.usual().isEmpty() && measure.rise().isEmpty()
                        ? "; nothing follows from a value without one."
                        : ". Without one:"));
        page.items(new Sentences(knowledge.language()).readWithoutLimit(measure));
        sources(measure.sources());
    }

    private void labelled(String label, String text) {
        if (!text.isEmpty()) {
            page.indented(label + ": ", "  ", text);
        }
    }

    private void list(String heading, List<String> texts) {
        if (!texts.isEmpty()) {
            page.heading(heading).items(texts);
        }
    }

    private void sources(List<String> sources) {
        page.blank();
        sources.forEach(s -> page.line("Source: " + knowledge.sources().get(s).title()));
    }

    private String title(String finding) {
        return knowledge.findings().get(finding).title();
    }

    private String causeTitle(String cause) {
        return knowledge.causes().get(cause).title();
    }
}
