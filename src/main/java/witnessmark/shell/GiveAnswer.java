package witnessmark.shell;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.stereotype.Component;
import witnessmark.casefile.ComputedEvidence;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.knowledge.KnowledgeBase;

/** Prints what was worked out and, where a case is named, stores it there as evidence. */
@Component
class GiveAnswer {

    /**
     * Where the answer goes.
     *
     * @param caseId case to store it in; empty for none
     * @param as id of the evidence; empty for the usual one
     * @param reason why a signed-off case changes; empty for an open one
     */
    record Destination(Format format, String caseId, String as, String reason) {}

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;

    GiveAnswer(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge) {
        this.cases = cases;
        this.knowledge = knowledge;
    }

    void give(CommandContext context, Answer answer, Destination to) {
        if (to.format() == Format.JSON) {
            Map<String, Object> json = new LinkedHashMap<>(answer.json());
            json.put(
                    "findings", answer.findings().stream().map(GiveAnswer::json).toList());
            store(answer, to).ifPresent(stored -> {
                json.put("case", stored.history().id().toString());
                json.put("evidence", stored.evidence().id());
                json.put("entry", stored.history().last().number());
            });
            context.outputWriter().println(Json.of(json));
            return;
        }
        Page page = new Page(context.outputWriter());
        answer.text().accept(page);
        page.flush();
        store(answer, to).ifPresent(stored -> say(page, stored, answer));
        page.flush();
    }

    private record Stored(CaseHistory history, Evidence evidence) {}

    private Optional<Stored> store(Answer answer, Destination to) {
        if (to.caseId().isEmpty()) {
            return Optional.empty();
        }
        Evidence evidence =
                ComputedEvidence.of(to.as().isEmpty() ? answer.evidence() : to.as(), answer.truck(), answer.findings());
        Knows knows = new Knows(knowledge.getObject());
        evidence.findings().keySet().forEach(knows::finding);
        CaseHistory history = cases.getObject().enter(to.caseId(), List.of(new EvidenceSet(evidence)), to.reason());
        return Optional.of(new Stored(history, evidence));
    }

    private static void say(Page page, Stored stored, Answer answer) {
        page.heading("Stored in case " + stored.history().id());
        page.line("Evidence " + stored.evidence().id() + ", entry "
                + stored.history().last().number() + ". From it follows:");
        answer.findings()
                .forEach(finding -> page.indented(
                        "  " + state(finding) + "  ", " ".repeat(11), finding.id() + ": " + finding.summary()));
        page.line("It weighs in: diagnose " + stored.history().id());
    }

    private static String state(ComputedFinding finding) {
        return String.format("%-7s", finding.state().name().toLowerCase(Locale.ROOT));
    }

    private static Map<String, Object> json(ComputedFinding finding) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("finding", finding.id());
        map.put("state", finding.state().name().toLowerCase(Locale.ROOT));
        map.put("summary", finding.summary());
        map.put("result", FigureJson.of(finding.result()));
        map.put("limit", FigureJson.of(finding.limit()));
        return map;
    }
}
