package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;

/** The machine form of a sign-off: who, when, and the judgement that was signed. */
public final class SignedOffJson {
    private SignedOffJson() {}

    public static Map<String, Object> of(SignOff signOff) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("who", signOff.who());
        map.put("time", signOff.time().toString());
        SignedJudgement judgement = signOff.judgement().orElse(null);
        map.put("verdict", judgement == null ? null : judgement.verdict());
        map.put("standing", judgement == null ? null : judgement.standing());
        map.put("pointsTo", judgement == null ? null : judgement.pointsTo().orElse(null));
        map.put("verdictText", judgement == null ? null : judgement.sentence());
        map.put("causes", judgement == null ? List.of() : judgement.form().get("causes"));
        map.put("carriedBy", judgement == null ? List.of() : judgement.carriedBy());
        map.put("knowledge", judgement == null ? null : judgement.made().knowledge());
        map.put(
                "siteKnowledge",
                judgement == null ? null : judgement.made().site().orElse(null));
        map.put("program", judgement == null ? null : judgement.made().program());
        return map;
    }
}
