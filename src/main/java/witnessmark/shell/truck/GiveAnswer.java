package witnessmark.shell.truck;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.ComputedEvidence;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.Word;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.knowledge.KnownIds;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;

/** Prints what was worked out and, where a case is named, stores it there as evidence. */
@Component
public class GiveAnswer {

    /**
     * Where the answer goes.
     *
     * @param caseId case to store it in; empty for none
     * @param as id of the evidence; empty for the usual one
     * @param guessed whether the figures typed are a guess
     * @param reason why a signed-off case changes; empty for an open one
     */
    record Destination(Format format, String caseId, String as, boolean guessed, String reason) {}

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;

    GiveAnswer(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge) {
        this.cases = cases;
        this.knowledge = knowledge;
    }

    void give(CommandContext context, TruckAnswer answer, Destination to) {
        if (to.format() == Format.JSON) {
            Map<String, Object> json = new LinkedHashMap<>(answer.json());
            answer.truck().ifPresent(truck -> TruckJson.questions(json, truck));
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
        Optional<Stored> stored = store(answer, to);
        Page page = new Page(context.outputWriter());
        answer.truck().ifPresent(truck -> TruckText.questions(page, truck));
        answer.text().accept(page);
        stored.ifPresent(s -> say(page, s, answer));
        page.flush();
    }

    private record Stored(CaseHistory history, Evidence evidence) {}

    private Optional<Stored> store(TruckAnswer answer, Destination to) {
        if (to.caseId().isEmpty()) {
            return Optional.empty();
        }
        Evidence evidence = ComputedEvidence.of(
                to.as().isEmpty() ? answer.evidence() : to.as(),
                answer.truck().map(TruckProfile::id).orElse(""),
                answer.findings(),
                to.guessed());
        answer.truck().ifPresent(truck -> refuseAnother(to.caseId(), truck));
        KnownIds knows = new KnownIds(knowledge.getObject());
        evidence.findings().keySet().forEach(knows::finding);
        CaseHistory history = cases.getObject().enter(to.caseId(), List.of(new EvidenceSet(evidence)), to.reason());
        return Optional.of(new Stored(history, evidence));
    }

    /** A case whose gearbox is another one than the truck's would hold figures of the wrong box. */
    public void refuseAnother(String caseId, TruckProfile truck) {
        refuseAnother(caseId, truck.id(), truck.layout());
    }

    /** The same for a truck of which only name and layout are known. */
    public void refuseAnother(String caseId, String truck, Layout ofTruck) {
        Layout ofCase =
                cases.getObject().store().read(new CaseId(caseId)).present().gearbox();
        boolean otherRatios = ofCase.forwardRatios().isPresent()
                && ofTruck.forwardRatios().isPresent()
                && !ofCase.forwardRatios().equals(ofTruck.forwardRatios());
        boolean otherSplitter = ofCase.splitter().isPresent()
                && ofTruck.splitter().isPresent()
                && !ofCase.splitter().equals(ofTruck.splitter());
        if (otherRatios || otherSplitter) {
            throw new Refused(
                    "case '" + caseId + "' says that its gearbox has " + words(ofCase) + ", truck '" + truck + "' has "
                            + words(ofTruck),
                    "name the truck of the case, or put the case right with: case" + " gearbox " + caseId
                            + " --ratios N --splitter none|high-only|both");
        }
    }

    private static String words(Layout layout) {
        String ratios = layout.forwardRatios().isPresent()
                ? layout.forwardRatios().getAsInt() + " forward ratios"
                : "forward ratios not said";
        return ratios + layout.splitter().map(s -> ", splitter " + Word.of(s)).orElse("");
    }

    private static void say(Page page, Stored stored, TruckAnswer answer) {
        page.heading("Stored in case " + stored.history().id());
        page.line("Evidence " + stored.evidence().id() + ", entry "
                + stored.history().last().number() + ". From it follows:");
        answer.findings()
                .forEach(finding -> page.indented(
                        String.format("  %-11s  ", state(stored, finding)),
                        " ".repeat(15),
                        finding.id() + ": " + finding.summary()));
        page.line("It weighs in: diagnose " + stored.history().id());
    }

    private static String state(Stored stored, ComputedFinding finding) {
        FindingState state = stored.evidence().findings().get(finding.id());
        return state == null ? "not counted" : state.word();
    }

    private static Map<String, Object> json(ComputedFinding finding) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("finding", finding.id());
        map.put("state", finding.state().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        map.put("summary", finding.summary());
        map.put("result", FigureJson.of(finding.result()));
        map.put("limit", FigureJson.of(finding.limit()));
        return map;
    }
}
