package witnessmark.shell.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Accounts;
import witnessmark.diagnosis.Judgement;
import witnessmark.explain.CarryingFindings;
import witnessmark.explain.WhatIf;
import witnessmark.knowledge.Cause;
import witnessmark.shell.print.Json;

/** The machine form of explanations and comparisons. */
final class ExplainJson {
    private ExplainJson() {}

    static Map<String, Object> of(String caseId, CarryingFindings carrying) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("case", caseId);
        map.put("verdict", carrying.verdict().classId());
        map.put("tried", carrying.tried());
        map.put(
                "turned",
                carrying.turned().stream()
                        .map(t -> Json.object(
                                "findings", t.findings(), "verdict", t.then().classId()))
                        .toList());
        return map;
    }

    static Map<String, Object> of(Cause cause, Judgement judgement) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("case", judgement.caseId());
        map.put("mechanism", cause.mechanism().strip());
        List<?> ranked = judgement.causes().stream()
                .filter(c -> c.id().equals(cause.id()))
                .map(JudgementJson::cause)
                .toList();
        map.put("inQuestion", !ranked.isEmpty());
        ranked.forEach(r -> map.put("cause", r));
        map.put(
                "changes",
                judgement.changes().stream()
                        .filter(c ->
                                c.subject().equals(cause.id()) || c.subject().equals(classOf(cause, judgement)))
                        .map(JudgementJson::change)
                        .toList());
        return map;
    }

    static Map<String, Object> of(Map<String, FindingState> supposed, WhatIf whatIf) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("case", whatIf.now().caseId());
        Map<String, Object> findings = new LinkedHashMap<>();
        supposed.forEach((finding, state) -> findings.put(finding, state.word()));
        map.put("supposed", findings);
        map.put("verdictNow", whatIf.now().verdict().classId());
        map.put("verdictThen", whatIf.then().verdict().classId());
        map.put(
                "causes",
                whatIf.causes().stream()
                        .map(m -> Json.object("id", m.cause(), "now", m.before(), "then", m.after()))
                        .toList());
        return map;
    }

    static Map<String, Object> of(String caseId, Accounts accounts) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("case", caseId);
        map.put("first", accounts.first().cause());
        map.put("second", accounts.second().cause());
        map.put("decibansAlone", accounts.decibansAlone());
        map.put("decibansWithOthers", accounts.decibansWithOthers());
        map.put("priorDecibans", accounts.priorDecibans());
        map.put(
                "findings",
                accounts.findings().stream()
                        .map(s -> chances(s.finding(), s.ifFirst(), s.ifSecond(), "decibans", s.decibans()))
                        .toList());
        map.put(
                "deciding",
                accounts.deciding().stream()
                        .map(d -> chances(
                                d.finding(), d.ifFirst(), d.ifSecond(), "expectedDecibans", d.expectedDecibans()))
                        .toList());
        return map;
    }

    private static String classOf(Cause cause, Judgement judgement) {
        return judgement.causes().stream()
                .filter(c -> c.id().equals(cause.id()))
                .map(c -> c.classId())
                .findFirst()
                .orElse(cause.classId());
    }

    private static Map<String, Object> chances(
            String finding, double ifFirst, double ifSecond, String name, double decibans) {
        return Json.object("finding", finding, "ifFirst", ifFirst, "ifSecond", ifSecond, name, decibans);
    }
}
