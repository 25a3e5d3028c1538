package witnessmark.shell.cases;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.diagnosis.AfterSignOff;

/**
 * The machine form of a sign-off: who, when, and the judgement that was signed.
 *
 * @param causes as they were signed; empty where no judgement was kept, as is all that follows the time
 */
public record SignedOffJson(
        String who,
        String time,
        @Nullable String verdict,
        @Nullable String standing,
        @Nullable String pointsTo,
        @Nullable String verdictText,
        @Nullable Object causes,
        List<String> carriedBy,
        @Nullable String knowledge,
        @Nullable String siteKnowledge,
        @Nullable String program) {

    public static SignedOffJson of(SignOff signOff) {
        Optional<SignedJudgement> signed = signOff.judgement();
        return new SignedOffJson(
                signOff.who(),
                signOff.time().toString(),
                signed.map(SignedJudgement::verdict).orElse(null),
                signed.map(SignedJudgement::standing).orElse(null),
                signed.flatMap(SignedJudgement::pointsTo).orElse(null),
                signed.map(SignedJudgement::sentence).orElse(null),
                signed.isPresent() ? signed.get().form().get("causes") : List.of(),
                signed.map(SignedJudgement::carriedBy).orElse(List.of()),
                signed.map(s -> s.made().knowledge()).orElse(null),
                signed.flatMap(s -> s.made().site()).orElse(null),
                signed.map(s -> s.made().program()).orElse(null));
    }

    /** Today's judgement beside another that was signed, with what changed. */
    public record Today(
            String verdict,
            String standing,
            @Nullable String pointsTo,
            String verdictText,
            List<AfterSignOff.Changed> changed) {

        /** Null where it is the one that was signed. */
        public static @Nullable Today of(Optional<AfterSignOff> after) {
            return after.filter(AfterSignOff::differs)
                    .map(a -> new Today(
                            a.now().classId(),
                            a.now().standing().word(),
                            a.now().pointsTo().orElse(null),
                            a.now().sentence(),
                            a.changed()))
                    .orElse(null);
        }
    }
}
