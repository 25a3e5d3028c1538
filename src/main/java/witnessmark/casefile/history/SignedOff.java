package witnessmark.casefile.history;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;

/**
 * The case closed to change by the one who makes the entry.
 *
 * @param judgement what was signed; empty in entries made before it was kept
 */
public record SignedOff(Optional<SignedJudgement> judgement) implements Change {
    public SignedOff() {
        this(Optional.empty());
    }

    public SignedOff(SignedJudgement judgement) {
        this(Optional.of(judgement));
    }

    @Override
    public String kind() {
        return "signed-off";
    }

    @Override
    public Map<String, Object> form() {
        return judgement.map(SignedJudgement::form).orElse(Map.of());
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.signedOff(new SignOff(stamp.who(), stamp.time(), judgement));
    }
}
