package witnessmark.shell.judge;

import static witnessmark.shell.print.Json.object;

import java.util.List;
import java.util.Map;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.gearbox.Word;

/** The stable machine form of a judgement. */
public final class JudgementJson {
    private static final double LEAST_PROBABILITY = 0.001;

    private JudgementJson() {}

    public static Map<String, Object> of(Judgement judgement) {
        return object(
                "case", judgement.caseId(),
                "verdict", judgement.verdict().classId(),
                "standing", judgement.verdict().standing().word(),
                "pointsTo", judgement.verdict().pointsTo().orElse(null),
                "verdictText", judgement.verdict().sentence(),
                "carriedBy", judgement.verdict().carriedBy(),
                "open", judgement.verdict().open(),
                "causes",
                        judgement.causesFrom(LEAST_PROBABILITY).stream()
                                .map(JudgementJson::cause)
                                .toList(),
                "attribution",
                        judgement.attribution().stream()
                                .map(s -> object("class", s.classId(), "probability", s.probability()))
                                .toList(),
                "contradictions",
                        judgement.contradictions().stream()
                                .map(c -> object("findings", c.findings(), "why", c.why()))
                                .toList(),
                "changes",
                        judgement.changes().stream().map(JudgementJson::change).toList(),
                "nextChecks",
                        judgement.nextChecks().stream()
                                .map(JudgementJson::check)
                                .toList(),
                "advice", advice(judgement.advice()),
                "coverage", judgement.coverage(),
                "remarks", judgement.remarks());
    }

    static Map<String, Object> cause(RankedCause cause) {
        return object(
                "id", cause.id(),
                "title", cause.title(),
                "class", cause.classId(),
                "probability", cause.probability(),
                "standing", Word.of(cause.standing()),
                "for", cause.evidenceFor().stream().map(JudgementJson::weight).toList(),
                "against",
                        cause.evidenceAgainst().stream()
                                .map(JudgementJson::weight)
                                .toList(),
                "unchecked", cause.unchecked(),
                "lookAlikes",
                        cause.lookAlikes().stream()
                                .map(RankedCause.Rivalry::cause)
                                .toList(),
                "heldBack", cause.heldBack());
    }

    static Map<String, Object> change(Judgement.Change change) {
        return object("subject", change.subject(), "finding", change.finding(), "why", change.sentence());
    }

    private static Map<String, Object> weight(RankedCause.Weight weight) {
        return object("finding", weight.finding(), "state", weight.state().word(), "decibans", weight.decibans());
    }

    private static Map<String, Object> check(NextCheck check) {
        return object(
                "finding", check.finding(),
                "title", check.title(),
                "ask", check.ask(),
                "access", check.access(),
                "gainBits", check.gainBits(),
                "minutes", check.minutes(),
                "teardown", check.teardown(),
                "why", check.why(),
                "cautions", check.cautions());
    }

    private static Map<String, Object> advice(AdviceGiven advice) {
        return object(
                "repair", pieces(advice.repair()),
                "coaching", pieces(advice.coaching()),
                "towing", pieces(advice.towing()),
                "cautions", pieces(advice.cautions()));
    }

    private static List<Map<String, Object>> pieces(List<AdviceGiven.Piece> pieces) {
        return pieces.stream()
                .map(p -> object("id", p.id(), "text", p.text(), "why", p.why()))
                .toList();
    }
}
