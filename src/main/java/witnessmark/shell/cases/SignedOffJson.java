package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.diagnosis.AfterSignOff;

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

    /** Today's judgement where it is another one than was signed, with what changed; else null. */
    public static @Nullable Map<String, Object> today(Optional<AfterSignOff> after) {
        return after.filter(AfterSignOff::differs)
                .map(a -> {
                    Map<String, Object> map = new LinkedHashMap<>();
                    map.put("verdict", a.now().classId());
                    map.put("standing", a.now().standing().word());
                    map.put("pointsTo", a.now().pointsTo().orElse(null));
                    map.put("verdictText", a.now().sentence());
                    map.put(
                            "changed",
                            a.changed().stream().map(AfterSignOff.Changed::word).toList());
                    return map;
                })
                .orElse(null);
    }
}
