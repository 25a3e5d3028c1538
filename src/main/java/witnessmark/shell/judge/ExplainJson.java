package witnessmark.shell.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Accounts;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.explain.CarryingFindings;
import witnessmark.explain.WhatIf;
import witnessmark.knowledge.Cause;
import witnessmark.shell.print.Json;

/** The machine form of explanations and comparisons. */
final class ExplainJson {
    private ExplainJson() {}

    /** What carries a verdict. */
    record Carried(@Json.Name("case") String id, String verdict, int tried, List<Turned> turned) {
        static Carried of(String caseId, CarryingFindings carrying) {
            return new Carried(
                    caseId,
                    carrying.verdict().classId(),
                    carrying.tried(),
                    carrying.turned().stream()
                            .map(t -> new Turned(t.findings(), t.then().classId()))
                            .toList());
        }
    }

    record Turned(List<String> findings, String verdict) {}

    /** Why a cause stands where it stands; without {@code cause} where it is not in question. */
    record Why(
            @Json.Name("case") String id,
            String mechanism,
            boolean inQuestion,
            Optional<JudgementJson.Cause> cause,
            List<JudgementJson.Change> changes) {
        static Why of(Cause cause, Judgement judgement) {
            Optional<RankedCause> ranked = judgement.causes().stream()
                    .filter(c -> c.id().equals(cause.id()))
                    .findFirst();
            String classId = ranked.map(RankedCause::classId).orElse(cause.classId());
            return new Why(
                    judgement.caseId(),
                    cause.mechanism().strip(),
                    ranked.isPresent(),
                    ranked.map(JudgementJson.Cause::of),
                    judgement.changes().stream()
                            .filter(c -> c.subject().equals(cause.id())
                                    || c.subject().equals(classId))
                            .map(JudgementJson.Change::of)
                            .toList());
        }
    }

    /** A case as it is and as it would be. */
    record Supposed(
            @Json.Name("case") String id,
            Map<String, String> supposed,
            String verdictNow,
            String verdictThen,
            List<Moved> causes) {
        static Supposed of(Map<String, FindingState> supposed, WhatIf whatIf) {
            Map<String, String> findings = new LinkedHashMap<>();
            supposed.forEach((finding, state) -> findings.put(finding, state.word()));
            return new Supposed(
                    whatIf.now().caseId(),
                    findings,
                    whatIf.now().verdict().classId(),
                    whatIf.then().verdict().classId(),
                    whatIf.causes().stream()
                            .map(m -> new Moved(m.cause(), m.before(), m.after()))
                            .toList());
        }
    }

    record Moved(String id, double now, double then) {}

    /** Two accounts held against the findings. */
    record OfAccounts(
            @Json.Name("case") String id,
            String first,
            String second,
            double decibansAlone,
            double decibansWithOthers,
            double priorDecibans,
            List<Said> findings,
            List<Deciding> deciding) {
        static OfAccounts of(String caseId, Accounts accounts) {
            return new OfAccounts(
                    caseId,
                    accounts.first().cause(),
                    accounts.second().cause(),
                    accounts.decibansAlone(),
                    accounts.decibansWithOthers(),
                    accounts.priorDecibans(),
                    accounts.findings().stream()
                            .map(s -> new Said(s.finding(), s.ifFirst(), s.ifSecond(), s.decibans()))
                            .toList(),
                    accounts.deciding().stream()
                            .map(d -> new Deciding(d.finding(), d.ifFirst(), d.ifSecond(), d.expectedDecibans()))
                            .toList());
        }
    }

    record Said(String finding, double ifFirst, double ifSecond, double decibans) {}

    record Deciding(String finding, double ifFirst, double ifSecond, double expectedDecibans) {}
}
