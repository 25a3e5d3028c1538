package witnessmark.shell.truck;

import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.stereotype.Component;
import witnessmark.casefile.AddComputed;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.cases.EnterEvidence;
import witnessmark.shell.cases.EnterEvidence.Entered;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.FigureJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;

/** Prints what was worked out and, where a case is named, stores it there as evidence. */
@Component
class GiveAnswer {

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
    private final EnterEvidence enter;
    private final AnswerJson json;

    GiveAnswer(ObjectProvider<Cases> cases, EnterEvidence enter, AnswerJson json) {
        this.json = json;
        this.cases = cases;
        this.enter = enter;
    }

    void give(CommandContext context, TruckAnswer answer, Destination to) {
        if (to.format() == Format.JSON) {
            Given given = new Given(
                    answer.json(),
                    answer.truck().flatMap(TruckJson::questions),
                    answer.findings().stream().map(Found::of).toList(),
                    store(answer, to).map(StoredIn::of));
            context.outputWriter().println(json.of(given));
            return;
        }
        Optional<Entered> stored = store(answer, to);
        Page page = new Page(context.outputWriter());
        answer.truck().ifPresent(truck -> TruckText.questions(page, truck));
        answer.text().accept(page);
        stored.ifPresent(s -> say(page, s, answer));
        page.flush();
    }

    private Optional<Entered> store(TruckAnswer answer, Destination to) {
        if (to.caseId().isEmpty()) {
            return Optional.empty();
        }
        // A case that cannot take anything says so first.
        Cases from = cases.getObject();
        CaseHistory before = from.alarm(from.history(to.caseId()));
        AddComputed add = new AddComputed(
                to.as().isEmpty() ? answer.evidence() : to.as(), answer.truck(), answer.findings(), to.guessed());
        return Optional.of(enter.enter(before, seen -> add.to(seen.present()), to.reason()));
    }

    private static void say(Page page, Entered stored, TruckAnswer answer) {
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

    private static String state(Entered stored, ComputedFinding finding) {
        FindingState state = stored.evidence().findings().get(finding.id());
        return state == null ? "not counted" : state.word();
    }

    /** The answer as JSON, and where it was stored. */
    private record Given(
            @Json.Inlined Record answer,
            Optional<List<String>> questions,
            List<Found> findings,
            @Json.Inlined Optional<StoredIn> stored) {}

    private record Found(
            String finding, ComputedFinding.State state, String summary, FigureJson result, FigureJson limit) {
        static Found of(ComputedFinding finding) {
            return new Found(
                    finding.id(),
                    finding.state(),
                    finding.summary(),
                    FigureJson.of(finding.result()),
                    FigureJson.of(finding.limit()));
        }
    }

    private record StoredIn(@Json.Name("case") String id, String evidence, long entry) {
        static StoredIn of(Entered stored) {
            return new StoredIn(
                    stored.history().id().toString(),
                    stored.evidence().id(),
                    stored.history().last().number());
        }
    }
}
